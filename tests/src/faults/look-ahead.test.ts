import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookAhead } from '../../../src/faults/look-ahead.ts';
import { everythingOpen } from '../../../src/faults/plan.ts';
import type { Problem } from '../../../src/faults/problem.ts';
import { expectedMinutes, optimum } from '../../../src/faults/simulation/optimum.ts';
import { smallProblem } from './a-problem.ts';

const valueAt = (problem: Problem, depth: number) =>
  lookAhead(problem, Float64Array.from(problem.prior), everythingOpen(problem), depth).minutes;

describe('lookAhead', () => {
  it('promises no more minutes the further it looks, and never fewer than the best of all walks', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const best = optimum(problem).minutes;
        const values = [0, 1, 2, 3].map((depth) => valueAt(problem, depth));
        values.forEach((value, depth) => {
          expect(value).toBeGreaterThanOrEqual(best - 1e-9);
          expect(value).toBeLessThanOrEqual((values[depth - 1] ?? Number.POSITIVE_INFINITY) + 1e-9);
        });
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('is the best of all walks, found another way, once it looks over every action left', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        expect(valueAt(problem, 6)).toBeCloseTo(optimum(problem).minutes, 9);
      }),
      { numRuns: 60, seed: 12 },
    );
  });
});

describe('optimum', () => {
  it('takes as many minutes as it promises', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const { policy, minutes } = optimum(problem);
        expect(expectedMinutes(problem, policy)).toBeCloseTo(minutes, 9);
      }),
      { numRuns: 60, seed: 13 },
    );
  });
});
