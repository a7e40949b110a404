import type { CauseId, TopicId, VanId } from '../basics/ids.ts';
import { leavesOver } from '../faults/left-over.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { Tried } from '../thread/thread.ts';
import type { WalkEnded } from './fault-counts.ts';

/** A walk's end as it was stored, and who the hirer was. */
export type EndedWalk = {
  readonly id: number;
  readonly atMs: number;
  readonly who: string | null;
  readonly walk: WalkEnded;
};

/** Something to look at on a van before it goes out again. */
export type Due = {
  /** The stored event's, by which it is ticked off. */
  readonly id: number;
  readonly van: VanId;
  readonly symptom: TopicId;
  readonly title: string;
  /** `passed`: people took over; `trick`: the hirer got going, the fault may still be there. */
  readonly why: 'passed' | 'trick';
  readonly cause: CauseId | null;
  readonly say: string | null;
  readonly who: string | null;
  /** What was asked and done, and what the hirer answered. */
  readonly tried: readonly Tried[];
  readonly atMs: number;
};

/**
 * Faults that were passed, or fixed by a trick, a new fuse or a reset, oldest first; those in `looked` are done with.
 *
 * @param van Null: every van.
 */
export function faultsDue(
  ended: readonly EndedWalk[],
  van: VanId | null,
  looked: ReadonlySet<number>,
  { topics, vans }: Knowledge,
): readonly Due[] {
  const due = ended.flatMap(({ id, atMs, who, walk }): Due[] => {
    if (looked.has(id) || (van !== null && walk.van !== van) || walk.end === 'left') return [];
    const cause = vans
      .get(walk.van)
      ?.causes(walk.symptom)
      .find((each) => each.id === walk.cause);
    if (walk.end === 'fixed' && (cause === undefined || !leavesOver(cause))) return [];
    return [
      {
        id,
        van: walk.van,
        symptom: walk.symptom,
        title: topics.get(walk.symptom)?.title ?? walk.symptom,
        why: walk.end === 'fixed' ? 'trick' : 'passed',
        cause: walk.cause,
        say: cause?.say ?? null,
        who,
        tried: walk.tried,
        atMs,
      },
    ];
  });
  return due.sort((a, b) => a.atMs - b.atMs || a.id - b.id);
}
