import { afterAnswer, afterFailed, type Masses, sum } from './beliefs.ts';
import { type Action, bestPlan, type Open, withoutCheck, withoutFix } from './plan.ts';
import type { Problem } from './problem.ts';
import type { Observation } from './types.ts';

/** An action, and the minutes to cure it promises, weighed by the chance of getting here. */
export type Valued = { readonly action: Action; readonly minutes: number };

const ANSWERS: readonly Observation[] = ['yes', 'no', 'cannot-tell'];
/** Actions closer than this are as good: the first in order stands, so that runs agree. */
const TIE = 1e-12;

/**
 * The best action by looking `depth` actions ahead and, beyond them, at the best plan of fixes alone: one-step
 * look-ahead of Heckerman, Breese and Rommelse (Communications of the ACM 38(3), 1995) is depth 1. At least as good as
 * the plan at every depth; exact once depth reaches the number of actions left.
 */
export function lookAhead(problem: Problem, masses: Masses, open: Open, depth: number): Valued {
  let best = bestPlan(problem, masses, open);
  if (depth === 0) return best;
  const total = sum(masses);
  const atLeast = leastMinutes(problem, masses, open);
  if (atLeast >= best.minutes - TIE) return best;
  const consider = (action: Action, minutes: number): void => {
    if (minutes < best.minutes - TIE) best = { action, minutes };
  };
  for (let i = 0; i < problem.checks.length; i++) {
    const check = problem.checks[i];
    if ((open.checks & (1 << i)) === 0 || check === null || check === undefined) continue;
    const rest = withoutCheck(problem, open, i);
    // Begins with the least the answers can come to, and makes each exact in turn.
    let minutes = check.minutes * total + atLeast;
    for (const answer of ANSWERS) {
      if (minutes >= best.minutes) break;
      if (answer === 'cannot-tell' && problem.cannotTell === 0) continue;
      const after = afterAnswer(problem, masses, i, answer);
      minutes += lookAhead(problem, after, rest, depth - 1).minutes - leastMinutes(problem, after, open);
    }
    consider({ kind: 'check', i }, minutes);
  }
  for (let i = 0; i < problem.fixes.length; i++) {
    const fix = problem.fixes[i];
    if ((open.fixes & (1 << i)) === 0 || fix === null || fix === undefined) continue;
    const failed = afterFailed(problem, masses, i);
    const rest = withoutFix(problem, open, i);
    if (fix.minutes * total + leastMinutes(problem, failed, rest) >= best.minutes) continue;
    const after = lookAhead(problem, failed, rest, depth - 1);
    consider({ kind: 'fix', i }, fix.minutes * total + after.minutes);
  }
  return best;
}

/** What no walk can go below, even if it knew the truth: each cause's own fix and, where that fails, a pass; or the pass. */
function leastMinutes(problem: Problem, masses: Masses, open: Open): number {
  let minutes = 0;
  for (let h = 0; h < masses.length; h++) {
    const pass = problem.pass[h] ?? 0;
    const fix = (open.fixes & (1 << h)) === 0 ? null : problem.fixes[h];
    const least = fix == null ? pass : Math.min(pass, fix.minutes + (1 - fix.success) * pass);
    minutes += (masses[h] ?? 0) * least;
  }
  return minutes;
}
