import type { TopicId } from '../basics/ids.ts';
import { isCalculation } from '../calculators/index.ts';
import type { Inputs } from '../calculators/types.ts';
import type { Understood } from '../match/types.ts';
import type { Danger } from '../safety/types.ts';
import { showNotice } from './danger.ts';
import { type Draft, does, notes, opens, passes, remembers, type Situation, talkedAbout } from './draft.ts';
import { startSum } from './sum.ts';
import { startWalk } from './walk.ts';

/**
 * Answers one topic of the van's scope the way its kind asks for: a sum, a walk, or its text. `understood` is null
 * when the hirer picked the topic from a list.
 *
 * @param text What the hirer had asked: the words that a sum or a walk reads its first inputs from.
 * @param last Whether a question of the bot's own may follow it: with two questions in one message only the last asks.
 */
export function answerTopic(
  draft: Draft,
  topicId: TopicId,
  text: string,
  understood: Understood | null,
  situation: Situation,
  last = true,
): Draft {
  const topic = situation.served.knowledge.topics.get(topicId);
  if (topic === undefined || situation.scope === null) return draft;
  if (topic.answer === undefined && topic.notice) return showNotice(draft, told(topicId, situation), situation);
  const probability = understood?.ranked[0]?.probability ?? 1;
  const heard = notes(talkedAbout(draft, topicId, text, situation), { kind: 'answered', topic: topicId, probability });
  const { lastTopic, lastInputs } = draft.thread.memory;
  const before = lastTopic === topicId ? lastInputs : null;
  const answered = answerByKind(heard, topicId, text, understood, before, situation, last);
  return topic.pass === 'always' && !topic.notice ? alsoPasses(answered, understood, situation) : answered;
}

/** A danger that the hirer picked from a list. */
function told(hazard: TopicId, { served, message }: Situation): Danger {
  const level = served.knowledge.safety.notices[hazard]?.level ?? 'danger';
  return { hazard, level, language: 'en', why: [`picked from a list: '${message.text}'`] };
}

function answerByKind(
  draft: Draft,
  topicId: TopicId,
  text: string,
  understood: Understood | null,
  before: Inputs | null,
  situation: Situation,
  last: boolean,
): Draft {
  const topic = situation.served.knowledge.topics.get(topicId);
  const probability = understood?.ranked[0]?.probability ?? 1;
  if (topic?.calculator !== undefined && isCalculation(topicId))
    return startSum(draft, topicId, text, understood, before, situation);
  if (topic?.kind === 'symptom' && last) {
    const walking = startWalk(draft, topicId, text, understood, situation);
    if (walking !== null) return walking;
  }
  // Something to do can have worked or not; a fact, a place or a rule cannot.
  const asksHelped = last && (topic?.kind === 'how-to' || topic?.kind === 'symptom') && topic.pass !== 'always';
  const next = (understood?.ranked ?? []).slice(1, 6).map((each) => each.topic);
  const answered = does(draft, { kind: 'answer', topic: topicId, probability, understood, asksHelped });
  return asksHelped
    ? opens(answered, { kind: 'helped', topic: topicId, text, next: [...next, ...(topic?.kin ?? [])] })
    : opens(answered, null);
}

/** Topics that are staff's business are answered as far as the graph goes, and passed as well. */
function alsoPasses(draft: Draft, understood: Understood | null, situation: Situation): Draft {
  if (draft.thread.keeper !== 'bot') return draft;
  const passed = does(draft, { kind: 'pass', reason: 'staff-only', understood, language: null });
  return passes(passed, 'staff-only', situation.nowMs);
}

/** Notes that the answer did not help, for the brief and for the gaps. */
export function didNotHelp(draft: Draft, topicId: TopicId, situation: Situation): Draft {
  const title = situation.served.knowledge.topics.get(topicId)?.title ?? topicId;
  const noted = notes(
    draft,
    { kind: 'helped', topic: topicId, yes: false },
    { kind: 'gap', text: draft.thread.memory.lastText, why: 'did-not-help', van: draft.thread.van, topics: [topicId] },
  );
  return remembers(noted, { tried: [...draft.thread.memory.tried, `Read '${title}': still stuck`].slice(-20) });
}
