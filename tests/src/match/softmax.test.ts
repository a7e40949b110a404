import { describe, expect, it } from 'vitest';
import { fitSoftmax, type SoftmaxOptions, type SoftmaxTask } from '../../../src/match/softmax.ts';
import type { Vector } from '../../../src/match/vector.ts';

const PLAIN: SoftmaxOptions = { epochs: 1, rate: 0.1, l2: 0, least: 0, dropped: 0 };

const vector = (weights: Record<number, number>): Vector => ({
  at: Int32Array.from(Object.keys(weights).map(Number)),
  weight: Float32Array.from(Object.values(weights)),
});

const task = (over: Partial<SoftmaxTask>): SoftmaxTask => ({
  vectors: [vector({ 0: 0.5, 2: -0.8 })],
  labels: [1],
  lineSeeds: Int32Array.from({ length: over.vectors?.length ?? 1 }, (_, line) => 11 + line),
  featureSeeds: Int32Array.of(21, 22, 23),
  lineWeights: [1],
  classes: 3,
  featureCount: 3,
  groups: [[], [], []],
  groupCount: 0,
  ...over,
});

/** The loss by its definition: minus the logarithm of the right class's share. */
function loss(rows: ArrayLike<number>, { vectors, labels, classes }: SoftmaxTask): number {
  const { at, weight } = vectors[0] as Vector;
  const scores = Array.from({ length: classes }, (_, c) =>
    at.reduce((sum, f, i) => sum + (weight[i] as number) * (rows[f * classes + c] as number), 0),
  );
  const total = scores.reduce((sum, score) => sum + Math.exp(score), 0);
  return Math.log(total) - (scores[labels[0] as number] as number);
}

/** The slope of the loss by each weight, by finite differences. */
function slopes(rows: Float32Array, of: SoftmaxTask): number[] {
  const step = 1e-3;
  return [...rows].map((_, i) => {
    const moved = (by: number) => {
      const copy = Array.from(rows);
      copy[i] = (copy[i] as number) + by;
      return copy;
    };
    return (loss(moved(step), of) - loss(moved(-step), of)) / (2 * step);
  });
}

describe('fitting softmax weights', () => {
  it('steps down the slope that finite differences of the loss give, in Adagrad’s measure', () => {
    const one = task({});
    const fit = fitSoftmax(one, PLAIN, 1);
    const pushed = new Array<number>(9).fill(0);
    let rows = new Float32Array(9);
    for (let round = 0; round < 4; round++) {
      const slope = slopes(rows, one);
      fit.epoch();
      const next = fit.weights().rows;
      for (const [i, g] of slope.entries()) {
        pushed[i] = (pushed[i] as number) + g * g;
        const moved = g === 0 ? 0 : (PLAIN.rate * g) / Math.sqrt(pushed[i] as number);
        expect(next[i] as number).toBeCloseTo((rows[i] as number) - moved, 3);
      }
      rows = Float32Array.from(next);
    }
  });

  it('lets a class without lines of its own learn from its group', () => {
    const kin = task({
      vectors: [vector({ 0: 1 }), vector({ 1: 1 })],
      labels: [0, 2],
      lineWeights: [1, 1],
      groups: [[0], [0], [1]],
      groupCount: 2,
    });
    const fit = fitSoftmax(kin, { ...PLAIN, epochs: 5 }, 1);
    for (let i = 0; i < 5; i++) fit.epoch();
    const { rows } = fit.weights();
    // Class 1 never had a line; feature 0 still speaks for it against class 2, through the group it shares with class 0.
    expect(rows[1] as number).toBeGreaterThan(rows[2] as number);
  });

  it('gives the same weights for the same seed and others for another, when features are dropped', () => {
    const many = task({
      vectors: [vector({ 0: 1, 1: 1, 2: 1 }), vector({ 1: 1 })],
      labels: [0, 1],
      lineWeights: [1, 1],
    });
    const run = (seed: number) => {
      const fit = fitSoftmax(many, { ...PLAIN, dropped: 0.5 }, seed);
      for (let i = 0; i < 3; i++) fit.epoch();
      return [...fit.weights().rows];
    };
    expect(run(3)).toEqual(run(3));
    expect(run(3)).not.toEqual(run(4));
  });

  it('draws chance from the lines themselves, whatever order they come in', () => {
    const vectors = [vector({ 0: 1, 1: 1 }), vector({ 1: 1, 2: 1 }), vector({ 0: 1, 2: 1 })];
    const run = (order: readonly number[]) => {
      const many = task({
        vectors: order.map((i) => vectors[i] as Vector),
        labels: order,
        lineSeeds: Int32Array.from(order, (i) => 11 + i),
        lineWeights: [1, 1, 1],
      });
      const fit = fitSoftmax(many, { ...PLAIN, dropped: 0.3 }, 5);
      for (let i = 0; i < 3; i++) fit.epoch();
      return [...fit.weights().rows];
    };
    expect(run([2, 0, 1])).toEqual(run([0, 1, 2]));
  });

  it('heeds how much a line counts', () => {
    const light = fitSoftmax(task({ lineWeights: [0] }), PLAIN, 1);
    light.epoch();
    expect([...light.weights().rows].every((weight) => weight === 0)).toBe(true);
  });
});
