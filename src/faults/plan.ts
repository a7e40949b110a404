import { type Masses, sum } from './beliefs.ts';
import type { Problem } from './problem.ts';

/** What may still be done: bit i of each is the check or the fix of cause i. `resets` is how many are still allowed. */
export type Open = { readonly checks: number; readonly fixes: number; readonly resets: number; readonly fuses: number };

export type Action =
  | { readonly kind: 'check'; readonly i: number }
  | { readonly kind: 'fix'; readonly i: number }
  | { readonly kind: 'pass' };

export const PASS: Action = { kind: 'pass' };

export const MOST_RESETS = 2;
export const MOST_FUSES = 1;

export function everythingOpen(problem: Problem): Open {
  const bits = (items: readonly unknown[]) =>
    items.reduce<number>((all, item, i) => (item === null ? all : all | (1 << i)), 0);
  return { checks: bits(problem.checks), fixes: bits(problem.fixes), resets: MOST_RESETS, fuses: MOST_FUSES };
}

/** What is left after the check of cause `i`. One that was seen earlier resets nothing now. */
export function withoutCheck(problem: Problem, open: Open, i: number, earlier = false): Open {
  const resets = problem.checks[i]?.reset === true && !earlier ? 1 : 0;
  const rest = { ...open, checks: open.checks & ~(1 << i), resets: open.resets - resets };
  return resets === 0 ? rest : withinLimits(problem, rest);
}

/** What is left after the fix of cause `i`. */
export function withoutFix(problem: Problem, open: Open, i: number): Open {
  const resets = problem.fixes[i]?.reset === true ? 1 : 0;
  const fuses = problem.fixes[i]?.fuse === true ? 1 : 0;
  const rest = {
    checks: open.checks,
    fixes: open.fixes & ~(1 << i),
    resets: open.resets - resets,
    fuses: open.fuses - fuses,
  };
  return resets + fuses === 0 ? rest : withinLimits(problem, rest);
}

/** A third reset, as a check or a fix, and a second fuse are no longer open. */
function withinLimits(problem: Problem, { checks, fixes, resets, fuses }: Open): Open {
  const kept = (
    bits: number,
    items: readonly ({ readonly reset: boolean; readonly fuse?: boolean } | null)[],
  ): number =>
    items.reduce(
      (left, item, k) =>
        item !== null && ((item.reset && resets <= 0) || (item.fuse === true && fuses <= 0)) ? left & ~(1 << k) : left,
      bits,
    );
  return { checks: kept(checks, problem.checks), fixes: kept(fixes, problem.fixes), resets, fuses };
}

type Candidate = { readonly i: number; readonly minutes: number; readonly cures: number; readonly saves: number };

/**
 * The best plan without checks: which fixes, in which order, before people are asked. Within any set of fixes the
 * order is by chance of cure per minute (p/C), which no other order beats; the sets are tried one by one, since with a
 * pass as the way out the best set need not be the first so many of that order.
 *
 * @returns The plan's first action and its expected minutes, weighed by the masses.
 */
export function bestPlan(
  problem: Problem,
  masses: Masses,
  open: Open,
): { readonly action: Action; readonly minutes: number } {
  const candidates: Candidate[] = [];
  let passing = 0;
  for (let h = 0; h < masses.length; h++) {
    const mass = masses[h] ?? 0;
    passing += mass * (problem.pass[h] ?? 0);
    const fix = problem.fixes[h];
    if (fix === null || fix === undefined || (open.fixes & (1 << h)) === 0) continue;
    const cures = mass * fix.success;
    if (cures > 0) candidates.push({ i: h, minutes: fix.minutes, cures, saves: cures * (problem.pass[h] ?? 0) });
  }
  candidates.sort((a, b) => b.cures / b.minutes - a.cures / a.minutes || a.i - b.i);
  let first = -1;
  /** Least minutes from fix `k` of the order on, with `mass` not cured yet and `pass` the minutes of passing it. */
  const least = (k: number, mass: number, pass: number, resets: number, fuses: number, top: boolean): number => {
    const next = candidates[k];
    if (next === undefined) return pass;
    const fix = problem.fixes[next.i];
    const resetsLeft = resets - (fix?.reset === true ? 1 : 0);
    const fusesLeft = fuses - (fix?.fuse === true ? 1 : 0);
    const leave = least(k + 1, mass, pass, resets, fuses, top);
    if (resetsLeft < 0 || fusesLeft < 0) return leave;
    const take = next.minutes * mass + least(k + 1, mass - next.cures, pass - next.saves, resetsLeft, fusesLeft, false);
    if (take >= leave) return leave;
    if (top) first = next.i;
    return take;
  };
  const minutes = least(0, sum(masses), passing, open.resets, open.fuses, true);
  return { action: first < 0 ? PASS : { kind: 'fix', i: first }, minutes };
}
