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
  return sum(jointMinutes(problem, policy));
}

/**
 * The same where hypothesis h is the truth, for each h: their mean, weighed by any shares, is what those would bring.
 * 0 for a hypothesis that cannot be.
 */
export function minutesByTruth(problem: Problem, policy: Policy): Float64Array {
  return jointMinutes(problem, policy).map((minutes, h) => {
    const prior = problem.prior[h] ?? 0;
    return prior > 0 ? minutes / prior : 0;
  });
}

/** By hypothesis, weighed by its prior. */
function jointMinutes(problem: Problem, policy: Policy): Float64Array {
  const known = new Map<number, Float64Array>();
  const from = (at: Position): Float64Array => {
    const key = keyOf(problem, at);
    const before = known.get(key);
    if (before !== undefined) return before;
    const action = policy(problem, at);
    const minutes = at.masses.map((mass, h) => mass * minutesOf(problem, action, h));
    for (const next of placesAfter(problem, at, action)) {
      const later = from(next);
      for (let h = 0; h < minutes.length; h++) minutes[h] = (minutes[h] ?? 0) + (later[h] ?? 0);
    }
    known.set(key, minutes);
    return minutes;
  };
  return from(startOf(problem));
}

function minutesOf(problem: Problem, action: Action, h: number): number {
  switch (action.kind) {
    case 'pass':
      return problem.pass[h] ?? 0;
    case 'fix':
      return problem.fixes[action.i]?.minutes ?? 0;
    case 'check':
      return problem.checks[action.i]?.minutes ?? 0;
  }
}

function placesAfter(problem: Problem, at: Position, action: Action): readonly Position[] {
  switch (action.kind) {
    case 'pass':
      return [];
    case 'fix':
      return [failedFix(problem, at, action.i)];
    case 'check':
      return ANSWERS.map((answer) => answered(problem, at, action.i, answer)).filter((next) => sum(next.masses) > 0);
  }
}

function passMinutes(problem: Problem, at: Position): number {
  let minutes = 0;
  at.masses.forEach((mass, h) => {
    minutes += mass * (problem.pass[h] ?? 0);
  });
  return minutes;
}
