import type { ScopedCause } from '../knowledge/knowledge.ts';

/**
 * The chances of the arithmetic that are not in the graph. Exactly one fault is assumed: two at once are found one
 * after the other, or by people.
 */
export type Chances = {
  /** The share of beliefs kept for 'something else', that no cause of the graph explains. Default 0.07. */
  readonly other: number;
  /** The chance that an answer is mistaken, where the check does not say. Default 0.05. */
  readonly wrong: number;
  /** The chance that a hirer cannot tell. Default 0.05. */
  readonly cannotTell: number;
};

export const CHANCES: Chances = { other: 0.07, wrong: 0.05, cannotTell: 0.05 };

export type Check = {
  readonly minutes: number;
  /** Chance of yes, by hypothesis, when the hirer can tell. */
  readonly yes: readonly number[];
  /** Doing it resets the main safety switch. */
  readonly reset: boolean;
};

export type Fix = {
  readonly minutes: number;
  readonly success: number;
  readonly reset: boolean;
  readonly fuse: boolean;
};

/**
 * A symptom's causes as numbers. Hypothesis i is cause i of the list; the last one is 'something else'.
 * `checks[i]` and `fixes[i]` belong to cause i; null where it has no check, or where only people can cure it.
 */
export type Problem = {
  readonly prior: readonly number[];
  readonly checks: readonly (Check | null)[];
  readonly fixes: readonly (Fix | null)[];
  /** What a pass costs in minutes, by hypothesis. */
  readonly pass: readonly number[];
  readonly cannotTell: number;
};

/**
 * @param passMinutes The price of a pass. A cause that the hirer cures, but not sooner than that (most such fixes are
 *                    waits), costs its own minutes as well: people cannot make a fridge cool faster either, they can
 *                    only say so later.
 */
export function problemOf(
  causes: readonly ScopedCause[],
  passMinutes: number,
  { other = CHANCES.other, wrong = CHANCES.wrong, cannotTell = CHANCES.cannotTell }: Partial<Chances> = {},
): Problem {
  const known = 1 - other;
  return {
    prior: [...causes.map((cause) => cause.prior * known), other],
    checks: causes.map((cause) => checkOf(cause, causes, wrong)),
    fixes: causes.map(fixOf),
    pass: [...causes.map((cause) => passMinutes + waitAfter(cause, passMinutes)), passMinutes],
    cannotTell,
  };
}

function checkOf(cause: ScopedCause, causes: readonly ScopedCause[], usual: number): Check | null {
  if (cause.check === undefined) return null;
  const { minutes, wrong = usual, also, reset } = cause.check;
  const pointsTo = (other: ScopedCause) => other.id === cause.id || also.includes(other.id);
  return { minutes, reset, yes: [...causes.map((other) => (pointsTo(other) ? 1 - wrong : wrong)), wrong] };
}

function fixOf({ fix }: ScopedCause): Fix | null {
  if (fix.who === 'staff') return null;
  return { minutes: fix.minutes, success: fix.success, reset: fix.reset, fuse: fix.fuse };
}

function waitAfter({ fix }: ScopedCause, passMinutes: number): number {
  return fix.who === 'hirer' && fix.minutes >= passMinutes ? fix.minutes : 0;
}
