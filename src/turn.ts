import type { Binding, Served, Situation } from './dialogue/draft.ts';
import type { Move } from './dialogue/moves.ts';
import { next } from './dialogue/next.ts';
import type { Booking, Message } from './message/message.ts';
import { briefOf } from './relay/brief.ts';
import type { Reply } from './reply/reply.ts';
import { say } from './reply/say.ts';
import type { Event, Reason, Thread } from './thread/thread.ts';

/** What one message brings about. `moves` are the replies as data: what the console and the trial report. */
export type Turned = {
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  readonly events: readonly Event[];
  readonly moves: readonly Move[];
};

/**
 * The bot's whole answer to one message. Pure and deterministic: nothing else decides what the bot says.
 *
 * 1. Safety first, on every text, in every state.
 * 2. If staff have the thread: relay, and stay silent.
 * 3. The bot's own open question, or a follow-up that changes one input of a sum.
 * 4. Matching, whose winner may be an answer, a walk or a sum.
 *
 * @param binding The thread's booking, or the one that this message's link or code names.
 * @param nowMs   Epoch milliseconds; all times said are local to the firm.
 */
export function turn(thread: Thread, message: Message, served: Served, binding: Binding, nowMs: number): Turned {
  const situation = situationOf(message, served, binding, nowMs);
  const draft = next(thread, situation);
  const moves = noticeFirst(draft.moves);
  const told = { ...situation, thread: draft.thread };
  const replies = moves.flatMap((move) => say(move, told) ?? []);
  const passed = passesIn(moves).map(
    ({ reason, urgency }): Event => ({
      kind: 'passed',
      reason,
      urgency,
      brief: briefOf(draft.thread, reason, moves, situation),
    }),
  );
  return { thread: draft.thread, replies, events: [...draft.events, ...passed], moves };
}

function situationOf(message: Message, served: Served, binding: Binding, nowMs: number): Situation {
  const { booking } = binding;
  const { vans, places } = served.knowledge;
  return {
    served,
    message,
    binding,
    booking,
    scope: booking === null ? null : (vans.get(booking.van) ?? null),
    site: siteOf(booking, places.sites),
    nowMs,
  };
}

function siteOf<Site>(booking: Booking | null, sites: Readonly<Record<string, Site>>): Site | null {
  return booking?.site == null ? null : (sites[booking.site] ?? null);
}

/** A notice is the first thing a hirer reads, whatever else the turn says. */
function noticeFirst(moves: readonly Move[]): readonly Move[] {
  return [...moves.filter((move) => move.kind === 'notice'), ...moves.filter((move) => move.kind !== 'notice')];
}

type Urgency = Extract<Event, { kind: 'passed' }>['urgency'];

function passesIn(moves: readonly Move[]): { reason: Reason; urgency: Urgency }[] {
  return moves.flatMap((move): { reason: Reason; urgency: Urgency }[] => {
    if (move.kind === 'notice')
      return [{ reason: 'safety', urgency: move.danger.level === 'urgent' ? 'urgent' : 'danger' }];
    return move.kind === 'pass' ? [{ reason: move.reason, urgency: 'usual' }] : [];
  });
}
