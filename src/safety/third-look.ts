import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import type { Danger } from './types.ts';

/** The matcher must put this much on dangers together. Lower finds more and asks more people who are in none. */
const SURE = 0.8;
/** Its wordings ask whether one may; what is alight in an awning the reader finds itself. */
const ASKS_MAY: TopicId = 'hire-barbecue';

/**
 * A last look at a message in which the safety reader found nothing: the matcher was learnt from other wordings and looks at
 * words in another way, so it finds some of what rules and second net miss. The notice asks whether it is so.
 *
 * @param ranked What the matcher makes of the message, any order.
 */
export function thirdLook(
  ranked: readonly { readonly topic: TopicId; readonly probability: number }[],
  { notices }: Pick<SafetyData, 'notices'>,
): Danger | null {
  const dangers = ranked.filter(({ topic }) => notices[topic] !== undefined && topic !== ASKS_MAY);
  const sum = dangers.reduce((so, { probability }) => so + probability, 0);
  const [likeliest] = [...dangers].sort((a, b) => b.probability - a.probability);
  if (likeliest === undefined || sum < SURE) return null;
  const why = [`third look: ${Math.round(sum * 100)} % danger by the matcher, likeliest ${likeliest.topic}`];
  return { hazard: likeliest.topic, level: 'ask', language: 'en', why };
}
