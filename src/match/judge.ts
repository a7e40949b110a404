import type { PartId, TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import { type Calibration, chanceOf, namesAbsent, signalsOf } from './calibration.ts';
import { decide, FAINT, MOST_OFFERED } from './decide.ts';
import { explain } from './explain.ts';
import { createRanker, type Ranking, roleOf, type Share } from './ranking.ts';
import type { Ready } from './ready.ts';
import type { Seen } from './seen.ts';
import type { ChatKind, Decision, Ranked, Understood, Why } from './types.ts';
import { vectorOf } from './vector.ts';

const MOST_RANKED = 10;
/** A text is the van's lack when that is likelier than not. */
const LACKS = 0.6;
/** And of something wrong with a thing that it has in another kind, unless the words name the kind. */
const LACKS_THIS_KIND = 0.9;
/** Asking for a person is granted on less: a person refused is worse than one called for nothing. */
const PERSON = 0.2;
/** And against this much of all small talk: 'thanks but I want a human' is no thanks. */
const OVER_CHAT = 0.35;
const CHAT = 0.4;
const BACKGROUND = 0.5;
/** How much of its odds a topic of another van has against the background: the van may lack what is asked about. */
const RIVAL = 0.3;

/** What is added to each class's logit, and how sure one may then be. */
export type Lean = { readonly add: Float64Array; readonly calibration: Pick<Calibration, 'best' | 'among'> };

/** Decides on one question, which stands by itself or leans on what was said before. */
export type Judge = {
  readonly judge: (text: string, van: VanId, lean: Lean | null) => Understood;
  /** A text's logits, around zero: for a later one to lean on. */
  readonly scoresOf: (text: string) => Float64Array;
};

export function createJudge(knowledge: Knowledge, ready: Ready): Judge {
  const { keys, see, space, scorer, temperature, calibration } = ready;
  const roles = keys.map(roleOf);
  const rank = createRanker({ scorer, roles, temperature });
  const topicOf = keys.map((key, c) => (roles[c] === 'topic' ? key.slice('topic/'.length) : null));
  const scopes = new Map<VanId, readonly boolean[]>();
  for (const van of knowledge.vans.values()) {
    scopes.set(
      van.id,
      topicOf.map((topic) => topic === null || van.topics.has(topic)),
    );
  }
  const isHazard = (topic: TopicId) => knowledge.topics.get(topic)?.caution === 'hazard';
  const named = ({ label }: Share): TopicId => topicOf[label] ?? '';

  const judge = (text: string, vanId: VanId, lean: Lean | null): Understood => {
    const seen = see(text);
    const vector = vectorOf(seen, space);
    const van = knowledge.vans.get(vanId);
    const ranking = rank(vector, scopes.get(vanId) ?? [], lean?.add ?? null);
    const signals = signalsOf(ranking, seen, van?.parts ?? NOTHING);
    const { best, among } = lean?.calibration ?? calibration;
    const ranked = calibrated(ranking, chanceOf(best, signals), chanceOf(among, signals), named);
    const { decision, costs } =
      plain(ranking, keys, ranked) ??
      lacks(ranking, chanceOf(calibration.lacks, signals), named, seen, knowledge, van) ??
      decide(ranked, knowledge.firm.costs, isHazard);
    const first = ranking.inScope.map((share) => ({ label: share.label, topic: named(share) }));
    return { text, decision, ranked, why: whyOf(seen, () => explain(first, vector, space, scorer), costs) };
  };

  return {
    judge,
    scoresOf: (text) => {
      const scores = new Float64Array(keys.length);
      scorer.score(vectorOf(see(text), space), scores);
      const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
      return scores.map((score) => (score - mean) / temperature);
    },
  };
}

const NOTHING: ReadonlySet<PartId> = new Set();

/** `features` are worked out when they are looked at: most questions are never explained. */
function whyOf(seen: Seen, explained: () => Why['features'], costs: Why['costs']): Why {
  return {
    tokens: seen.words.map((word) => ({ said: word.said, read: word.text })),
    linked: [...new Set(seen.mentions.flatMap(({ parts }) => parts))],
    get features() {
      return explained();
    },
    costs,
  };
}

/** The first three share what `among` gives, the first of them having `best`; the rest keep their order behind. */
function calibrated(
  ranking: Ranking,
  best: number,
  among: number,
  named: (share: Share) => TopicId,
): readonly Ranked[] {
  const [first, ...rest] = ranking.inScope.slice(0, MOST_RANKED);
  if (first === undefined) return [];
  const left = Math.max(0, among - best);
  const beside = rest.slice(0, 2).reduce((sum, share) => sum + share.probability, 0);
  const scale = beside > 0 ? left / beside : 0;
  return [
    { topic: named(first), probability: best },
    ...rest.map((share) => ({ topic: named(share), probability: Math.min(best, share.probability * scale) })),
  ];
}

type Decided = { readonly decision: Decision; readonly costs: Why['costs'] };

/** Small talk, asking for a person, and what is none of ours. */
function plain(
  { inScope, outOfScope, chat, chatAll, person, background }: Ranking,
  keys: readonly string[],
  ranked: readonly Ranked[],
): Decided | null {
  const topic = inScope[0]?.probability ?? 0;
  const all = chatAll + person + background;
  if (all < Math.max(topic, PERSON)) return null;
  if (person >= PERSON && person >= OVER_CHAT * chatAll) return { decision: { kind: 'person' }, costs: [] };
  if (chat !== null && chatAll >= CHAT * all && chatAll > topic) {
    const kind = (keys[chat.label] as string).slice('chat/'.length) as ChatKind;
    return { decision: { kind: 'chat', chat: kind }, costs: [] };
  }
  if (background <= Math.max(topic, RIVAL * (outOfScope[0]?.probability ?? 0)) || all <= BACKGROUND) return null;
  const among = ranked.slice(0, MOST_OFFERED).reduce((sum, one) => sum + one.probability, 0);
  return { decision: { kind: 'pass', why: among < FAINT ? 'no-such-topic' : 'too-close' }, costs: [] };
}

/**
 * What the van has not: never answered with another van's steps. What is wrong with a thing that the van has in another
 * kind ('the milk is warm', in a van whose fridge runs on gas) is seldom a lack.
 */
function lacks(
  ranking: Ranking,
  chance: number,
  named: (share: Share) => TopicId,
  seen: Seen,
  { topics, parts }: Knowledge,
  van: VanScope | undefined,
): Decided | null {
  const rival = ranking.outOfScope[0];
  if (rival === undefined || van === undefined || chance < LACKS) return null;
  const topic = named(rival);
  const part = topics.get(topic)?.about.find((one) => !van.parts.has(one));
  if (part === undefined) return null;
  const inAnotherKind = topics.get(topic)?.kind === 'symptom' && van.parts.has(parts.get(part)?.is ?? '');
  if (inAnotherKind && chance < LACKS_THIS_KIND && !namesAbsent(seen, van.parts)) return null;
  return { decision: { kind: 'lacks', topic, part, probability: chance }, costs: [] };
}
