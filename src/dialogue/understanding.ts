import type { TopicId } from '../basics/ids.ts';
import { isCalculation } from '../calculators/index.ts';
import type { Walk } from '../faults/types.ts';
import type { VanScope } from '../knowledge/knowledge.ts';
import { lackNamed, topicsNamed } from '../match/name-search.ts';
import type { ChatKind, Ranked, UnderstandContext, Understood } from '../match/types.ts';
import { type LookedAt, thirdLook } from '../safety/third-look.ts';
import type { Danger } from '../safety/types.ts';
import type { Thread } from '../thread/thread.ts';
import { symptomsApart } from './apart.ts';
import { showNotice } from './danger.ts';
import { type Draft, does, notes, opens, passes, remembers, type Served, type Situation } from './draft.ts';
import { toPerson } from './pass.ts';
import { oneSum, sumMeant } from './sum-meant.ts';
import { answerTopic } from './topic.ts';
import { vagueFaults } from './vague-fault.ts';
import { stepNow } from './walk-record.ts';
import { saysQuestion } from './words-read.ts';

/**
 * Matches the message against the van's scope and does what each of its questions asks for, in the order asked.
 *
 * @param reading What the safety reader made of the message, in which it found no danger.
 */
export function understandAndDo(draft: Draft, reading: LookedAt, situation: Situation): Draft {
  const { scope, served, message } = situation;
  if (scope === null) {
    // Booked, but the graph has no such van: nothing is known of it, so people answer.
    return situation.booking === null
      ? unbooked(draft, reading, situation)
      : toPerson(draft, 'unsure', null, situation);
  }
  const context = { van: scope.id, ...pointsBackTo(draft.thread, scope, situation) };
  const halves = served.matcher.understand(message.text, context);
  const questions = sumsWhole(
    oneSum(halves, message.text, situation) ?? halves.map((each) => sumMeant(each, situation)),
    message.text,
  );
  const danger = dangerSeen(questions, reading, served);
  if (danger !== null) return showNotice(draft, danger, situation);
  return questions.reduce(
    (so, understood, i) => decideOne(so, understood, situation, i === questions.length - 1),
    draft,
  );
}

/**
 * What a message may point back to: the list just offered, where it asks something and picks nothing; the step that is with the hirer,
 * whose words name things of their own ('where is that?'); else what was last talked about.
 */
export function pointsBackTo(
  { open, memory }: Thread,
  scope: VanScope,
  situation: Situation,
): Pick<UnderstandContext, 'lastTopic' | 'lastText'> {
  const { lastTopic, lastText } = memory;
  if (open?.kind === 'choice' && saysQuestion(situation.message.text))
    return { lastTopic: open.topics[0] ?? lastTopic, lastText: open.text };
  const words = open?.kind === 'step' ? stepNow(open.walk, scope, situation) : '';
  return { lastTopic, lastText: `${lastText} ${words}`.trim() };
}

/** How sure one must be that a word about the step asks for a topic of its own; of one of the symptom's kin and system less. */
const BESIDE = { near: 0.25, far: 0.6 };

/**
 * Whether what looks like a word about the open step asks for something that another topic tells: where the box is, what
 * size the fuse has, how the lamp is changed.
 *
 * @param open Whether the step's own reading found no answer to the step in it.
 */
export function asksBeside({ thread }: Draft, { symptom }: Walk, open: boolean, situation: Situation): boolean {
  const { scope, served, message } = situation;
  const { topics } = served.knowledge;
  if (scope === null || !saysQuestion(message.text)) return false;
  const context = { van: scope.id, ...pointsBackTo(thread, scope, situation) };
  return served.matcher.understand(message.text, context).some(({ decision, ranked }) => {
    const [best] = ranked;
    const topic = topics.get(best?.topic ?? '');
    if (best === undefined || topic === undefined || topic.kind === 'symptom' || topic.notice) return false;
    const near = open && (topic.system === topics.get(symptom)?.system || topic.kin.includes(symptom));
    if (decision.kind === 'choose') return near && best.probability >= BESIDE.near;
    return decision.kind === 'answer' && best.probability >= (near ? BESIDE.near : BESIDE.far);
  });
}

/** What the safety reader did not find and the matcher would answer with a topic whose text is a notice. */
function dangerSeen(questions: readonly Understood[], reading: LookedAt, { knowledge }: Served): Danger | null {
  const answered = questions.flatMap(({ decision }) => (decision.kind === 'answer' ? [decision.topic] : []));
  return thirdLook(reading, answered, knowledge.safety);
}

/**
 * The one sum among several questions reads the whole message: what was cut off as another question may be part of it
 * ('clothes for four, food, and four bikes'). Two sums keep each their own words, unless both are the same.
 */
