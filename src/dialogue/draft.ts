import type { TopicId } from '../basics/ids.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import type { SiteData } from '../knowledge/schema.ts';
import type { Matcher } from '../match/types.ts';
import type { Booking, Message } from '../message/message.ts';
import type { SafetyReader } from '../safety/types.ts';
import type { Event, Memory, Open, Thread } from '../thread/thread.ts';
import type { Move } from './moves.ts';

/** What a turn is decided with. */
export type Served = { readonly knowledge: Knowledge; readonly matcher: Matcher; readonly readDanger: SafetyReader };

/**
 * The booking the thread has, or the one that the message's link or code names. `code` tells how a link or code in this
 * message fared; the lookup itself is the shell's.
 */
export type Binding = { readonly booking: Booking | null; readonly code: 'none' | 'right' | 'wrong' };

/** Everything a decision may look at. `scope` and `site` are null while there is no booking. */
export type Situation = {
  readonly served: Served;
  readonly message: Message;
  readonly binding: Binding;
  readonly booking: Booking | null;
  readonly scope: VanScope | null;
  readonly site: SiteData | null;
  readonly nowMs: number;
};

/** A turn in the making: the thread as it will be, what the bot does, what it brings about. */
export type Draft = { readonly thread: Thread; readonly moves: readonly Move[]; readonly events: readonly Event[] };

export function draftOf(thread: Thread): Draft {
  return { thread, moves: [], events: [] };
}

export function does(draft: Draft, ...moves: readonly Move[]): Draft {
  return { ...draft, moves: [...draft.moves, ...moves] };
}

export function notes(draft: Draft, ...events: readonly Event[]): Draft {
  return { ...draft, events: [...draft.events, ...events] };
}

export function opens(draft: Draft, open: Open | null): Draft {
  return { ...draft, thread: { ...draft.thread, open } };
}

export function remembers(draft: Draft, memory: Partial<Memory>): Draft {
  return { ...draft, thread: { ...draft.thread, memory: { ...draft.thread.memory, ...memory } } };
}

/** Marks the thread as passed: it waits for people, unless they have it already. */
export function passes(draft: Draft, reason: NonNullable<Thread['reason']>, nowMs: number): Draft {
  const { thread } = draft;
  if (thread.keeper === 'staff') return draft;
  const sinceMs = thread.keeper === 'waiting' ? thread.sinceMs : nowMs;
  // Danger outranks every other reason a thread may wait for.
  const kept = thread.keeper === 'waiting' && thread.reason === 'safety' ? 'safety' : reason;
  return { ...draft, thread: { ...thread, keeper: 'waiting', reason: kept, sinceMs } };
}

/** The record of a topic in the conversation: what follow-ups refer back to. */
export function talkedAbout(draft: Draft, topic: TopicId, text: string, { nowMs }: Situation): Draft {
  return remembers(draft, { lastTopic: topic, lastText: text, lastAtMs: nowMs });
}
