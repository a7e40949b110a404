import type { TopicId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** How much of what was said before goes into a message that leans on it; set on half of the recorded follow-ups. */
export const LEAN = {
  /** Of the earlier message's own scores: they carry what it was about. */
  said: 0.3,
  /** For the topics that the last one names as kin, and those that name it. */
  kin: 4,
  /** For the topics about a part of the last one. */
  part: 1.5,
  /** For the last topic itself: a follow-up mostly asks for something else, a correction always does. */
  self: -1.5,
  corrected: -4,
  /** For what is no topic: somebody who goes on about the van is not making small talk. */
  plain: -1,
} as const;

/**
 * What to add to the scores of a message that leans on an earlier one.
 *
 * @param before The logits of the earlier message, by class, around zero.
 * @param keys   The classes, 'topic/...' for topics.
 */
export function leaningOn(
  lastTopic: TopicId | null,
  before: Float64Array,
  keys: readonly string[],
  topics: Knowledge['topics'],
  corrects: boolean,
): Float64Array {
  const last = lastTopic === null ? undefined : topics.get(lastTopic);
  const parts = new Set(last?.about ?? []);
  return before.map((score, c) => {
    const id = (keys[c] as string).replace(/^topic\//, '');
    const topic = topics.get(id);
    if (topic === undefined) return LEAN.plain;
    let lean = LEAN.said * score;
    if (last === undefined) return lean;
    if (last.kin.includes(id) || topic.kin.includes(last.id)) lean += LEAN.kin;
    if (topic.about.some((part) => parts.has(part))) lean += LEAN.part;
    if (id === last.id) lean += corrects ? LEAN.corrected : LEAN.self;
    return lean;
  });
}
