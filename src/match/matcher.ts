import type { TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge, Topic, VanScope } from '../knowledge/knowledge.ts';
import type { Reading } from '../language/reader.ts';
import { decide } from './decide.ts';
import { type Model, packedScorer } from './model.ts';
import { naiveBayes } from './naive-bayes.ts';
import { prepare, readerFor } from './prepare.ts';
import type { Scorer } from './scorer.ts';
import { trainingLines } from './training-lines.ts';
import type { ChatKind, Decision, Matcher, Ranked, UnderstandContext, Understood, Why } from './types.ts';
import { vectorOf } from './vector.ts';

/** Naive Bayes sums logarithms of features that depend on each other and so is far too sure. */
const BAYES_TEMPERATURE = 4;
const MOST_RANKED = 10;

/**
 * A matcher for one graph.
 *
 * @param model What training left for this very graph; null: naive Bayes alone, ready at once.
 */
export function createMatcher(knowledge: Knowledge, model: Model | null): Matcher {
  const { keys, space, read, scorer, temperature } = model === null ? untrained(knowledge) : trained(knowledge, model);
  const topicOf = keys.map((key) => (key.startsWith('topic/') ? key.slice(6) : null));
  const scopes = new Map<VanId, readonly boolean[]>();
  for (const van of knowledge.vans.values()) {
    scopes.set(
      van.id,
      topicOf.map((topic) => topic === null || van.topics.has(topic)),
    );
  }
  const scores = new Float64Array(keys.length);
  const isHazard = (topic: TopicId) => knowledge.topics.get(topic)?.caution === 'hazard';

  const rank = (reading: Reading): readonly { readonly label: number; readonly probability: number }[] => {
    scorer.score(vectorOf(reading, space), scores);
    let highest = -Infinity;
    for (const score of scores) if (score > highest) highest = score;
    let sum = 0;
    for (let c = 0; c < scores.length; c++)
      sum += scores[c] = Math.exp(((scores[c] as number) - highest) / temperature);
    return [...scores]
      .map((score, label) => ({ label, probability: score / sum }))
      .sort((a, b) => b.probability - a.probability);
  };

  const understand = (text: string, context: UnderstandContext): readonly Understood[] => {
    const reading = read(text);
    const all = rank(reading);
    const inScope = scopes.get(context.van) ?? [];
    const van = knowledge.vans.get(context.van);
    const ranked = topicsOf(all, topicOf, inScope);
    const best = all[0];
    const special =
      best === undefined
        ? null
        : specialDecision(keys[best.label] ?? '', best.probability, inScope[best.label] ?? true, knowledge, van);
    const decided =
      special === null ? decide(ranked, knowledge.firm.costs, isHazard) : { decision: special, costs: [] };
    const why: Why = {
      tokens: reading.words.map((word) => ({ said: word.said, read: word.text })),
      linked: reading.parts,
      features: [],
      costs: decided.costs,
    };
    return [{ text, decision: decided.decision, ranked: ranked.slice(0, MOST_RANKED), why }];
  };

  return {
    understand,
    nearest: (text, context, most) => topicsOf(rank(read(text)), topicOf, scopes.get(context.van) ?? []).slice(0, most),
  };
}

function topicsOf(
  all: readonly { readonly label: number; readonly probability: number }[],
  topicOf: readonly (string | null)[],
  inScope: readonly boolean[],
): readonly Ranked[] {
  return all.flatMap(({ label, probability }) => {
    const topic = topicOf[label] ?? null;
    return topic !== null && inScope[label] ? [{ topic, probability }] : [];
  });
}

/** What is not an answer of this van's: small talk, a wish for a person, kit it lacks, nothing of ours. */
function specialDecision(
  key: string,
  probability: number,
  inScope: boolean,
  knowledge: Knowledge,
  van: VanScope | undefined,
): Decision | null {
  if (key.startsWith('chat/')) return { kind: 'chat', chat: key.slice(5) as ChatKind };
  if (key === 'person') return { kind: 'person' };
  if (key === 'background') return { kind: 'pass', why: 'no-such-topic' };
  if (inScope || van === undefined) return null;
  const topic = knowledge.topics.get(key.slice(6));
  const part = topic === undefined ? undefined : lackedPart(topic, van);
  return topic === undefined || part === undefined ? null : { kind: 'lacks', topic: topic.id, part, probability };
}

function lackedPart(topic: Topic, van: VanScope): string | undefined {
  return topic.about.find((part) => !van.parts.has(part));
}

type Ready = Pick<ReturnType<typeof prepare>, 'keys' | 'space' | 'read'> & {
  readonly scorer: Scorer;
  readonly temperature: number;
};

function untrained(knowledge: Knowledge): Ready {
  const prepared = prepare(knowledge, trainingLines(knowledge));
  const { keys, labels, vectors, space } = prepared;
  return {
    ...prepared,
    scorer: naiveBayes(vectors, labels, keys.length, space.names.length),
    temperature: BAYES_TEMPERATURE,
  };
}

function trained(knowledge: Knowledge, model: Model): Ready {
  const { keys, space, temperature } = model;
  return {
    keys,
    space,
    read: readerFor(knowledge, model.vocabulary),
    scorer: packedScorer(model.weights),
    temperature,
  };
}
