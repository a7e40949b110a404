import { mixed, roundOrder } from '../basics/seeded.ts';
import type { Vector } from './vector.ts';

export type SoftmaxOptions = {
  readonly epochs: number;
  /** Adagrad's step. */
  readonly rate: number;
  /** Pull towards zero, on each weight when it is touched. */
  readonly l2: number;
  /** Classes whose probability is this small learn nothing from a line: most of them, most of the time. */
  readonly least: number;
  /** The share of a line's features left out at random each time it is read, so that none is leant on alone. */
  readonly dropped: number;
};

/** Dense weights, one row for each feature with a number for each class. */
export type Weights = { readonly rows: Float32Array; readonly classes: number };

export type SoftmaxTask = {
  readonly vectors: readonly Vector[];
  readonly labels: readonly number[];
  /** A number for each line and each feature that depends on its text alone: chance is drawn from these. */
  readonly lineSeeds: Int32Array;
  readonly featureSeeds: Int32Array;
  /** How much each line counts. */
  readonly lineWeights: readonly number[];
  readonly classes: number;
  readonly featureCount: number;
  /** For each class the groups it shares weights with: its system, its kind. */
  readonly groups: readonly (readonly number[])[];
  readonly groupCount: number;
};

/**
 * Where a fit stands: for each feature a weight for each class and, behind them, each group; `pushed` says how far each was
 * moved, which makes its next steps smaller.
 */
export type FitState = { readonly rows: Float32Array; readonly pushed: Float32Array };

/** Fits in steps of one epoch, so that a worker can stop between them. */
export type Fit = { readonly epoch: () => void; readonly weights: () => Weights; readonly state: FitState };

/**
 * Multinomial logistic regression by stochastic gradient steps (Adagrad; Duchi, Hazan, Singer 2011). A class's weight
 * is its own plus those of its groups, which all of their classes move; the sum is folded when the weights are read.
 * There is no bias: how many lines a class has says nothing about how often hirers ask for it.
 *
 * The order of the lines and what is left out of each are drawn from the lines' own text, so that a line more or less
 * changes what it says and not, by the luck of the draw, everything else.
 *
 * @param from Goes on from here, in a copy; left out: from zero.
 */
export function fitSoftmax(
  task: SoftmaxTask,
  options: SoftmaxOptions,
  seed: number,
  from: FitState | null = null,
): Fit {
  const { vectors, labels, lineSeeds, featureSeeds, lineWeights, classes, featureCount, groups, groupCount } = task;
  const { rate, l2, least, dropped } = options;
  const columns = classes + groupCount;
  const rows = from?.rows.slice() ?? new Float32Array(featureCount * columns);
  const pushed = from?.pushed.slice() ?? new Float32Array(featureCount * columns);
  const scores = new Float64Array(columns);
  const error = new Float64Array(columns);
  const active = new Int32Array(columns);
  const longest = vectors.reduce((most, { at }) => Math.max(most, at.length), 0);
  const kept = new Int32Array(longest);
  const values = new Float64Array(longest);

  /** Sets `error` to the slope of the loss by each column's score; returns how many columns in `active` have any. */
  const judge = (count: number, label: number, lineWeight: number): number => {
    scores.fill(0);
    for (let i = 0; i < count; i++) {
      const base = (kept[i] as number) * columns;
      const x = values[i] as number;
      for (let c = 0; c < columns; c++) scores[c] = (scores[c] as number) + x * (rows[base + c] as number);
    }
    softmaxOf(scores, classes, groups);
    error.fill(0);
    let moving = 0;
    for (let c = 0; c < classes; c++) {
      const p = scores[c] as number;
      if (p < least && c !== label) continue;
      const slope = (p - (c === label ? 1 : 0)) * lineWeight;
      error[c] = slope;
      active[moving++] = c;
      for (const g of groups[c] as readonly number[]) error[classes + g] = (error[classes + g] as number) + slope;
    }
    for (let g = classes; g < columns; g++) if (Math.abs(error[g] as number) >= least) active[moving++] = g;
    return moving;
  };

  const step = (vector: Vector, label: number, lineWeight: number, chance: number): void => {
    let count = 0;
    for (let i = 0; i < vector.at.length; i++) {
      const place = vector.at[i] as number;
      if (mixed(chance ^ (featureSeeds[place] as number)) / 4294967296 < dropped) continue;
      kept[count] = place;
      values[count++] = (vector.weight[i] as number) / (1 - dropped);
    }
    const moving = judge(count, label, lineWeight);
    for (let i = 0; i < count; i++) {
      const base = (kept[i] as number) * columns;
      const x = values[i] as number;
      for (let k = 0; k < moving; k++) {
        const c = active[k] as number;
        const place = base + c;
        const slope = (error[c] as number) * x + l2 * (rows[place] as number);
        const total = (pushed[place] as number) + slope * slope;
        pushed[place] = total;
        rows[place] = (rows[place] as number) - (rate * slope) / Math.sqrt(total + 1e-8);
      }
    }
  };

  let round = 0;
  return {
    epoch: () => {
      const { order, keys } = roundOrder(lineSeeds, mixed(seed + ++round));
      for (const line of order) {
        step(vectors[line] as Vector, labels[line] as number, lineWeights[line] as number, keys[line] as number);
      }
    },
    state: { rows, pushed },
    weights: () => ({ rows: fold(rows, featureCount, classes, columns, groups), classes }),
  };
}

/** Turns the first `classes` scores, with their groups' scores behind them, into probabilities in place. */
function softmaxOf(scores: Float64Array, classes: number, groups: readonly (readonly number[])[]): void {
  let highest = -Infinity;
  for (let c = 0; c < classes; c++) {
    let score = scores[c] as number;
    for (const g of groups[c] as readonly number[]) score += scores[classes + g] as number;
    scores[c] = score;
    if (score > highest) highest = score;
  }
  let sum = 0;
  for (let c = 0; c < classes; c++) {
    const raised = Math.exp((scores[c] as number) - highest);
    scores[c] = raised;
    sum += raised;
  }
  for (let c = 0; c < classes; c++) scores[c] = (scores[c] as number) / sum;
}

function fold(
  rows: Float32Array,
  featureCount: number,
  classes: number,
  columns: number,
  groups: readonly (readonly number[])[],
): Float32Array {
  const folded = new Float32Array(featureCount * classes);
  for (let f = 0; f < featureCount; f++) {
    for (let c = 0; c < classes; c++) {
      let weight = rows[f * columns + c] as number;
      for (const g of groups[c] as readonly number[]) weight += rows[f * columns + classes + g] as number;
      folded[f * classes + c] = weight;
    }
  }
  return folded;
}
