import type { TopicId } from '../basics/ids.ts';
import type { ChangeRecord } from './changes.ts';
import { topicTaught } from './follow-up.ts';
import type { ThreadEvent } from './gaps.ts';

/** What a change has done: the trial's figures are in the change itself, these came about since. */
export type ChangeEffect = {
  readonly change: ChangeRecord;
  /** Answers given on what it taught; null when it taught no answer. */
  readonly since: { readonly answered: number; readonly helped: number; readonly stillStuck: number } | null;
};

export const LATEST_CHANGES = 10;

/** @param changes The latest first; of these the first {@link LATEST_CHANGES} are counted. */
export function effectsOf(
  changes: readonly ChangeRecord[],
  events: readonly Pick<ThreadEvent, 'atMs' | 'event'>[],
): readonly ChangeEffect[] {
  return changes.slice(0, LATEST_CHANGES).map((change) => {
    const topic = topicTaught(change.decision);
    return { change, since: topic === null ? null : sinceThen(topic, change, events) };
  });
}

function sinceThen(
  topic: TopicId,
  { atMs, undone }: ChangeRecord,
  events: readonly Pick<ThreadEvent, 'atMs' | 'event'>[],
): ChangeEffect['since'] {
  const counts = { answered: 0, helped: 0, stillStuck: 0 };
  for (const { atMs: then, event } of events) {
    if (then < atMs || (undone !== null && then > undone.atMs)) continue;
    if (event.kind === 'answered' && event.topic === topic) counts.answered++;
    else if (event.kind === 'helped' && event.topic === topic) counts[event.yes ? 'helped' : 'stillStuck']++;
  }
  return counts;
}
