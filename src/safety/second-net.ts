import type { TopicId } from '../basics/ids.ts';
import { mixed, roundOrder, textSeed } from '../basics/seeded.ts';
import { type Features, type Kind, PLACES } from './features.ts';
import { type HazardNet, leaningsOf, learnHazards } from './hazard-net.ts';

/** One text to learn from. `hazard` is null where there is no danger; `weight` 1 is usual. */
export type Example = {
  readonly text: string;
  readonly features: Features;
  readonly hazard: TopicId | null;
  readonly weight: number;
};

/**
 * What learning leaves behind: plain data that may cross from a worker. `weights` has a row for each of the {@link PLACES} with
 * a figure for each of the {@link VIEWS}, in {@link STEPS}ths of a log-odd: finer says nothing.
 */
export type SecondNet = HazardNet & { readonly weights: Int8Array; readonly biases: Float32Array };

export type LearnOptions = {
  /** Passes over the examples. Few leave it unsure, many make it trust what it saw once. */
  readonly passes: number;
  /** The first step of Adagrad; it shrinks as a feature is seen more. */
  readonly step: number;
  /** Pull of every weight towards zero at each step. */
  readonly pull: number;
};

const SEED = 7;
const STEPS = 32;
const MOST_STEPS = 127;
export const LEARN: LearnOptions = { passes: 15, step: 0.5, pull: 1e-4 };
/**
 * Four opinions, each from other kinds of features, whose log-odds are averaged: on messages by writers that none had learnt
 * from, the four together err less than any of them or than one that sees everything.
 */
const VIEWS: readonly (readonly Kind[])[] = [
  ['words', 'rules', 'apart', 'letters'],
  ['words', 'apart', 'letters'],
  ['words', 'rules', 'senses'],
  ['words', 'senses'],
];
/** The view that is asked which features spoke loudest. */
const FIRST_VIEW = 0;

/**
 * Learns to tell danger from no danger (logistic regressions by Adagrad, one for each view), and which danger. Each text counts as
 * much as another, however long. The order is drawn from the texts themselves: the same examples, the same net, and an example
 * more or less changes what it says and not, by the luck of the draw, what it does not touch.
 */
export function learn(examples: readonly Example[], options: LearnOptions = LEARN): SecondNet {
  const weights = new Float32Array(PLACES * VIEWS.length);
  const biases = VIEWS.map((_, view) => learnView(examples, view, weights, options));
  const dangers = examples.flatMap(({ text, features, hazard }) =>
    hazard === null ? [] : [{ at: Uint32Array.from(everything(features)), hazard, seed: textSeed(text) }],
  );
  return { weights: inSteps(weights), biases: Float32Array.from(biases), ...learnHazards(dangers) };
}

function inSteps(weights: Float32Array): Int8Array {
  return Int8Array.from(weights, (weight) => Math.min(Math.max(Math.round(weight * STEPS), -MOST_STEPS), MOST_STEPS));
}

/** Learns one view's column of `weights`, and returns its bias. */
function learnView(
  examples: readonly Example[],
  view: number,
  weights: Float32Array,
  { passes, step, pull }: LearnOptions,
): number {
  const kinds = VIEWS[view] ?? [];
  const rows = examples.map(({ features }) =>
    Uint32Array.from(
      kinds.flatMap((kind) => features[kind]),
      (place) => cell(place, view),
    ),
  );
  const squares = new Float32Array(weights.length).fill(1e-6);
  const seeds = Int32Array.from(examples, ({ text }) => textSeed(text));
  let bias = 0;
  let biasSquare = 1e-6;
  for (let pass = 0; pass < passes; pass++) {
    for (const line of roundOrder(seeds, mixed(SEED + pass)).order) {
      const at = rows[line] as Uint32Array;
      const { hazard, weight } = examples[line] as Example;
      const share = shareOf(at.length);
      let sum = bias;
      for (const each of at) sum += weights[each] as number;
      const error = (logistic(sum * share) - (hazard === null ? 0 : 1)) * weight * share;
      for (const each of at) {
        const slope = error + pull * (weights[each] as number);
        const square = (squares[each] as number) + slope * slope;
        squares[each] = square;
        weights[each] = (weights[each] as number) - (step * slope) / Math.sqrt(square);
      }
      biasSquare += error * error;
      bias -= (step * error) / Math.sqrt(biasSquare);
    }
  }
  return bias;
}

/** What the net says of a text. */
export type Opinion = {
  /** The chance of any danger, 0..1. */
  readonly chance: number;
  /** How much the text speaks for a hazard; only differences between hazards mean anything. */
  readonly leaning: (hazard: TopicId) => number;
};

export type NetReader = {
  readonly read: (features: Features) => Opinion;
  /** How much the feature of one place speaks for danger by itself; below 0 against it. */
  readonly weightOf: (place: number) => number;
};

/** Reads with a net that has been learnt. */
export function createNetReader(net: SecondNet): NetReader {
  const read = (features: Features): Opinion => {
    let odds = 0;
    for (let view = 0; view < VIEWS.length; view++) odds += viewOdds(net, features, view);
    let leanings: Float64Array | null = null;
    return {
      chance: logistic(odds / VIEWS.length),
      leaning: (hazard) => {
        leanings ??= leaningsOf(net, everything(features));
        return leanings[net.hazards.indexOf(hazard)] ?? 0;
      },
    };
  };
  return { read, weightOf: (place) => (net.weights[cell(place, FIRST_VIEW)] ?? 0) / STEPS };
}

/** The log-odds of danger in one view. */
function viewOdds({ weights, biases }: SecondNet, features: Features, view: number): number {
  let sum = 0;
  let many = 0;
  for (const kind of VIEWS[view] ?? []) {
    const places = features[kind];
    for (let at = 0; at < places.length; at++) sum += weights[cell(places[at] as number, view)] as number;
    many += places.length;
  }
  return ((biases[view] as number) + sum / STEPS) * shareOf(many);
}

function everything({ words, apart, letters, rules, senses }: Features): readonly number[] {
  return [...words, ...rules, ...apart, ...letters, ...senses];
}

function cell(place: number, view: number): number {
  return place * VIEWS.length + view;
}

/** Long texts weigh no more than short ones. */
function shareOf(features: number): number {
  return 1 / Math.sqrt(features + 1);
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
