import { readChoice } from './choices.ts';
import { type Draft, does, notes, opens, type Situation } from './draft.ts';
import { chosenFrom, putAgain } from './menu.ts';
import { toPerson } from './pass.ts';
import { answerSum } from './sum.ts';
import { answerTopic, didNotHelp } from './topic.ts';
import { asksBeside } from './understanding.ts';
import { answerCarryOn, answerStep, recallWalk, resumeWalk, showsAgain } from './walk.ts';
import { isBare, readAllWell, readHelped, saysCarryOn, saysNone, saysNotUnderstood } from './words-read.ts';

/** What the bot's own open question makes of a typed message; null when the message is about something else. */
export function answerOpen(draft: Draft, situation: Situation): Draft | null {
  const { open } = draft.thread;
  const { text } = situation.message;
  const recalled = open?.kind === 'step' ? null : recallWalk(draft, situation);
  if (recalled !== null) return recalled;
  const resumed = open?.kind !== 'step' && saysCarryOn(text) ? resumeWalk(draft, situation) : null;
  if (resumed !== null || open === null) return resumed;
  switch (open.kind) {
    case 'choice': {
      const chosen = chosenFrom(open, text, situation);
      if (chosen === 'none' || saysNone(text)) return noneOfThese(draft, situation);
      if (chosen !== null) return answerTopic(opens(draft, null), chosen, open.text, null, situation);
      if (!isBare(text) && !saysNotUnderstood(text)) return null;
      return open.again === true ? noneOfThese(draft, situation) : putAgain(draft, open);
    }
    case 'helped': {
      const helped = readHelped(text);
      if (helped === null && saysNotUnderstood(text)) return toldHelped(draft, open.topic, false, situation);
      return helped === null ? null : toldHelped(draft, open.topic, helped, situation);
    }
    case 'step': {
      const answered = answerStep(draft, open.walk, situation);
      if (answered === null || answered.thread.keeper !== draft.thread.keeper) return answered;
      return asksBeside(draft, open.walk, showsAgain(answered), situation) ? null : answered;
    }
    case 'carry-on':
      return answerCarryOn(draft, situation);
    case 'input':
      return answerSum(draft, open, text, situation);
    case 'all-well': {
      const well = readAllWell(text);
      return well === null ? null : toldWell(draft, well, situation);
    }
    case 'danger':
    case 'code':
      return null;
  }
}

/** What a press does. Presses outlive their question: a stale one is said to be so, and nothing happens. */
export function answerPress(draft: Draft, situation: Situation): Draft {
  const pressed = readChoice(situation.message.choice ?? '');
  const { open } = draft.thread;
  switch (pressed?.kind) {
    case 'topic':
      return situation.scope?.topics.has(pressed.topic) === true
        ? answerTopic(opens(draft, null), pressed.topic, open?.kind === 'choice' ? open.text : '', null, situation)
        : does(draft, { kind: 'old-button' });
    case 'none-of-these':
      return open?.kind === 'choice' ? noneOfThese(draft, situation) : does(draft, { kind: 'old-button' });
    case 'helped':
      return open?.kind === 'helped' && open.topic === pressed.topic
        ? toldHelped(draft, pressed.topic, pressed.yes, situation)
        : does(draft, { kind: 'old-button' });
    case 'step':
      return open?.kind === 'step' && open.walk.symptom === pressed.symptom
        ? (answerStep(draft, open.walk, situation, pressed.answer) ?? draft)
        : does(draft, { kind: 'old-button' });
    case 'input':
      return open?.kind === 'input'
        ? (answerSum(draft, open, pressed.value, situation) ?? draft)
        : does(draft, { kind: 'old-button' });
    case 'all-well':
      return open?.kind === 'all-well' ? toldWell(draft, pressed.yes, situation) : does(draft, { kind: 'old-button' });
    case 'resume':
      return resumeWalk(draft, situation) ?? does(draft, { kind: 'old-button' });
    case 'person':
      return toPerson(draft, 'asked', null, situation);
    case 'never-mind':
      return withdraw(draft, situation);
    case 'danger':
    case undefined:
      return does(draft, { kind: 'old-button' });
  }
}

/** 'Never mind' takes back what waits for people; danger is only ever ended by people. */
export function withdraw(draft: Draft, situation: Situation): Draft {
  const { thread } = draft;
  if (thread.keeper !== 'waiting') return does(opens(draft, null), { kind: 'helped' });
  if (thread.reason === 'safety') return does(draft, { kind: 'waiting' });
  const back = {
    ...thread,
    keeper: 'bot' as const,
    keeperName: null,
    reason: null,
    sinceMs: situation.nowMs,
    open: null,
  };
  return does(notes({ ...draft, thread: back }, { kind: 'given-back', by: 'hirer' }), { kind: 'withdrawn' });
}

/** Not well after people had it: people again, who read what was said before. */
function toldWell(draft: Draft, well: boolean, situation: Situation): Draft {
  return well ? does(opens(draft, null), { kind: 'helped' }) : toPerson(draft, 'asked', null, situation);
}

function noneOfThese(draft: Draft, situation: Situation): Draft {
  const { open } = draft.thread;
  const topics = open?.kind === 'choice' ? open.topics : [];
  const text = open?.kind === 'choice' ? open.text : draft.thread.memory.lastText;
  const noted = notes(draft, { kind: 'gap', text, why: 'nothing-picked', van: draft.thread.van, topics });
  return toPerson(noted, draft.thread.memory.tried.length > 0 ? 'not-fixed' : 'unsure', null, situation);
}

/** 'Still stuck' offers the next best topics once, then a person. */
function toldHelped(draft: Draft, topic: string, yes: boolean, situation: Situation): Draft {
  if (yes) return opens(does(notes(draft, { kind: 'helped', topic, yes: true }), { kind: 'helped' }), null);
  const { open } = draft.thread;
  const stuck = didNotHelp(draft, topic, situation);
  const next =
    open?.kind === 'helped'
      ? [...new Set(open.next)].filter((each) => each !== topic && situation.scope?.topics.has(each) === true)
      : [];
  const answerable = next.filter((each) => situation.served.knowledge.topics.get(each)?.notice === false).slice(0, 3);
  if (answerable.length === 0) return toPerson(stuck, 'not-fixed', null, situation);
  const offered = does(stuck, {
    kind: 'choose',
    topics: answerable.map((each) => ({ topic: each, probability: 0 })),
    understood: null,
    why: 'stuck',
  });
  return opens(offered, { kind: 'choice', text: open?.kind === 'helped' ? open.text : '', topics: answerable });
}
