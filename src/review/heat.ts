import type { TopicId } from '../basics/ids.ts';
import type { Event } from '../thread/thread.ts';
import type { Gap } from './gaps.ts';

/** How often hirers asked for a topic, and how often it did not help them. Counts only. */
export type Heat = { readonly asked: number; readonly failed: number };

export const NO_HEAT: Heat = { asked: 0, failed: 0 };

/** The kinds of events that {@link heatOf} counts. */
export const HEAT_EVENTS: readonly Event['kind'][] = ['answered', 'walk-ended'];

/**
 * Counts by topic. A question that went unanswered counts for the topic that the bot thought likeliest; one that was
 * answered and did not help is a failure of the question already counted.
 */
export function heatOf(
  events: readonly Event[],
  gaps: readonly Pick<Gap, 'nearest' | 'why'>[],
): ReadonlyMap<TopicId, Heat> {
  const counts = new Map<TopicId, Heat>();
  const count = (topic: TopicId | undefined, { asked, failed }: Heat): void => {
    if (topic === undefined) return;
    const now = counts.get(topic) ?? NO_HEAT;
    counts.set(topic, { asked: now.asked + asked, failed: now.failed + failed });
  };
  for (const event of events) {
    if (event.kind === 'answered') count(event.topic, { asked: 1, failed: 0 });
    else if (event.kind === 'walk-ended' && event.end === 'passed') count(event.symptom, { asked: 0, failed: 1 });
  }
  for (const { nearest, why } of gaps) count(nearest[0], { asked: why === 'did-not-help' ? 0 : 1, failed: 1 });
  return counts;
}