function sumsWhole(questions: readonly Understood[], text: string): readonly Understood[] {
  const isSum = ({ decision }: Understood) => decision.kind === 'answer' && isCalculation(decision.topic);
  const topics = new Set(questions.map(({ decision }) => (decision.kind === 'answer' ? decision.topic : decision)));
  const [first] = questions;
  if (questions.length > 1 && topics.size === 1 && first !== undefined) return [{ ...first, text }];
  return questions.filter(isSum).length === 1
    ? questions.map((each) => (isSum(each) ? { ...each, text } : each))
    : questions;
}

function decideOne(draft: Draft, understood: Understood, situation: Situation, last: boolean): Draft {
  const { decision } = understood;
  switch (decision.kind) {
    case 'answer':
      if (onlyAdds(draft, understood, decision.probability, situation)) return does(draft, { kind: 'waiting' });
      // A notice whose danger was ruled out is no answer: it is offered among the nearest topics.
      if (onlyNotice(decision.topic, situation)) return unsure(draft, understood, 'too-close', situation);
      return answerTopic(draft, decision.topic, understood.text, understood, situation, last);
    case 'choose': {
      if (onlyAdds(draft, understood, 0, situation)) return does(draft, { kind: 'waiting' });
      const apart = symptomsApart(decision.topics, situation);
      if (apart?.kind === 'walk')
        return answerTopic(draft, apart.symptom, understood.text, understood, situation, last);
      const topics = decision.topics.map((each) => each.topic);
      const why = apart === null ? 'close' : 'apart';
      const offered = does(draft, { kind: 'choose', topics: decision.topics, understood, why });
      return opens(notes(offered, { kind: 'offered', topics }), { kind: 'choice', text: understood.text, topics });
    }
    case 'lacks': {
      const { topic, part, probability } = decision;
      const told = does(draft, { kind: 'lacks', topic, part, probability, understood });
      const { van } = draft.thread;
      const noted = notes(
        told,
        { kind: 'lacks', topic, part },
        { kind: 'gap', text: understood.text, why: 'van-has-none', van, topics: [topic] },
      );
      return offersOwn(opens(noted, null), topic, understood, situation);
    }
    case 'chat':
      return chats(draft, decision.chat);
    case 'person':
      return alsoHelps(draft, toPerson(draft, 'asked', understood, situation), understood, situation);
    case 'language': {
      const spoken = remembers(draft, { language: decision.language });
      if (draft.thread.keeper !== 'bot') return does(spoken, { kind: 'waiting' });
      const passed = does(spoken, { kind: 'pass', reason: 'language', understood, language: decision.language });
      return opens(passes(passed, 'language', situation.nowMs), null);
    }
    case 'pass':
      return unsure(draft, understood, decision.why, situation);
  }
}

/** So sure, words that name no part of the van may still begin a walk while people are awaited. */
const SURE_OF_A_FAULT = 0.9;

/**
 * Words about the fault that people have already ('I can hear nothing'): while they are awaited no other walk begins on
 * what names nothing of the van.
 */
function onlyAdds({ thread }: Draft, understood: Understood, probability: number, { served }: Situation): boolean {
  const [best] = understood.ranked;
  const symptom = best !== undefined && served.knowledge.topics.get(best.topic)?.kind === 'symptom';
  return (
    thread.keeper === 'waiting' &&
    thread.reason !== 'staff-only' &&
    symptom &&
    understood.why.linked.length === 0 &&
    probability < SURE_OF_A_FAULT
  );
}

/** How sure one must be of what is wrong, beside the wish for a person, to begin on it while that one is on the way. */
const ALSO = 0.15;

/**
 * 'Someone please, we have no heat': the person is fetched first, and what can be looked at meanwhile is. Who waits
 * already has been told.
 */
function alsoHelps(before: Draft, passed: Draft, understood: Understood, situation: Situation): Draft {
  const [best, second] = understood.ranked;
  if (before.thread.keeper !== 'bot' || best === undefined || best.probability < ALSO) return passed;
  if (second !== undefined && second.probability > best.probability / 2) return passed;
  const topic = situation.served.knowledge.topics.get(best.topic);
  if (topic?.kind !== 'symptom' || topic.notice || topic.pass === 'always') return passed;
  return answerTopic(passed, best.topic, understood.text, understood, situation);
}

function onlyNotice(id: TopicId, { served }: Situation): boolean {
  const topic = served.knowledge.topics.get(id);
  return topic?.notice === true && topic.answer === undefined;
}

