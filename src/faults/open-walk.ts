import type { TopicId } from '../basics/ids.ts';
import type { Holder } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { leaningOf } from './hints.ts';
import { type Seen, seenBefore } from './seen.ts';
import type { Walk } from './types.ts';

export type WalkStart = {
  /** What the hirer said that bears on it: the opening message, and the titles of symptoms met earlier in the thread. */
  readonly said: readonly string[];
  readonly seen: Seen;
  readonly van: Holder;
  readonly nowMs: number;
};

/** A walk that has not asked anything yet, but knows what was said and seen before. */
export function openWalk(
  symptom: TopicId,
  causes: readonly ScopedCause[],
  { said, seen, van, nowMs }: WalkStart,
): Walk {
  return {
    symptom,
    leaning: leaningOf(said, symptom, causes, van),
    done: seenBefore(seen, causes, van),
    now: null,
    sinceMs: nowMs,
  };
}
