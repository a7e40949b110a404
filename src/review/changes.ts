import type { FileEdit, GrowthDecision } from './decisions.ts';
import type { Change, TrialSummary } from './trial.ts';

/** What one change did to one file: at `at` the text `removed` gave way to `inserted`. */
export type Splice = {
  readonly path: string;
  readonly at: number;
  readonly removed: string;
  readonly inserted: string;
  /** What stood on either side, to find the place again when other changes have moved it. */
  readonly before: string;
  readonly after: string;
};

/** A published change: who, when, why, what it did, and what the trial said. */
export type ChangeRecord = {
  readonly id: number;
  readonly atMs: number;
  readonly by: string;
  readonly why: string;
  readonly decision: GrowthDecision;
  /** Ids of the gaps that it settles. */
  readonly gaps: readonly number[];
  readonly splices: readonly Splice[];
  readonly figures: TrialFigures;
  /** Whether hirers still on hire whose gaps they were are told. Left out in older records: no. */
  readonly tell?: boolean;
  readonly undone: { readonly atMs: number; readonly by: string } | null;
};

/** The few numbers of a trial before and after, and what it moved. */
export type TrialFigures = {
  readonly before: TrialSummary;
  readonly after: TrialSummary;
  readonly better: readonly Change[];
  readonly worse: readonly Change[];
  /** Neither better nor worse, but another answer. */
  readonly changed: readonly Change[];
};

const AROUND = 60;

/** The one stretch in which two texts differ. */
export function spliceOf({ path, before, after }: FileEdit): Splice {
  let at = 0;
  while (at < before.length && before[at] === after[at]) at++;
  let tail = 0;
  while (
    tail < before.length - at &&
    tail < after.length - at &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  )
    tail++;
  const end = before.length - tail;
  return {
    path,
    at,
    removed: before.slice(at, end),
    inserted: after.slice(at, after.length - tail),
    before: before.slice(Math.max(0, at - AROUND), at),
    after: before.slice(end, end + AROUND),
  };
}

/**
 * Takes a change back out of a text. What others changed elsewhere in it stays.
 *
 * @returns Null when what the change wrote, with what stood around it, is no longer there just once.
 */
export function takenBack(text: string, splice: Splice): string | null {
  const { at, removed, inserted, before, after } = splice;
  const known = before + inserted + after;
  const whole = (from: number): string =>
    text.slice(0, from) + before + removed + after + text.slice(from + known.length);
  const there = at - before.length;
  if (text.slice(there, there + known.length) === known) return whole(there);
  const found = text.indexOf(known);
  return found < 0 || text.indexOf(known, found + 1) >= 0 ? null : whole(found);
}
