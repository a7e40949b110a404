import type { TopicId } from '../basics/ids.ts';
import { mixed, roundOrder } from '../basics/seeded.ts';
import { type Features, type Kind, placesOf } from './features.ts';
import { shareOf, toSteps } from './small-weights.ts';

/** A danger to learn from, and which hazard it is. */
export type DangerRow = { readonly features: Features; readonly hazard: TopicId; readonly seed: number };

/**
 * Which hazard a danger is. `hazardWeights` has a table for each of the {@link VIEWS}: a row for each place with a figure for
 * each hazard, in {@link STEPS}ths of a log-odd, so that a text reads its few rows and nothing else.
 */
export type HazardNet = { readonly hazards: readonly TopicId[]; readonly hazardWeights: readonly Int8Array[] };

/**
 * Two opinions, from what the words look like and from what they mean, whose leanings are averaged: out of a hundred dangers
 * that neither had learnt, half of one fewer is taken for another than by one that sees everything.
 */
const VIEWS: readonly (readonly Kind[])[] = [
  ['words', 'apart', 'letters'],
  ['words', 'rules', 'senses'],
];

/** The table of the hazards is smaller than that of danger: fewer texts fill it. */
export const HAZARD_TABLE = 2 ** 17;
const STEPS = 16;
const SEED = 11;
const PASSES = 8;
const STEP = 0.5;
const PULL = 1e-4;
/** An error of less than this teaches nothing. */
const LEAST_ERROR = 1e-5;

/** Softmax regressions over the dangers alone, one for each view. Each text counts as much as another, however long. */
export function learnHazards(rows: readonly DangerRow[]): HazardNet {
  const hazards = [...new Set(rows.map(({ hazard }) => hazard))].sort();
  const wanted = Int32Array.from(rows, ({ hazard }) => hazards.indexOf(hazard));
  const seeds = Int32Array.from(rows, ({ seed }) => seed);
  const hazardWeights = VIEWS.map((kinds) =>
    learnView(
      rows.map(({ features }) => Uint32Array.from(placesOf(features, kinds), inTable)),
      wanted,
      seeds,
      hazards.length,
    ),
  );
  return { hazards, hazardWeights };
}

/** By Adagrad. `rows` has the places of each text, `wanted` the number of its hazard. */
function learnView(rows: readonly Uint32Array[], wanted: Int32Array, seeds: Int32Array, many: number): Int8Array {
  const weights = new Float32Array(HAZARD_TABLE * many);
  const squares = new Float32Array(HAZARD_TABLE * many).fill(1e-6);
  const chances = new Float64Array(many);
  for (let pass = 0; pass < PASSES; pass++) {
    for (const line of roundOrder(seeds, mixed(SEED + pass)).order) {
      const at = rows[line] as Uint32Array;
      const share = shareOf(at.length);
      softmax(at, weights, share, chances);
      for (let which = 0; which < many; which++) {
        const error = ((chances[which] as number) - (which === wanted[line] ? 1 : 0)) * share;
        if (Math.abs(error) < LEAST_ERROR) continue;
        for (const each of at) {
          const cell = each * many + which;
          const slope = error + PULL * (weights[cell] as number);
          const square = (squares[cell] as number) + slope * slope;
          squares[cell] = square;
          weights[cell] = (weights[cell] as number) - (STEP * slope) / Math.sqrt(square);
        }
      }
    }
  }
  return Int8Array.from(weights, (weight) => toSteps(weight, STEPS));
}

/** How much features speak for each hazard, in the order of `hazards`; only the differences mean anything. */
export function leaningsOf({ hazards, hazardWeights }: HazardNet, features: Features): Float64Array {
  const many = hazards.length;
  const leanings = new Float64Array(many);
  hazardWeights.forEach((table, view) => {
    const at = placesOf(features, VIEWS[view] ?? []);
    const sums = new Int32Array(many);
    for (let place = 0; place < at.length; place++) {
      const row = inTable(at[place] as number) * many;
      for (let which = 0; which < many; which++) sums[which] = (sums[which] as number) + (table[row + which] as number);
    }
    const share = shareOf(at.length) / STEPS / hazardWeights.length;
    for (let which = 0; which < many; which++)
      leanings[which] = (leanings[which] as number) + (sums[which] as number) * share;
  });
  return leanings;
}

function inTable(place: number): number {
  return place % HAZARD_TABLE;
}

function softmax(at: Uint32Array, weights: Float32Array, share: number, chances: Float64Array): void {
  const many = chances.length;
  chances.fill(0);
  for (const each of at) {
    const row = each * many;
    for (let which = 0; which < many; which++)
      chances[which] = (chances[which] as number) + (weights[row + which] as number);
  }
  let most = Number.NEGATIVE_INFINITY;
  for (const sum of chances) most = Math.max(most, sum * share);
  let total = 0;
  for (let which = 0; which < many; which++) {
    chances[which] = Math.exp((chances[which] as number) * share - most);
    total += chances[which] as number;
  }
  for (let which = 0; which < many; which++) chances[which] = (chances[which] as number) / total;
}
