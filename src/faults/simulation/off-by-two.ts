import type { Problem } from '../problem.ts';
import { minutesByTruth, type Policy } from './optimum.ts';

/** Policies that go by the written priors, right or wrong. */
export const FIXED_RIVALS = ['ours', 'fixesOnly', 'checkThenFix', 'listed'] as const;
export type FixedRival = (typeof FIXED_RIVALS)[number];
export type Minutes = Readonly<Record<FixedRival, number>>;

/**
 * What happens where every prior is off by two: each cause's true share is twice or half of its prior, in every
 * combination, while all policies go on believing the priors. Expected minutes, computed and not played.
 */
export type OffByTwo = {
  readonly combinations: number;
  readonly mean: Minutes;
  /** The combination in which ours does worst beside check-then-fix. */
  readonly worst: Minutes;
  /** Share of the combinations in which ours takes fewer minutes than the rival. */
  readonly betterThan: { readonly fixesOnly: number; readonly checkThenFix: number };
};

export function offByTwo(problem: Problem, policies: Readonly<Record<FixedRival, Policy>>): OffByTwo {
  const byTruth = forFixed((rival) => minutesByTruth(problem, policies[rival]));
  const all = skews(problem.prior).map((shares) =>
    forFixed((rival) => shares.reduce((sum, share, h) => sum + share * (byTruth[rival][h] ?? 0), 0)),
  );
  const against = (rival: 'fixesOnly' | 'checkThenFix') =>
    all.filter((minutes) => minutes.ours < minutes[rival]).length / all.length;
  return {
    combinations: all.length,
    mean: forFixed((rival) => all.reduce((sum, minutes) => sum + minutes[rival], 0) / all.length),
    worst: all.reduce((a, b) => (b.ours / b.checkThenFix > a.ours / a.checkThenFix ? b : a)),
    betterThan: { fixesOnly: against('fixesOnly'), checkThenFix: against('checkThenFix') },
  };
}

export function forFixed<T>(make: (rival: FixedRival) => T): Record<FixedRival, T> {
  return {
    ours: make('ours'),
    fixesOnly: make('fixesOnly'),
    checkThenFix: make('checkThenFix'),
    listed: make('listed'),
  };
}

/** Every prior doubled or halved, in every combination, each brought back to a sum of 1. */
function skews(prior: readonly number[]): number[][] {
  return Array.from({ length: 2 ** prior.length }, (_, bits) => {
    const skewed = prior.map((share, h) => share * ((bits >> h) & 1 ? 2 : 0.5));
    const total = skewed.reduce((sum, share) => sum + share, 0);
    return skewed.map((share) => share / total);
  });
}
