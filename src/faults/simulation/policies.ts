import { choose } from '../next-step.ts';
import { PASS } from '../plan.ts';
import type { Problem } from '../problem.ts';
import type { Policy } from './optimum.ts';
import { answerTo, type Position } from './position.ts';

/** What Pitchhand does. */
export const ours: Policy = (problem, at) => choose(problem, at.masses, at.open);

/** Fixes only, the likeliest cause first, as a printed list would have it; people when the list comes to their work. */
export const likeliestFixes: Policy = (problem, at) => {
  for (const i of byPrior(problem)) {
    if (problem.fixes[i] === null) return PASS;
    if (isOpen(at.open.fixes, i)) return { kind: 'fix', i };
  }
  return PASS;
};

/** The likeliest cause first: its check, and its fix unless the check says no. */
export const likeliestChecks: Policy = (problem, at) => checkThenFix(problem, at, byPrior(problem));

/** The same in the order in which the graph lists the causes. */
export const listed: Policy = (problem, at) =>
  checkThenFix(
    problem,
    at,
    problem.fixes.map((_, i) => i),
  );

/** Any check or fix that is open, until no fix is. */
export function atRandom(random: () => number): Policy {
  return (problem, at) => {
    if (at.open.fixes === 0) return PASS;
    const count = problem.fixes.length;
    for (;;) {
      const pick = Math.floor(random() * 2 * count);
      const i = pick % count;
      if (pick < count && isOpen(at.open.checks, i)) return { kind: 'check', i };
      if (pick >= count && isOpen(at.open.fixes, i)) return { kind: 'fix', i };
    }
  };
}

function checkThenFix(problem: Problem, at: Position, order: readonly number[]) {
  for (const i of order) {
    if (isOpen(at.open.checks, i)) return { kind: 'check', i } as const;
    if (answerTo(at, i) === 'no') continue;
    if (problem.fixes[i] === null) return PASS;
    if (isOpen(at.open.fixes, i)) return { kind: 'fix', i } as const;
  }
  return PASS;
}

function byPrior(problem: Problem): number[] {
  return problem.fixes.map((_, i) => i).sort((a, b) => (problem.prior[b] ?? 0) - (problem.prior[a] ?? 0) || a - b);
}

function isOpen(bits: number, i: number): boolean {
  return (bits & (1 << i)) !== 0;
}
