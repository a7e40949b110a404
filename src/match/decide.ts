import type { TopicId } from '../basics/ids.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Decision, Ranked, Why } from './types.ts';

/** At most this many are offered: more cannot be read at a glance on a phone. */
export const MOST_OFFERED = 3;

export type Costs = FirmData['costs'];

/**
 * The cheapest of answering, offering and passing, in expected minutes of somebody's time.
 *
 * @param ranked In-scope topics, best first, with calibrated probabilities that need not sum to 1: the rest is
 *               the chance that it is none of them.
 */
export function decide(
  ranked: readonly Ranked[],
  costs: Costs,
  isHazard: (topic: TopicId) => boolean,
): { readonly decision: Decision; readonly costs: Why['costs'] } {
  const best = ranked[0];
  if (best === undefined) return { decision: { kind: 'pass', why: 'no-such-topic' }, costs: [] };
  const offered = ranked.slice(0, MOST_OFFERED);
  const mass = offered.reduce((sum, one) => sum + one.probability, 0);
  const wrong = isHazard(best.topic) ? costs.wrongAnswerHazard : costs.wrongAnswer;
  const minutes = [
    { decision: 'answer', minutes: (1 - best.probability) * wrong },
    { decision: 'choose', minutes: costs.look + (1 - mass) * (costs.wrongChoice + costs.pass) },
    { decision: 'pass', minutes: costs.pass },
  ];
  const cheapest = minutes.reduce((least, one) => (one.minutes < least.minutes ? one : least));
  switch (cheapest.decision) {
    case 'answer':
      return { decision: { kind: 'answer', topic: best.topic, probability: best.probability }, costs: minutes };
    case 'choose':
      return { decision: { kind: 'choose', topics: offered }, costs: minutes };
    default:
      return { decision: { kind: 'pass', why: mass < 0.5 ? 'no-such-topic' : 'too-close' }, costs: minutes };
  }
}
