import { sum } from '../beliefs.ts';
import { type Action, PASS } from '../plan.ts';
import type { Problem } from '../problem.ts';
import type { Observation } from '../types.ts';
import { answered, failedFix, keyOf, type Position, startOf } from './position.ts';

const ANSWERS: readonly Observation[] = ['yes', 'no', 'cannot-tell'];

export type Optimum = { readonly policy: Policy; readonly minutes: number };

/** Chooses what to do at a place. */
export type Policy = (problem: Problem, at: Position) => Action;

/**
 * The best of all walks, by dynamic programming over every set of answers and failed fixes. Exact, and slow: tens of
 * thousands of places for six causes.
 *
 * @returns The policy, and its expected minutes to cure from the start.
 */
export function optimum(problem: Problem): Optimum {
  const known = new Map<number, { readonly action: Action; readonly minutes: number }>();
  const best = (at: Position): { readonly action: Action; readonly minutes: number } => {
    const key = keyOf(problem, at);
    const before = known.get(key);
    if (before !== undefined) return before;
    const total = sum(at.masses);
    let found = { action: PASS, minutes: passMinutes(problem, at) };
    problem.checks.forEach((check, i) => {
      if (check === null || (at.open.checks & (1 << i)) === 0) return;
      let minutes = check.minutes * total;
      for (const answer of ANSWERS) {
        if (answer === 'cannot-tell' && problem.cannotTell === 0) continue;
        minutes += best(answered(problem, at, i, answer)).minutes;
      }
      if (minutes < found.minutes) found = { action: { kind: 'check', i }, minutes };
    });
    problem.fixes.forEach((fix, i) => {
      if (fix === null || (at.open.fixes & (1 << i)) === 0) return;
      const minutes = fix.minutes * total + best(failedFix(problem, at, i)).minutes;
      if (minutes < found.minutes) found = { action: { kind: 'fix', i }, minutes };
    });
    known.set(key, found);
    return found;
  };
  return { policy: (_, at) => best(at).action, minutes: best(startOf(problem)).minutes };
}

/** The expected minutes to cure of a policy, exactly, by going through every walk it can lead to. */
export function expectedMinutes(problem: Problem, policy: Policy): number {
  const known = new Map<number, number>();
  const from = (at: Position): number => {
    const key = keyOf(problem, at);
    const before = known.get(key);
    if (before !== undefined) return before;
    const action = policy(problem, at);
    const total = sum(at.masses);
    let minutes: number;
    if (action.kind === 'pass') minutes = passMinutes(problem, at);
    else if (action.kind === 'fix') {
      minutes = (problem.fixes[action.i]?.minutes ?? 0) * total + from(failedFix(problem, at, action.i));
    } else {
      minutes = (problem.checks[action.i]?.minutes ?? 0) * total;
      for (const answer of ANSWERS) {
        const next = answered(problem, at, action.i, answer);
        if (sum(next.masses) > 0) minutes += from(next);
      }
    }
    known.set(key, minutes);
    return minutes;
  };
  return from(startOf(problem));
}

function passMinutes(problem: Problem, at: Position): number {
  let minutes = 0;
  at.masses.forEach((mass, h) => {
    minutes += mass * (problem.pass[h] ?? 0);
  });
  return minutes;
}
