import { afterAnswer, afterFailed, type Masses } from '../beliefs.ts';
import { everythingOpen, type Open, withoutCheck, withoutFix } from '../plan.ts';
import type { Problem } from '../problem.ts';
import type { Observation } from '../types.ts';

/** A place in the tree of all walks: two ways of getting to the same answers and failed fixes are one place. */
export type Position = {
  readonly open: Open;
  /** What the model believes here. */
  readonly masses: Masses;
  /** Base 4 by cause: 0 not asked, 1 yes, 2 no, 3 cannot tell. */
  readonly answers: number;
  /** Bit i: the fix of cause i was tried and failed. */
  readonly failed: number;
};

const DIGITS: Readonly<Record<Observation, number>> = { yes: 1, no: 2, 'cannot-tell': 3 };
const OBSERVATIONS: readonly (Observation | null)[] = [null, 'yes', 'no', 'cannot-tell'];

export function startOf(problem: Problem): Position {
  return { open: everythingOpen(problem), masses: Float64Array.from(problem.prior), answers: 0, failed: 0 };
}

export function answered(problem: Problem, at: Position, i: number, answer: Observation): Position {
  return {
    open: withoutCheck(problem, at.open, i),
    masses: afterAnswer(problem, at.masses, i, answer),
    answers: at.answers + DIGITS[answer] * 4 ** i,
    failed: at.failed,
  };
}

export function failedFix(problem: Problem, at: Position, i: number): Position {
  return {
    open: withoutFix(problem, at.open, i),
    masses: afterFailed(problem, at.masses, i),
    answers: at.answers,
    failed: at.failed | (1 << i),
  };
}

/** What check `i` said; null when it was not asked. */
export function answerTo(at: Position, i: number): Observation | null {
  return OBSERVATIONS[Math.floor(at.answers / 4 ** i) % 4] ?? null;
}

/** One number a place, for memory. */
export function keyOf(problem: Problem, at: Position): number {
  return at.answers * 2 ** problem.fixes.length + at.failed;
}
