import { lusolve, type Matrix, matrix, multiply, transpose } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { fitRidge } from '../../../src/match/ridge.ts';
import type { Vector } from '../../../src/match/vector.ts';

const LINES: readonly (readonly number[])[] = [
  [0.9, 0, 0.3, 0],
  [0.7, 0.2, 0, 0.1],
  [0, 0.8, 0.4, 0],
  [0, 0.6, 0, 0.5],
  [0.1, 0, 0.2, 0.9],
];
const LABELS = [0, 0, 1, 1, 2];
const vectors: readonly Vector[] = LINES.map((line) => ({
  at: Int32Array.from(line.flatMap((x, i) => (x === 0 ? [] : [i]))),
  weight: Float32Array.from(line.filter((x) => x !== 0)),
}));

describe('the ridge regression', () => {
  it('gives the weights of the closed form', () => {
    const found = fitRidge(vectors, LABELS, 3, 4);
    const x = matrix(LINES.map((line) => [...line]));
    const wanted = [0, 1, 2].map((label) => {
      const share = LABELS.filter((one) => one === label).length / LABELS.length;
      const y = LABELS.map((one) => [(one === label ? 1 : 0) - share]);
      const likeness = multiply(x, transpose(x)) as Matrix;
      const ridged = likeness.map(
        (value, at) => value + ((at as unknown as number[])[0] === (at as unknown as number[])[1] ? 1 : 0),
      );
      return (multiply(transpose(x), lusolve(ridged, y) as Matrix) as Matrix).toArray().flat() as number[];
    });
    for (let f = 0; f < 4; f++) {
      for (let c = 0; c < 3; c++) expect(found[f * 3 + c]).toBeCloseTo(wanted[c]?.[f] as number, 5);
    }
  });

  it('gives nothing when all lines are of one class', () => {
    expect([...fitRidge(vectors, [0, 0, 0, 0, 0], 1, 4)].every((weight) => Math.abs(weight) < 1e-6)).toBe(true);
  });
});
