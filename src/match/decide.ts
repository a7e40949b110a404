import type { TopicId } from '../basics/ids.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Decision, Ranked, Why } from './types.ts';

/** At most this many are offered: more cannot be read at a glance on a phone. */
export const MOST_OFFERED = 3;

export type Costs = FirmData['costs'];

/** An answer that is likelier wrong than right is never given, however cheap. */
const LEAST_CHANCE = 0.5;

/**
 * The cheapest of answering, offering and passing, in expected minutes of somebody's time. A wrong answer or list costs
 * its own minutes and then the pass that it only put off.
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
  const among = offered.reduce((sum, one) => sum + one.probability, 0);
  const wrong = isHazard(best.topic) ? costs.wrongAnswerHazard : costs.wrongAnswer;
  const minutes = [
    { decision: 'answer', minutes: (1 - best.probability) * (wrong + costs.pass) },
    { decision: 'choose', minutes: costs.look + (1 - among) * (costs.wrongChoice + costs.pass) },
    { decision: 'pass', minutes: costs.pass },
  ];
  const open = best.probability < LEAST_CHANCE ? minutes.slice(1) : minutes;
  const cheapest = open.reduce((least, one) => (one.minutes < least.minutes ? one : least));
  switch (cheapest.decision) {
    case 'answer':
      return { decision: { kind: 'answer', topic: best.topic, probability: best.probability }, costs: minutes };
    case 'choose':
      return { decision: { kind: 'choose', topics: offered }, costs: minutes };
    default:
      return { decision: { kind: 'pass', why: among < FAINT ? 'no-such-topic' : 'too-close' }, costs: minutes };
  }
}

/** With less than this among the three best there is no topic for it; with more they were too close to tell. */
export const FAINT = 0.12;
