import type { TopicId } from '../basics/ids.ts';
import { mixed, roundOrder } from '../basics/seeded.ts';
import { shareOf, toSteps } from './small-weights.ts';

/** A danger to learn from: the places of its features in the table, and which hazard it is. */
export type DangerRow = { readonly at: Uint32Array; readonly hazard: TopicId; readonly seed: number };

/**
 * Which hazard a danger is. `hazardWeights` has a row for each place in the table with a figure for each hazard, in
 * {@link STEPS}ths of a log-odd, so that a text reads its few rows and nothing else.
 */
export type HazardNet = { readonly hazards: readonly TopicId[]; readonly hazardWeights: Int8Array };

/** The table of the hazards is smaller than that of danger: fewer texts fill it. */
export const HAZARD_TABLE = 2 ** 17;
const STEPS = 16;
const SEED = 11;
const PASSES = 8;
const STEP = 0.5;
const PULL = 1e-4;
/** An error of less than this teaches nothing. */
const LEAST_ERROR = 1e-5;

/** Softmax regression over the dangers alone, by Adagrad. Each text counts as much as another, however long. */
export function learnHazards(rows: readonly DangerRow[]): HazardNet {
  const hazards = [...new Set(rows.map(({ hazard }) => hazard))].sort();
  const many = hazards.length;
  const weights = new Float32Array(HAZARD_TABLE * many);
  const squares = new Float32Array(HAZARD_TABLE * many).fill(1e-6);
  const seeds = Int32Array.from(rows, ({ seed }) => seed);
  const chances = new Float64Array(many);
  for (let pass = 0; pass < PASSES; pass++) {
    for (const line of roundOrder(seeds, mixed(SEED + pass)).order) {
      const { at, hazard } = rows[line] as DangerRow;
      const share = shareOf(at.length);
      softmax(at, weights, share, chances);
      for (let which = 0; which < many; which++) {
        const error = ((chances[which] as number) - (hazards[which] === hazard ? 1 : 0)) * share;
        if (Math.abs(error) < LEAST_ERROR) continue;
        for (const each of at) {
          const cell = (each % HAZARD_TABLE) * many + which;
          const slope = error + PULL * (weights[cell] as number);
          const square = (squares[cell] as number) + slope * slope;
          squares[cell] = square;
          weights[cell] = (weights[cell] as number) - (STEP * slope) / Math.sqrt(square);
        }
      }
    }
  }
  const hazardWeights = Int8Array.from(weights, (weight) => toSteps(weight, STEPS));
  return { hazards, hazardWeights };
}

/** How much features speak for each hazard, in the order of `hazards`; only the differences mean anything. */
export function leaningsOf({ hazards, hazardWeights }: HazardNet, at: readonly number[]): Float64Array {
  const many = hazards.length;
  const sums = new Int32Array(many);
  for (let place = 0; place < at.length; place++) {
    const row = ((at[place] as number) % HAZARD_TABLE) * many;
    for (let which = 0; which < many; which++)
      sums[which] = (sums[which] as number) + (hazardWeights[row + which] as number);
  }
  const share = shareOf(at.length) / STEPS;
  return Float64Array.from(sums, (sum) => sum * share);
}

function softmax(at: Uint32Array, weights: Float32Array, share: number, chances: Float64Array): void {
  const many = chances.length;
  chances.fill(0);
  for (const each of at) {
    const row = (each % HAZARD_TABLE) * many;
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
