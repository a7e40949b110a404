import type { TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import { type Calibration, chanceOf, signalsOf } from './calibration.ts';
import { decide } from './decide.ts';
import { BAYES_CALIBRATION, DEFAULT_CALIBRATION } from './default-calibration.ts';
import { type Model, packedScorer } from './model.ts';
import { naiveBayes } from './naive-bayes.ts';
import { prepare } from './prepare.ts';
import { createRanker, type Ranker, type Ranking, roleOf } from './ranking.ts';
import { createSee, type See } from './seen.ts';
import { TRAIN } from './train-options.ts';
import { trainingInput } from './training-input.ts';
import type { ChatKind, Decision, Matcher, Ranked, UnderstandContext, Understood, Why } from './types.ts';

/** Naive Bayes sums logarithms of features that depend on each other and so is far too sure. */
const BAYES_TEMPERATURE = 4;
const MOST_RANKED = 10;
/** A class that is no topic takes a text when it has at least this share. */
const PLAIN = 0.5;

/**
 * A matcher for one graph.
 *
 * @param model What training left for this very graph; null: naive Bayes alone, ready at once.
 */
export function createMatcher(knowledge: Knowledge, model: Model | null): Matcher {
  const { keys, see, rank, calibration } = model === null ? untrained(knowledge) : trained(knowledge, model);
  const topicOf = keys.map((key) => (roleOf(key) === 'topic' ? key.slice('topic/'.length) : null));
  const scopes = new Map<VanId, readonly boolean[]>();
  for (const van of knowledge.vans.values()) {
    scopes.set(
      van.id,
      topicOf.map((topic) => topic === null || van.topics.has(topic)),
    );
  }
  const isHazard = (topic: TopicId) => knowledge.topics.get(topic)?.caution === 'hazard';
  const named = (label: number) => topicOf[label] ?? '';

  const understandOne = (text: string, context: UnderstandContext): Understood => {
    const reading = see(text);
    const ranking = rank(reading, scopes.get(context.van) ?? [], null);
    const signals = signalsOf(ranking, reading, knowledge.vans.get(context.van)?.parts ?? new Set());
    const ranked = calibrated(
      ranking,
      chanceOf(calibration.best, signals),
      chanceOf(calibration.among, signals),
      named,
    );
    const { decision, costs } =
      plain(ranking, keys) ??
      lacks(ranking, chanceOf(calibration.lacks, signals), named, knowledge, context.van) ??
      decide(ranked, knowledge.firm.costs, isHazard);
    const why: Why = {
      tokens: reading.words.map((word) => ({ said: word.said, read: word.text })),
      linked: [...new Set(reading.mentions.flatMap(({ parts }) => parts))],
      features: [],
      costs,
    };
    return { text, decision, ranked, why };
  };

  return {
    understand: (text, context) => [understandOne(text, context)],
    nearest: (text, context, most) => understandOne(text, context).ranked.slice(0, most),
  };
}

/** The first three share what `among` gives, the first of them having `best`; the rest keep their order behind. */
function calibrated(
  ranking: Ranking,
  best: number,
  among: number,
  named: (label: number) => TopicId,
): readonly Ranked[] {
  const [first, ...rest] = ranking.inScope.slice(0, MOST_RANKED);
  if (first === undefined) return [];
  const left = Math.max(0, among - best);
  const beside = rest.slice(0, 2).reduce((sum, share) => sum + share.probability, 0);
  const scale = beside > 0 ? left / beside : 0;
  return [
    { topic: named(first.label), probability: best },
    ...rest.map(({ label, probability }) => ({
      topic: named(label),
      probability: Math.min(best, probability * scale),
    })),
  ];
}

type Decided = { readonly decision: Decision; readonly costs: Why['costs'] };

/** Small talk, asking for a person, and what is none of ours. */
function plain({ inScope, chat, person, background }: Ranking, keys: readonly string[]): Decided | null {
  const topic = inScope[0]?.probability ?? 0;
  if (person > PLAIN && person > topic) return { decision: { kind: 'person' }, costs: [] };
  if (chat !== null && chat.probability > PLAIN && chat.probability > topic) {
    return {
      decision: { kind: 'chat', chat: (keys[chat.label] as string).slice('chat/'.length) as ChatKind },
      costs: [],
    };
  }
  return background > topic && background > PLAIN
    ? { decision: { kind: 'pass', why: 'no-such-topic' }, costs: [] }
    : null;
}

/** What the van has not: never answered with another van's steps. */
function lacks(
  ranking: Ranking,
  chance: number,
  named: (label: number) => TopicId,
  knowledge: Knowledge,
  van: VanId,
): Decided | null {
  const rival = ranking.outOfScope[0];
  const scope = knowledge.vans.get(van);
  if (rival === undefined || scope === undefined || chance < PLAIN) return null;
  const topic = named(rival.label);
  const part = lackedPart(topic, knowledge, scope);
  return part === undefined ? null : { decision: { kind: 'lacks', topic, part, probability: chance }, costs: [] };
}

function lackedPart(topic: TopicId, knowledge: Knowledge, van: VanScope): string | undefined {
  return knowledge.topics.get(topic)?.about.find((part) => !van.parts.has(part));
}

type Ready = {
  readonly keys: readonly string[];
  readonly see: See;
  readonly rank: Ranker;
  readonly calibration: Calibration;
};

function untrained(knowledge: Knowledge): Ready {
  const { keys, labels, vectors, space, see } = prepare(trainingInput(knowledge), TRAIN.fewestLines);
  const scorer = naiveBayes(vectors, labels, keys.length, space.names.length);
  const rank = createRanker({ space, scorer, roles: keys.map(roleOf), temperature: BAYES_TEMPERATURE });
  return { keys, see, rank, calibration: BAYES_CALIBRATION };
}

function trained(knowledge: Knowledge, { keys, space, vocabulary, weights, calibration }: Model): Ready {
  const rank = createRanker({ space, scorer: packedScorer(weights), roles: keys.map(roleOf), temperature: 1 });
  return {
    keys,
    see: createSee(trainingInput(knowledge), vocabulary),
    rank,
    calibration: calibration ?? DEFAULT_CALIBRATION,
  };
}
