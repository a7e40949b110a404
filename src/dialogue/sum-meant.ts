import type { TopicId } from '../basics/ids.ts';
import {
  asks,
  isCalculation,
  sumAsked,
  sumsPlainlyAsked,
  tellsAny,
  tellsFault,
  tellsInput,
} from '../calculators/index.ts';
import type { Ranked, Understood } from '../match/types.ts';
import type { Situation } from './draft.ts';
import { contextFor, sumContext } from './sum.ts';

/** Below this the matcher holds the sum for so unlikely that its words must be about something else. */
const LEAST_ASKED = 0.01;
/** The same for a sum whose question the words do not put, but which find a figure or a thing in them. */
const LEAST_TOLD = 0.15;
/** From here on a sum that is the likeliest is done for any figure that it could use: '15 outside, the butane is fine?'. */
const LIKELY = 0.3;

/**
 * A message cut in two that is one sum: the whole asks plainly for it, and neither half asks for something else ('can we
 * boil the kettle with the heating on 1? Site is 10 amps'). Null: it stays cut.
 */
export function oneSum(
  halves: readonly Understood[],
  text: string,
  situation: Situation,
): readonly Understood[] | null {
  const [first] = halves;
  const context = sumContext(situation);
  if (halves.length < 2 || first === undefined || context === null) return null;
  const ranked = halves.flatMap((half) => half.ranked).sort((a, b) => b.probability - a.probability);
  const whole: Understood = { ...first, text, ranked, decision: { kind: 'choose', topics: [] } };
  const sum = plainSum(whole, situation);
  if (sum === null) return null;
  const others = sumsPlainlyAsked(text, context).filter((topic) => topic !== sum.topic);
  const plain = halves.map((half) => plainSum(half, situation)?.topic ?? null);
  const apart = halves.some((half, i) => {
    const own = plain[i] ?? null;
    if (own !== null) return others.includes(own);
    return isSum(half) ? asks(half.text) && plain.includes(sum.topic) : asks(half.text) || half.text.includes('?');
  });
  return apart ? null : [answered(whole, sum)];
}

function isSum({ decision }: Understood): boolean {
  return decision.kind === 'answer' && isCalculation(decision.topic);
}

/** Beside a sum that is asked for plainly a fault or a warning less likely than this is no doubt. */
const LEAST_TROUBLE = { symptom: 0.3, hazard: 0.15 };

/**
 * What the matcher left open or took for another sum is decided by the subject of the question: in 'how long will the gas
 * last, no hook-up' the gas, whatever else the words speak of. Where the words put no such question, a sum that is offered
 * is done when they already give what it works from ('kettle and a hair dryer') and no symptom or warning is half
 * as likely. What something costs goes to people.
 */
export function sumMeant(understood: Understood, situation: Situation): Understood {
  const { decision, ranked, text } = understood;
  if (MONEY.test(text) && (decision.kind === 'pass' || isCalculation(likeliest(decision))))
    return { ...understood, decision: { kind: 'pass', why: 'no-such-topic' } };
  const plain = plainSum(understood, situation);
  if (plain !== null) return answered(understood, plain);
  const open = decision.kind === 'choose' || decision.kind === 'lacks' || decision.kind === 'pass';
  if (!open && !(decision.kind === 'answer' && isCalculation(decision.topic))) return understood;
  const asked = sumAsked(text);
  if (asked !== null && situation.scope?.topics.has(asked) === true) {
    const probability = ranked.find((each) => each.topic === asked)?.probability ?? 0;
    // One sum taken for another is the subject's to decide; among other topics the matcher has to think it likely.
    const offered = decision.kind === 'choose' ? decision.topics : [];
    const likely =
      decision.kind === 'answer' || (probability >= LEAST_ASKED && !hazardLikelier(offered, probability, situation));
    if (likely) return answered(understood, { topic: asked, probability });
  }
  if (decision.kind !== 'choose') return understood;
  const told = decision.topics.find((each, i) => gives(each, i === 0, text, situation));
  return told === undefined || troubleAsLikely(decision.topics, told, situation)
    ? understood
    : answered(understood, told);
}

/**
 * The sum that the words ask for plainly, whatever the matcher made of them; of several the one that the subject of the
 * question names, or else the likeliest. Null where there is none, where somebody wants a person or tells of trouble.
 */
function plainSum({ decision, ranked, text }: Understood, situation: Situation): Ranked | null {
  if (decision.kind === 'person' || decision.kind === 'language') return null;
  if (decision.kind === 'answer' && tellsTrouble(decision, text, situation)) return null;
  const context = sumContext(situation);
  if (context === null) return null;
  const sums = sumsPlainlyAsked(text, context).filter((each) => situation.scope?.topics.has(each) === true);
  const asked = sumAsked(text);
  const rank = (topic: TopicId) => ranked.findIndex((each) => each.topic === topic) + 1 || Number.POSITIVE_INFINITY;
  const topic = asked !== null && sums.includes(asked) ? asked : [...sums].sort((a, b) => rank(a) - rank(b))[0];
  if (topic === undefined) return null;
  const sum = { topic, probability: ranked.find((each) => each.topic === topic)?.probability ?? 0 };
  const offered = decision.kind === 'choose' ? decision.topics.filter((each) => isDoubt(each, situation)) : [];
  return troubleAsLikely(offered, sum, situation) ? null : sum;
}

const CERTAIN_FAULT = 0.9;

function isDoubt({ topic, probability }: Ranked, { served }: Situation): boolean {
  const kind = served.knowledge.topics.get(topic)?.kind === 'hazard' ? 'hazard' : 'symptom';
  return probability >= LEAST_TROUBLE[kind];
}

/** Whether the matcher answers a warning, or a fault which the words tell of or of which it is nearly certain. */
function tellsTrouble({ topic, probability }: Ranked, text: string, { served }: Situation): boolean {
  const kind = served.knowledge.topics.get(topic)?.kind;
  return kind === 'hazard' || (kind === 'symptom' && (tellsFault(text) || probability >= CERTAIN_FAULT));
}

/** What something costs is staff's business: no sum works it out. */
const MONEY = /\b(costs?|costing|price|prices|quid|pence|pounds? (a|per|each)|pay for|electric(ity)? bill)\b|£/i;

function likeliest(decision: Understood['decision']): TopicId {
  if (decision.kind === 'answer') return decision.topic;
  return decision.kind === 'choose' ? (decision.topics[0]?.topic ?? '') : '';
}

function answered(understood: Understood, { topic, probability }: Ranked): Understood {
  return { ...understood, decision: { kind: 'answer', topic, probability } };
}

function gives({ topic, probability }: Ranked, first: boolean, text: string, situation: Situation): boolean {
  if (probability < LEAST_TOLD) return false;
  const context = contextFor(topic, situation);
  if (context === null) return false;
  return tellsInput(topic, text, context) || (first && probability >= LIKELY && tellsAny(topic, text, context));
}

/** A warning that may be what was asked for is never passed over for a sum. */
function hazardLikelier(offered: readonly Ranked[], sumProbability: number, { served }: Situation): boolean {
  return offered.some(
    ({ topic, probability }) => served.knowledge.topics.get(topic)?.kind === 'hazard' && probability >= sumProbability,
  );
}

/** Something may be wrong, or dangerous, with what the words name. */
function troubleAsLikely(offered: readonly Ranked[], sum: Ranked, { served }: Situation): boolean {
  const { topics } = served.knowledge;
  return offered.some(({ topic, probability }) => {
    const kind = topics.get(topic)?.kind;
    return (kind === 'symptom' || kind === 'hazard') && probability * 2 >= sum.probability;
  });
}
