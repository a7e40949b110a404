import type { TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { createJudge, type Judge } from './judge.ts';
import { createLastTry, gainsFor } from './last-try.ts';
import { leaningOn, leantCalibration } from './leaning.ts';
import { namings } from './links.ts';
import type { Model } from './model.ts';
import { trained, untrained } from './ready.ts';
import { type Reference, readReference } from './refer-back.ts';
import { splits } from './split.ts';
import type { Decision, Matcher, Understood } from './types.ts';

/** A message this sure of its topic stands on its own, whatever it points back to. */
const STANDS = 0.85;
/** Shorter messages ask one thing. */
const FEWEST_WORDS = 6;
/** Both halves of a message must be at least this sure to be answered one by one. */
const SURE = { outright: 0.5, perhaps: 0.9 };

/**
 * A matcher for one graph.
 *
 * @param model What training left for this very graph; null: naive Bayes alone, ready at once.
 */
export function createMatcher(knowledge: Knowledge, model: Model | null): Matcher {
  const ready = model === null ? untrained(knowledge) : trained(knowledge, model);
  const judge = createJudge(knowledge, ready);
  const lastTry = createLastTry(namings(knowledge));
  const topics = ready.keys.map((key) => knowledge.topics.get(key.replace(/^topic\//, '')));
  const isHazard = (topic: TopicId) => knowledge.topics.get(topic)?.caution === 'hazard';

  const understand: Matcher['understand'] = (text, { van, lastTopic, lastText }) => {
    const alone = judge.judge(text, van, null);
    const language = ready.languageOf(text);
    if (language !== 'en') return [{ ...alone, decision: { kind: 'language', language } }];
    const whole = halves(text, alone, judge, van, isHazard);
    if (lastText === '') return whole;
    const reference = readReference(text);
    if (standsAlone(alone, whole, reference.kind)) return whole;
    if (isPlain(alone)) return [alone];
    const add = leaningOn(lastTopic, judge.scoresOf(lastText), ready.keys, knowledge.topics, reference.kind);
    const calibration = leantCalibration(reference.kind, ready.calibration);
    const said = reference.kind === 'corrects' ? reference.text : text;
    return [{ ...judge.judge(said, van, { add, calibration }), text }];
  };

  return {
    understand,
    nearest: (text, { van }, most) => {
      const unknown = ready.see(text).words.filter((word) => !word.known);
      const parts = new Set(unknown.flatMap((word) => [...lastTry(word.text)]));
      const lean = parts.size === 0 ? null : { add: gainsFor(parts, topics), calibration: ready.calibration };
      return judge.judge(text, van, lean).ranked.slice(0, most);
    },
  };
}

/** Whether a message says enough by itself; of one that points back more is asked than of one that does not. */
function standsAlone(alone: Understood, whole: readonly Understood[], kind: Reference['kind']): boolean {
  const { decision } = alone;
  switch (kind) {
    case 'corrects':
      return false;
    case 'follows':
    case 'points':
      return decision.kind === 'answer' && decision.probability >= STANDS;
    case 'none':
      return (
        whole.length > 1 || !(decision.kind === 'choose' || (decision.kind === 'pass' && decision.why === 'too-close'))
      );
  }
}

const isPlain = ({ decision: { kind } }: Understood): boolean => kind === 'chat' || kind === 'person';

/** Two questions in one message, where each half is surer of a topic of its own than the whole is of one. */
function halves(
  text: string,
  whole: Understood,
  judge: Judge,
  van: VanId,
  isHazard: (topic: TopicId) => boolean,
): readonly Understood[] {
  if (isPlain(whole) || whole.why.tokens.length < FEWEST_WORDS) return [whole];
  let best: readonly Understood[] = [whole];
  let bestSure = 0;
  for (const { halves: pair, outright } of splits(text)) {
    const [first, second] = pair.map((half) => answered(judge.judge(half, van, null), isHazard)) as [
      Understood,
      Understood,
    ];
    const sure = answersApart(first, second);
    if (sure > bestSure && sure >= (outright ? SURE.outright : SURE.perhaps)) {
      best = [first, second];
      bestSure = sure;
    }
  }
  return best;
}

/**
 * Half of a message cannot be met with a list, since the other half wants its answer: its best topic is the answer,
 * unless somebody could be hurt by a wrong one.
 */
function answered(half: Understood, isHazard: (topic: TopicId) => boolean): Understood {
  const [best] = half.ranked;
  if (half.decision.kind !== 'choose' || best === undefined || isHazard(best.topic)) return half;
  return { ...half, decision: { kind: 'answer', topic: best.topic, probability: best.probability } };
}

/**
 * How sure the less sure of two halves is, when both would be answered, with different topics; else 0. That the van has
 * no such thing is an answer as well, to one of them.
 */
function answersApart(first: Understood, second: Understood): number {
  const [a, b] = [first.decision, second.decision];
  if (!isAnswer(a) || !isAnswer(b) || (a.kind === 'lacks' && b.kind === 'lacks') || a.topic === b.topic) return 0;
  return Math.min(a.probability, b.probability);
}

type Answer = Extract<Decision, { kind: 'answer' | 'lacks' }>;

const isAnswer = (decision: Decision): decision is Answer => decision.kind === 'answer' || decision.kind === 'lacks';
