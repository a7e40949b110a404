import type { TopicId } from '../basics/ids.ts';
import { mixed, roundOrder, textSeed } from '../basics/seeded.ts';
import { type Features, type Kind, PLACES, placesOf } from './features.ts';
import { type HazardNet, leaningsOf, learnHazards } from './hazard-net.ts';
import { shareOf, toSteps } from './small-weights.ts';

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
const LEAST_SQUARE = 1e-6;
const STEPS = 32;
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
 * What learning on from a net needs beside it: its weights as they were before they were put in steps, and how far each was
 * moved, the places of one view after those of another.
 */
export type NetPace = {
  readonly weights: Float32Array;
  readonly squares: Float32Array;
  /** One for each view. */
  readonly biasSquares: readonly number[];
};

/** What was learnt, and how to go on. */
export type LearntNet = { readonly net: SecondNet; readonly pace: NetPace };

/**
 * Learns to tell danger from no danger (logistic regressions by Adagrad, one for each view), and which danger. Each text counts as
 * much as another, however long. The order is drawn from the texts themselves: the same examples, the same net, and an example
 * more or less changes what it says and not, by the luck of the draw, what it does not touch.
 */
export function learn(examples: readonly Example[], options: LearnOptions = LEARN): SecondNet {
  return learnPaced(examples, options).net;
}

/** The same, with what {@link learnOn} needs. */
export function learnPaced(examples: readonly Example[], options: LearnOptions = LEARN): LearntNet {
  const size = PLACES * VIEWS.length;
  const nothing: NetState = {
    weights: new Float32Array(size),
    squares: new Float32Array(size).fill(LEAST_SQUARE),
    biases: VIEWS.map(() => 0),
    biasSquares: VIEWS.map(() => LEAST_SQUARE),
  };
  const { weights, squares, biases, biasSquares } = descended(examples, nothing, options);
  const dangers = examples.flatMap(({ text, features, hazard }) =>
    hazard === null ? [] : [{ features, hazard, seed: textSeed(text) }],
  );
  return {
    net: { weights: inSteps(weights), biases: Float32Array.from(biases), ...learnHazards(dangers) },
    pace: { weights, squares, biasSquares },
  };
}

/** So many passes bring a line that is new about as far as the whole learning brings it. */
const ON: LearnOptions = { ...LEARN, passes: 3 };

/** A small change of what a net was learnt from. */
export type NetChange = { readonly before: readonly Example[]; readonly after: readonly Example[] };

/**
 * Learns on from a net with some examples, as they were and as they will be; the difference of the two goes into the net, so
 * that going on moves nothing by itself.
 *
 * @param change Of plain texts alone: what tells one hazard from another is left as it is.
 */
export function learnOn({ net, pace }: LearntNet, change: NetChange, options: LearnOptions = ON): SecondNet {
  const state = (): NetState => ({
    weights: pace.weights.slice(),
    squares: pace.squares.slice(),
    biases: [...net.biases],
    biasSquares: pace.biasSquares,
  });
  const was = descended(change.before, state(), options);
  const will = descended(change.after, state(), options);
  const weights = pace.weights.map(
    (weight, at) => weight + ((will.weights[at] as number) - (was.weights[at] as number)),
  );
  const biases = net.biases.map((bias, view) => bias + ((will.biases[view] as number) - (was.biases[view] as number)));
  return { ...net, weights: inSteps(weights), biases };
}

/** A place's figures of all views side by side: a text that is read looks at few places. */
function inSteps(weights: Float32Array): Int8Array {
  const steps = new Int8Array(weights.length);
  for (let view = 0; view < VIEWS.length; view++) {
    for (let place = 0; place < PLACES; place++) {
      steps[cell(place, view)] = toSteps(weights[view * PLACES + place] as number, STEPS);
    }
  }
  return steps;
}

type NetState = {
  readonly weights: Float32Array;
  readonly squares: Float32Array;
  readonly biases: readonly number[];
  readonly biasSquares: readonly number[];
};

/** Goes over the examples in each view and moves the state's arrays in place. */
function descended(examples: readonly Example[], state: NetState, options: LearnOptions): NetState {
  const biases = [...state.biases];
  const biasSquares = [...state.biasSquares];
  const seeds = Int32Array.from(examples, ({ text }) => textSeed(text));
  const orders = Array.from({ length: options.passes }, (_, pass) => roundOrder(seeds, mixed(SEED + pass)).order);
  for (let view = 0; view < VIEWS.length; view++) {
    const bias = { at: biases[view] as number, square: biasSquares[view] as number };
    const own = ofView(state, view);
    descendView(examples, view, orders, own, bias, options);
    biases[view] = bias.at;
    biasSquares[view] = bias.square;
  }
  return { ...state, biases, biasSquares };
}

/** The part of the state that is one view's: the same numbers, not a copy. */
function ofView({ weights, squares }: NetState, view: number): Pick<NetState, 'weights' | 'squares'> {
  const [from, to] = [view * PLACES, (view + 1) * PLACES];
  return { weights: weights.subarray(from, to), squares: squares.subarray(from, to) };
}

function descendView(
  examples: readonly Example[],
  view: number,
  orders: readonly (readonly number[])[],
  { weights, squares }: Pick<NetState, 'weights' | 'squares'>,
  bias: { at: number; square: number },
  { step, pull }: LearnOptions,
): void {
  const kinds = VIEWS[view] ?? [];
  const rows = examples.map(({ features }) => Uint32Array.from(placesOf(features, kinds)));
  for (const order of orders) {
    for (const line of order) {
      const at = rows[line] as Uint32Array;
      const { hazard, weight } = examples[line] as Example;
      const share = shareOf(at.length);
      let sum = bias.at;
      for (const each of at) sum += weights[each] as number;
      const error = (logistic(sum * share) - (hazard === null ? 0 : 1)) * weight * share;
      for (const each of at) {
        const slope = error + pull * (weights[each] as number);
        const square = (squares[each] as number) + slope * slope;
        squares[each] = square;
        weights[each] = (weights[each] as number) - (step * slope) / Math.sqrt(square);
      }
      bias.square += error * error;
      bias.at -= (step * error) / Math.sqrt(bias.square);
    }
  }
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
        leanings ??= leaningsOf(net, features);
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

function cell(place: number, view: number): number {
  return place * VIEWS.length + view;
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
