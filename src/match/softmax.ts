import { shuffled } from '../basics/seeded.ts';
import type { Vector } from './vector.ts';

export type SoftmaxOptions = {
  readonly epochs: number;
  /** Adagrad's step. */
  readonly rate: number;
  /** Pull towards zero, on each weight when it is touched. */
  readonly l2: number;
  /** Classes whose probability is this small learn nothing from a line: most of them, most of the time. */
  readonly least: number;
};

/** Dense weights, one row for each feature with a number for each class; `bias` one for each class. */
export type Weights = { readonly rows: Float32Array; readonly bias: Float32Array; readonly classes: number };

export type SoftmaxTask = {
  readonly vectors: readonly Vector[];
  readonly labels: readonly number[];
  readonly classes: number;
  readonly featureCount: number;
  /** For each class the groups it shares weights with: its part, system and kind. */
  readonly groups: readonly (readonly number[])[];
  readonly groupCount: number;
};

/** Fits in steps of one epoch, so that a worker can stop between them. */
export type Fit = { readonly epoch: () => void; readonly weights: () => Weights };

/**
 * Multinomial logistic regression by stochastic gradient steps (Adagrad; Duchi, Hazan, Singer 2011). A class's weight
 * is its own plus those of its groups, which all of their classes move; the sum is folded when the weights are read.
 */
export function fitSoftmax(task: SoftmaxTask, options: SoftmaxOptions, random: () => number): Fit {
  const { vectors, labels, classes, featureCount, groups, groupCount } = task;
  const { rate, l2, least } = options;
  const columns = classes + groupCount;
  const rows = new Float32Array(featureCount * columns);
  const pushed = new Float32Array(featureCount * columns);
  const bias = new Float32Array(classes);
  const biasPushed = new Float32Array(classes);
  const scores = new Float64Array(columns);
  const active = new Int32Array(columns);
  const error = new Float64Array(columns);

  const step = (vector: Vector, label: number): void => {
    scores.fill(0);
    const { at, weight } = vector;
    for (let i = 0; i < at.length; i++) {
      const base = (at[i] as number) * columns;
      const x = weight[i] as number;
      for (let c = 0; c < columns; c++) scores[c] = (scores[c] as number) + x * (rows[base + c] as number);
    }
    let highest = -Infinity;
    for (let c = 0; c < classes; c++) {
      let score = (scores[c] as number) + (bias[c] as number);
      for (const g of groups[c] as readonly number[]) score += scores[classes + g] as number;
      scores[c] = score;
      if (score > highest) highest = score;
    }
    let sum = 0;
    for (let c = 0; c < classes; c++) sum += scores[c] = Math.exp((scores[c] as number) - highest);
    error.fill(0, classes);
    let count = 0;
    for (let c = 0; c < classes; c++) {
      const p = (scores[c] as number) / sum;
      if (p < least && c !== label) continue;
      const e = p - (c === label ? 1 : 0);
      error[c] = e;
      active[count++] = c;
      for (const g of groups[c] as readonly number[]) error[classes + g] = (error[classes + g] as number) + e;
      biasPushed[c] = (biasPushed[c] as number) + e * e;
      bias[c] = (bias[c] as number) - (rate * e) / Math.sqrt((biasPushed[c] as number) + 1e-8);
    }
    for (let g = classes; g < columns; g++) if (Math.abs(error[g] as number) >= least) active[count++] = g;
    for (let i = 0; i < at.length; i++) {
      const base = (at[i] as number) * columns;
      const x = weight[i] as number;
      for (let k = 0; k < count; k++) {
        const c = active[k] as number;
        const place = base + c;
        const slope = (error[c] as number) * x + l2 * (rows[place] as number);
        const total = (pushed[place] as number) + slope * slope;
        pushed[place] = total;
        rows[place] = (rows[place] as number) - (rate * slope) / Math.sqrt(total + 1e-8);
      }
    }
  };

  const order = vectors.map((_, i) => i);
  return {
    epoch: () => {
      for (const line of shuffled(order, random)) step(vectors[line] as Vector, labels[line] as number);
    },
    weights: () => ({ rows: fold(rows, featureCount, classes, columns, groups), bias, classes }),
  };
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
