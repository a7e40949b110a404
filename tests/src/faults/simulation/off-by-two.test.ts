import { describe, expect, it } from 'vitest';
import { problemOf } from '../../../../src/faults/problem.ts';
import { offByTwo } from '../../../../src/faults/simulation/off-by-two.ts';
import { expectedMinutes, minutesByTruth } from '../../../../src/faults/simulation/optimum.ts';
import { likeliestChecks, likeliestFixes, listed, ours } from '../../../../src/faults/simulation/policies.ts';
import { aCause } from '../a-cause.ts';

const policies = { ours, fixesOnly: likeliestFixes, checkThenFix: likeliestChecks, listed };
/** Two causes as likely, one of them dear to begin with. */
const CAUSES = [
  aCause('slow', 0.5, { check: null, fix: { minutes: 20 } }),
  aCause('fast', 0.5, { check: null, fix: { minutes: 4 } }),
];
const PROBLEM = problemOf(CAUSES, 60, { other: 0 });

describe('offByTwo', () => {
  const { combinations, mean, worst, betterThan } = offByTwo(problemOf(CAUSES, 60), policies);

  it('goes through every combination of doubled and halved shares, something else among them', () => {
    expect(combinations).toBe(8);
  });

  it('finds the combination that is worst for ours: here the one that makes the dear cause the likely one', () => {
    // Fixes only begins with the slow fix: 20 minutes, or 24 where that was not it.
    expect(worst.ours / worst.fixesOnly).toBeGreaterThan(mean.ours / mean.fixesOnly);
    expect(betterThan.fixesOnly).toBeGreaterThan(0.5);
    expect(betterThan.fixesOnly).toBeLessThanOrEqual(1);
  });
});

describe('minutesByTruth', () => {
  it('gives what each truth would take', () => {
    expect([...minutesByTruth(PROBLEM, likeliestFixes)].slice(0, 2)).toEqual([20, 24]);
    expect([...minutesByTruth(PROBLEM, ours)].slice(0, 2)).toEqual([24, 4]);
  });

  it('has the expected minutes as its mean by the priors', () => {
    expect(expectedMinutes(PROBLEM, ours)).toBeCloseTo(14, 12);
  });
});
