import type { Thread } from '../thread/thread.ts';
import { bind } from './binding.ts';
import { answerDanger, hears, readSafety, showNotice } from './danger.ts';
import { type Draft, does, draftOf, notes, opens, passes, type Situation } from './draft.ts';
import { menuAgain } from './menu.ts';
import { answerOpen, answerPress, withdraw } from './open-question.ts';
import { followUpSum } from './sum.ts';
import { understandAndDo } from './understanding.ts';
import { closesWalks, leaveWalk, offersAside, stayOnStep } from './walk.ts';
import { isBare, saysNeverMind, saysNotUnderstood } from './words-read.ts';

/**
 * The thread's next step. The order is fixed: safety first, on every text, in every state; then, if staff have the
 * thread, relay and stay silent; then the bot's own open question or a follow-up that changes one input; then matching.
 */
export function next(thread: Thread, situation: Situation): Draft {
  return closesWalks(nextStepOf(thread, situation), thread, situation);
}

function nextStepOf(thread: Thread, situation: Situation): Draft {
  const { message } = situation;
  const reading = readSafety(draftOf(thread), situation);
  const draft = hears(draftOf(thread), situation);
  const { danger } = reading;
  if (danger !== null) {
    const shown = showNotice(bindQuietly(draft, situation), danger, situation);
    // The brief of a fresh pass has the hirer's words; people who had the thread already read them as its next line.
    return thread.keeper === 'bot' ? shown : toldStaff(shown, situation);
  }
  if (thread.keeper === 'staff') return toldStaff(draft, situation);

  const heard = toldStaff(draft, situation);
  const bound = bind(heard, situation);
  if (bound.done) return bound.draft;
  const answered = answerDanger(bound.draft, situation);
  if (answered !== null) return answered;
  if (message.choice !== null) return answerPress(bound.draft, situation);
  if (isUnreadable(situation)) return unreadable(bound.draft, situation);
  if (message.text.trim() === '') return bound.draft;
  if (saysNeverMind(message.text) && thread.keeper === 'waiting') return withdraw(bound.draft, situation);

  const at = bound.draft.thread.open?.kind;
  if (saysNeverMind(message.text) && (at === 'step' || at === 'carry-on')) return leaveWalk(bound.draft);
  const open = situation.scope === null ? null : answerOpen(bound.draft, situation);
  if (open !== null) return open;
  const followed = situation.scope === null ? null : followUpSum(bound.draft, situation);
  if (followed !== null) return followed;
  // With nothing to take back it ends the bot's own question.
  if (saysNeverMind(message.text)) return withdraw(bound.draft, situation);
  if (situation.scope !== null && bound.draft.thread.open === null && saysNothing(message.text))
    return does(bound.draft, { kind: thread.keeper === 'waiting' ? 'waiting' : 'nothing-open' });
  const understood = understandAndDo(bound.draft, reading, situation);
  const again = menuAgain(bound.draft, understood);
  if (again !== null) return again;
  return stayOnStep(bound.draft, understood, situation) ?? offersAside(understood, bound.draft.thread, situation);
}

/** Words that answer or wonder, and name nothing. */
function saysNothing(text: string): boolean {
  return isBare(text) || saysNotUnderstood(text);
}

/** While people have or await the thread, they get every word; an open thread is the bot's alone. */
function toldStaff(draft: Draft, { message }: Situation): Draft {
  if (draft.thread.keeper === 'bot') return draft;
  const { text, attachments, edit } = message;
  return text === '' && attachments.length === 0 ? draft : notes(draft, { kind: 'to-staff', text, attachments, edit });
}

/** A danger in the very message that carries the link: the thread is bound, and the welcome can wait. */
function bindQuietly(draft: Draft, { binding }: Situation): Draft {
  if (binding.code !== 'right' || binding.booking === null) return draft;
  const { ref, van } = binding.booking;
  return notes({ ...draft, thread: { ...draft.thread, booking: ref, van } }, { kind: 'bound', booking: ref });
}

function isUnreadable({ message }: Situation): boolean {
  const unseen = message.attachments.some((each) => each.kind !== 'location' && each.kind !== 'contact');
  return unseen && message.text.trim() === '';
}

function unreadable(draft: Draft, situation: Situation): Draft {
  const told = does(draft, { kind: 'unreadable' });
  if (draft.thread.keeper !== 'bot') return told;
  return opens(
    passes(does(told, { kind: 'pass', reason: 'unsure', understood: null, language: null }), 'unsure', situation.nowMs),
    null,
  );
}