/**
 * Something is wrong with a thing that this van has in another kind ('the fridge is warm', meant of a gas fridge, in a
 * van with a compressor): after what it has instead, that one's own symptoms are offered.
 */
function offersOwn(draft: Draft, topic: TopicId, understood: Understood, { scope, served }: Situation): Draft {
  const { topics } = served.knowledge;
  const lacked = topics.get(topic);
  if (lacked?.kind !== 'symptom' || scope === null) return draft;
  const own = understood.ranked
    .filter((each) => topics.get(each.topic)?.system === lacked.system && scope.causes(each.topic).length > 0)
    .slice(0, MOST_OFFERED);
  if (own.length === 0) return draft;
  const offered = does(draft, { kind: 'choose', topics: own, understood, why: 'apart' });
  return opens(offered, { kind: 'choice', text: understood.text, topics: own.map((each) => each.topic) });
}

const TO_THE_BRIEF: ReadonlySet<ChatKind> = new Set(['ok', 'thanks', 'praise', 'sorry', 'chat']);

/** Small talk is answered in one line and changes nothing; a question the bot has open stays open. */
export function chats(draft: Draft, chat: ChatKind): Draft {
  // While people are awaited every word goes to them, and that is all there is to say to 'ok' or 'thanks'.
  if (draft.thread.keeper === 'waiting' && TO_THE_BRIEF.has(chat)) return does(draft, { kind: 'waiting' });
  return does(draft, { kind: 'chat', chat });
}

const LAST_TRY_FLOOR = 0.04;
const MOST_OFFERED = 3;

/**
 * Nothing was sure enough: once, the nearest topics are offered, or those about a part that the words name; else people
 * get it, and it is noted as a gap.
 */
function unsure(
  draft: Draft,
  understood: Understood,
  why: 'no-such-topic' | 'too-close' | 'word-not-known',
  situation: Situation,
): Draft {
  const { scope, served } = situation;
  const topics = understood.ranked.slice(0, 3).map((each) => each.topic);
  const noted = notes(draft, { kind: 'gap', text: understood.text, why, van: draft.thread.van, topics });
  if (draft.thread.keeper === 'waiting') return does(noted, { kind: 'waiting' });
  if (scope === null) return toPerson(noted, 'unsure', understood, situation);
  const lack =
    why === 'no-such-topic' ? null : lackNamed(understood.text, understood.why.linked, scope, served.knowledge);
  if (lack !== null) {
    return opens(does(noted, { kind: 'lacks', ...lack, probability: 0, understood }), null);
  }
  const near = why === 'no-such-topic' ? [] : lastTry(understood.text, scope, served);
  const offered = near.length > 0 ? near : vagueFaults(understood, scope, served.knowledge, MOST_OFFERED);
  if (offered.length === 0) return toPerson(noted, 'unsure', understood, situation);
  const asks = symptomsApart(offered, situation) === null ? 'last-try' : 'apart';
  const asked = does(noted, { kind: 'choose', topics: offered, understood, why: asks });
  return opens(asked, { kind: 'choice', text: understood.text, topics: offered.map((each) => each.topic) });
}

/** The nearest topics, and where none is near those about a part that is named. */
function lastTry(text: string, scope: VanScope, { matcher, knowledge }: Served): readonly Ranked[] {
  const nearest = matcher
    .nearest(text, { van: scope.id, lastTopic: null, lastText: '' }, MOST_OFFERED)
    .filter((each) => each.probability >= LAST_TRY_FLOOR);
  if (nearest.length > 0) return nearest;
  return topicsNamed(text, scope, knowledge, MOST_OFFERED).map((topic) => ({ topic, probability: 0 }));
}

/**
 * Without a booking no van is known and nothing about one is answered; small talk and the wish for a person are
 * understood all the same, by the words of any van.
 */
function unbooked(draft: Draft, reading: LookedAt, situation: Situation): Draft {
  const { served, message } = situation;
  const anyVan = [...served.knowledge.vans.keys()][0];
  const questions =
    anyVan === undefined ? [] : served.matcher.understand(message.text, { van: anyVan, lastTopic: null, lastText: '' });
  const danger = dangerSeen(questions, reading, served);
  if (danger !== null) return showNotice(draft, danger, situation);
  const understood = questions[0];
  if (understood?.decision.kind === 'person') return toPerson(draft, 'asked', null, situation);
  if (understood?.decision.kind === 'language') {
    const spoken = remembers(draft, { language: understood.decision.language });
    return passes(
      does(spoken, { kind: 'pass', reason: 'language', understood: null, language: understood.decision.language }),
      'language',
      situation.nowMs,
    );
  }
  return opens(does(draft, { kind: 'ask-code' }), { kind: 'code' });
}
