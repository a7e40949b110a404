import { HOUR_MS } from '../basics/time.ts';
import { type Draft, does, notes, opens, remembers, type Situation } from './draft.ts';

export const MOST_WRONG_CODES = 5;

/** How long until another code may be tried; null when one may be tried now. */
export function codeWaitMs(wrongCodesAtMs: readonly number[], nowMs: number): number | null {
  const recent = wrongCodesAtMs.filter((at) => nowMs - at < HOUR_MS);
  const first = recent[recent.length - MOST_WRONG_CODES];
  return first === undefined ? null : first + HOUR_MS - nowMs;
}

/**
 * Binds the thread to the booking that the message's link or code names, or counts a wrong one.
 *
 * @returns `done` when the message was nothing but that.
 */
export function bind(draft: Draft, situation: Situation): { readonly draft: Draft; readonly done: boolean } {
  const { binding, message, nowMs } = situation;
  const { thread } = draft;
  if (binding.code === 'wrong') {
    const recent = thread.memory.wrongCodesAtMs.filter((at) => nowMs - at < HOUR_MS);
    const wrongCodesAtMs = recent.length >= MOST_WRONG_CODES ? recent : [...recent, nowMs];
    const counted = remembers(draft, { wrongCodesAtMs });
    const told = does(counted, { kind: 'wrong-code', waitMs: codeWaitMs(wrongCodesAtMs, nowMs) });
    return { draft: opens(told, { kind: 'code' }), done: true };
  }
  if (binding.code === 'right' && binding.booking !== null) {
    const { booking } = binding;
    const bound = { ...thread, booking: booking.ref, van: booking.van, open: null };
    const welcomed = does(notes({ ...draft, thread: bound }, { kind: 'bound', booking: booking.ref }), {
      kind: 'welcome',
      booking,
    });
    return { draft: welcomed, done: true };
  }
  if (message.startToken !== null && binding.booking !== null) {
    return { draft: does(draft, { kind: 'welcome', booking: binding.booking }), done: message.text === '' };
  }
  return { draft: followMovedBooking(draft, situation), done: false };
}

/** A booking moved to another van ends what was open about the old one, and says so. */
function followMovedBooking(draft: Draft, { booking, served }: Situation): Draft {
  const { thread } = draft;
  if (booking === null || thread.van === null || thread.van === booking.van) {
    return booking === null || thread.van === booking.van
      ? draft
      : { ...draft, thread: { ...thread, van: booking.van } };
  }
  const from = served.knowledge.vans.get(thread.van)?.name ?? thread.van;
  const moved = { ...thread, van: booking.van, open: null };
  return remembers(does({ ...draft, thread: moved }, { kind: 'moved-van', from }), {
    lastTopic: null,
    lastInputs: null,
    aside: null,
    seen: {},
  });
}
