import { describe, expect, it } from 'vitest';
import { seeded } from '../../../../src/basics/seeded.ts';
import { problemOf } from '../../../../src/faults/problem.ts';
import { drawHirer, type Hirer, play } from '../../../../src/faults/simulation/hirer.ts';
import type { Policy } from '../../../../src/faults/simulation/optimum.ts';
import { atRandom, likeliestChecks, likeliestFixes, listed } from '../../../../src/faults/simulation/policies.ts';
import { aCause } from '../a-cause.ts';

const CAUSES = [
  aCause('rare', 0.2, { fix: { minutes: 2 } }),
  aCause('common', 0.5, { fix: { minutes: 7 } }),
  aCause('staff', 0.3, { fix: { who: 'staff' } }),
];
const PROBLEM = problemOf(CAUSES, 30);
/** A hirer with a given fault, who answers right and whose fix works. */
const withFault = (truth: number): Hirer => ({
  truth,
  answers: CAUSES.map((_, i) => (i === truth ? 'yes' : 'no')),
  cures: CAUSES.map((_, i) => i === truth),
});
const played = (policy: Policy, truth: number) => play(PROBLEM, policy, withFault(truth));

describe('the rivals', () => {
  it('fixes only: the likeliest cause first, people when their work is next', () => {
    expect(played(likeliestFixes, 1)).toEqual({ minutes: 7, steps: 1, cured: true });
    expect(played(likeliestFixes, 0)).toEqual({ minutes: 7 + 30, steps: 1, cured: false });
  });

  it('check then fix: passes over a cause whose check says no', () => {
    expect(played(likeliestChecks, 1)).toEqual({ minutes: 1 + 7, steps: 2, cured: true });
    expect(played(likeliestChecks, 0)).toEqual({ minutes: 3 + 2, steps: 4, cured: true });
    expect(played(likeliestChecks, 2)).toEqual({ minutes: 2 + 30, steps: 2, cured: false });
  });

  it('the listed order begins with what is listed first', () => {
    expect(played(listed, 0)).toEqual({ minutes: 1 + 2, steps: 2, cured: true });
  });

  it('random tries every fix before it passes', () => {
    expect(played(atRandom(seeded(1)), 2)).toMatchObject({ cured: false });
    expect(played(atRandom(seeded(1)), 2).minutes).toBeGreaterThanOrEqual(2 + 7 + 30);
  });
});

describe('drawHirer', () => {
  it('draws faults as often as the priors say', () => {
    const random = seeded(2);
    const counts = [0, 0, 0, 0];
    for (let i = 0; i < 20_000; i++) {
      const { truth } = drawHirer(PROBLEM, random);
      counts[truth] = (counts[truth] ?? 0) + 1;
    }
    counts.forEach((count, h) => {
      expect(count / 20_000).toBeCloseTo(PROBLEM.prior[h] ?? 0, 1);
    });
  });

  it('cures only what is at fault', () => {
    const random = seeded(3);
    for (let i = 0; i < 200; i++) {
      const { truth, cures } = drawHirer(PROBLEM, random);
      cures.forEach((each, h) => {
        if (each) expect(h).toBe(truth);
      });
    }
  });
});
