import type { TopicId } from '../basics/ids.ts';
import { percent } from '../basics/percent.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { ONLY_ASKED } from './hazards.ts';
import type { Danger, SafetyReading } from './types.ts';

/**
 * A logistic regression over what the second net and the matcher each say, as log-odds. Fitted on messages that neither
 * had learnt from and in which the reader had found nothing.
 */
const WEIGHTS = { net: 0.9, matcher: 0.4, bias: 2.1 };
/** Below this the second net is sure enough that nothing is wrong, where words of a danger were there and set aside. */
const SURELY_NONE = 0.05;
/** Chances nearer to 0 or 1 than this say no more. */
const LEAST = 0.004;

/** What the reader has seen in a message in which it found no danger. */
export type LookedAt = Pick<SafetyReading, 'chance' | 'setAside'>;

/** What the matcher makes of a message: its topics in any order, and those it would answer, first asked first. */
export type Matched = {
  readonly ranked: readonly { readonly topic: TopicId; readonly probability: number }[];
  readonly answered: readonly TopicId[];
};

/**
 * A last look at a message in which the safety reader found nothing: the matcher was learnt from other wordings and looks at
 * words in another way, so the two together find some of what rules and second net miss. The notice asks whether it is so.
 * A topic whose text is a notice, which the matcher would answer by itself, is a danger whatever the net says, unless the
 * reader has seen the danger's words and set them aside: 'what is the alarm for?'.
 */
export function thirdLook(
  { chance, setAside }: LookedAt,
  { ranked, answered }: Matched,
  { notices }: Pick<SafetyData, 'notices'>,
): Danger | null {
  const isDanger = (topic: TopicId) => notices[topic] !== undefined && !ONLY_ASKED.has(topic);
  const dangers = ranked.filter(({ topic }) => isDanger(topic));
  const sum = dangers.reduce((so, { probability }) => so + probability, 0);
  const [likeliest] = [...dangers].sort((a, b) => b.probability - a.probability);
  const together = WEIGHTS.net * logOdds(chance) + WEIGHTS.matcher * logOdds(sum) + WEIGHTS.bias;
  const ruledOut = setAside && chance < SURELY_NONE;
  const hazard = (ruledOut ? undefined : answered.find(isDanger)) ?? (together > 0 ? likeliest?.topic : undefined);
  if (hazard === undefined) return null;
  const said = `${percent(chance)} danger by the second net, ${percent(sum)} by the matcher`;
  return { hazard, level: 'ask', language: 'en', why: [`third look: ${said}, likeliest ${hazard}`] };
}

function logOdds(chance: number): number {
  const kept = Math.min(Math.max(chance, LEAST), 1 - LEAST);
  return Math.log(kept / (1 - kept));
}
