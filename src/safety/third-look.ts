import type { TopicId } from '../basics/ids.ts';
import { percent } from '../basics/percent.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { ONLY_ASKED } from './hazards.ts';
import type { Danger, SafetyReading } from './types.ts';

/** Below this the second net is sure enough that nothing is wrong, where words of a danger were there and set aside. */
const SURELY_NONE = 0.05;

/** What the reader has seen in a message in which it found no danger. */
export type LookedAt = Pick<SafetyReading, 'chance' | 'setAside'>;

/**
 * A last look at a message in which the safety reader found nothing: a topic whose text is a notice, which the matcher would
 * answer by itself, is a danger, unless the reader has seen the danger's words and set them aside: 'what is the alarm for?'.
 * The notice asks whether it is so.
 *
 * @param answered The topics that the matcher would answer, first asked first.
 */
export function thirdLook(
  { chance, setAside }: LookedAt,
  answered: readonly TopicId[],
  { notices }: Pick<SafetyData, 'notices'>,
): Danger | null {
  if (setAside && chance < SURELY_NONE) return null;
  const hazard = answered.find((topic) => notices[topic] !== undefined && !ONLY_ASKED.has(topic));
  if (hazard === undefined) return null;
  const why = [`third look: the matcher would answer it, ${percent(chance)} danger by the second net`];
  return { hazard, level: 'ask', language: 'en', why };
}
