import fc from 'fast-check';
import type { Problem } from '../../../src/faults/problem.ts';

/** Random problems of two or three causes, so small that every walk can be gone through. */
export const smallProblem: fc.Arbitrary<Problem> = fc
  .integer({ min: 2, max: 3 })
  .chain((count) => {
    const chance = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    const minutes = fc.double({ min: 0.5, max: 60, noNaN: true });
    const each = <T>(item: fc.Arbitrary<T>, n = count) => fc.array(item, { minLength: n, maxLength: n });
    return fc.record({
      prior: each(chance, count + 1),
      checks: each(fc.option(fc.record({ minutes, yes: each(chance, count + 1), reset: fc.boolean() }))),
      fixes: each(fc.option(fc.record({ minutes, success: chance, reset: fc.boolean(), fuse: fc.boolean() }))),
      pass: each(minutes, count + 1),
      cannotTell: fc.constantFrom(0, 0.1),
    });
  })
  .map((problem) => {
    const total = problem.prior.reduce((sum, prior) => sum + prior, 0);
    return { ...problem, prior: problem.prior.map((prior) => prior / total) };
  });
