import type { ScopedCause } from '../knowledge/knowledge.ts';
import type { Problem } from './problem.ts';
import type { Observation, Walk } from './types.ts';

/**
 * What is believed: one mass for each hypothesis, not normalised. The sum is the chance of everything seen so far,
 * which lets look-ahead add up branches without dividing.
 */
export type Masses = Float64Array;

/** Bayes' rule for an answer to check `i`. */
export function afterAnswer(problem: Problem, masses: Masses, i: number, answer: Observation): Masses {
  const check = problem.checks[i];
  if (check === null || check === undefined) return masses;
  const { cannotTell } = problem;
  const after = new Float64Array(masses.length);
  for (let h = 0; h < after.length; h++) {
    const mass = masses[h] ?? 0;
    const yes = check.yes[h] ?? 0;
    after[h] =
      answer === 'cannot-tell' ? mass * cannotTell : mass * (1 - cannotTell) * (answer === 'yes' ? yes : 1 - yes);
  }
  return after;
}

/** A fix that did not help leaves its cause only as likely as the fix is fallible. */
export function afterFailed(problem: Problem, masses: Masses, i: number): Masses {
  const failed = masses.slice();
  failed[i] = (masses[i] ?? 0) * (1 - (problem.fixes[i]?.success ?? 0));
  return failed;
}

/** What the walk has shown so far: its opening words, the answers, the fixes that failed. */
export function massesOf(problem: Problem, causes: readonly ScopedCause[], walk: Walk): Masses {
  let masses = startingMasses(problem, causes, walk);
  for (const done of walk.done) {
    const i = causes.findIndex((cause) => cause.id === done.cause);
    if (i < 0 || done.kind === 'stop') continue;
    if (done.kind === 'fix') masses = done.worked === false ? afterFailed(problem, masses, i) : masses;
    // A sure answer (wrong: 0) that contradicts another must not leave nothing to believe in.
    else masses = orBefore(afterAnswer(problem, masses, i, done.answer), masses);
  }
  return masses;
}

export function sum(masses: Masses): number {
  let total = 0;
  for (let h = 0; h < masses.length; h++) total += masses[h] ?? 0;
  return total;
}

function startingMasses(problem: Problem, causes: readonly ScopedCause[], walk: Walk): Masses {
  return Float64Array.from(problem.prior, (prior, h) => {
    const id = causes[h]?.id;
    return prior * (id === undefined ? 1 : (walk.leaning[id] ?? 1));
  });
}

function orBefore(after: Masses, before: Masses): Masses {
  return sum(after) > 0 ? after : before;
}
