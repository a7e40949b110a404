import type { BookingRef } from '../basics/ids.ts';
import type { Address, Booking, Message } from '../message/message.ts';
import type { Reply } from '../reply/reply.ts';
import type { Event, Thread } from '../thread/thread.ts';
import type { Arrived, Receipt } from './channel.ts';

/** A message as it waits in the store for its turn. `seq` gives the order in which messages were received. */
export type Received = { readonly seq: number; readonly threadId: string; readonly message: Message };

/** A reply on its way out. Rows of one address are delivered in the order of `id`. */
export type OutboxRow = Address & {
  readonly id: number;
  readonly threadId: string;
  readonly reply: Reply;
  readonly tries: number;
  readonly notBeforeMs: number;
  /**
   * Marked as being sent and never settled: the process ended in between, and nobody knows whether it arrived. It is
   * sent again; a channel that shows a reply by its line shows it once all the same.
   */
  readonly maybeSent: boolean;
  /** Of a reply that puts right another: the newest of that one and its corrections that has arrived, else null. */
  readonly arrived: Arrived | null;
};

/** One thing said in a thread, as staff read it. `who`: 'hirer', 'bot', or a rota name. */
export type Line = {
  readonly id: number;
  readonly threadId: string;
  readonly atMs: number;
  readonly who: string;
  readonly text: string;
  readonly reply: Reply | null;
  readonly message: Message | null;
  /** How far a reply has got; null for what the hirer said. `unknown`: it may have arrived. */
  readonly sent: 'waiting' | 'delivered' | 'unknown' | 'gone' | null;
};

export type StoredEvent = {
  readonly id: number;
  readonly threadId: string;
  readonly atMs: number;
  readonly event: Event;
};

/** What one turn leaves behind: written in one transaction, or not at all. */
export type TurnResult = {
  /** The message handled; null when staff or the clock brought the change about. */
  readonly seq: number | null;
  /** As the thread shall be saved; its `version` is the one that was loaded. */
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  readonly events: readonly Event[];
  readonly atMs: number;
};

export type Saved = 'saved' | 'changed-meanwhile';

/** A one-time or lasting secret: only its hash is kept. `use` is what it opens, `subject` whose it is. */
export type Token = {
  readonly hash: string;
  readonly use: 'chat' | 'code' | 'sign-in' | 'session' | 'passkey' | 'staff-telegram';
  readonly subject: string;
  readonly data: Readonly<Record<string, string>>;
  readonly expiresMs: number;
};

export type ThreadFilter = {
  readonly keeper?: readonly Thread['keeper'][];
  readonly booking?: BookingRef;
  readonly channel?: string;
};

/**
 * Everything that must outlive the process. One contract suite holds for every implementation: tests/contracts.
 * Methods reject only when the store itself fails; expected outcomes are return values.
 */
export type Store = {
  /** Stores a message under its channel and key, once, in the thread of its address (made by `newThread` when there is none). */
  readonly receive: (
    message: Message,
    newThread: () => Thread,
  ) => Promise<{ readonly kind: 'stored' | 'repeated'; readonly threadId: string }>;
  /** The oldest unhandled message of each thread, in the order received; threads whose ids are in `busy` are left out. */
  readonly nextMessages: (most: number, busy: ReadonlySet<string>) => Promise<readonly Received[]>;
  /**
   * A thread of version 0 is added, unless its id or address is taken. `changed-meanwhile` also when the message was handled
   * before: whoever comes second answers nothing.
   */
  readonly saveTurn: (result: TurnResult) => Promise<Saved>;
  /** Saves several turns of different threads in one transaction; one that changed meanwhile does not hold up the others. */
  readonly saveTurns: (results: readonly TurnResult[]) => Promise<readonly Saved[]>;

  readonly thread: (id: string) => Promise<Thread | null>;
  readonly threadAt: (address: Address) => Promise<Thread | null>;
  /** The one that has waited longest (`sinceMs`) first. */
  readonly threads: (filter: ThreadFilter) => Promise<readonly Thread[]>;
  /** Everything said in a thread, oldest first; `after` is the last line already seen. */
  readonly lines: (threadId: string, after?: number) => Promise<readonly Line[]>;
  readonly events: (filter: {
    readonly threadId?: string;
    readonly kinds?: readonly Event['kind'][];
    readonly after?: number;
  }) => Promise<readonly StoredEvent[]>;

  /** Rows that may be sent now, the first of each address only, in order of id; addresses in `busy` are left out. */
  readonly nextToSend: (
    channel: string,
    nowMs: number,
    most: number,
    busy: ReadonlySet<string>,
  ) => Promise<readonly OutboxRow[]>;
  /** Said before a channel is asked to deliver, so that one can tell what may have been sent at a crash: see `maybeSent`. */
  readonly markSending: (ids: readonly number[]) => Promise<void>;
  /** `later` keeps the row and counts a try; every other receipt ends it. Nothing happens to a row that has ended. */
  readonly settle: (id: number, receipt: Receipt, nowMs: number) => Promise<void>;
  /** Adds a message to a hirer that no turn brought about (staff's words, a reminder). */
  readonly post: (threadId: string, reply: Reply, atMs: number) => Promise<void>;

  readonly booking: (ref: BookingRef) => Promise<Booking | null>;
  /** By first day, then ref. */
  readonly bookings: () => Promise<readonly Booking[]>;
  /** All of them or none. A ref that exists is changed, never doubled. */
  readonly putBookings: (
    bookings: readonly Booking[],
  ) => Promise<{ readonly added: number; readonly changed: number; readonly same: number }>;

  readonly putToken: (token: Token) => Promise<void>;
  readonly token: (hash: string, use: Token['use'], nowMs: number) => Promise<Token | null>;
  /** All that open `use` and have not expired, of one subject or (left out) of everybody; by subject, then hash. */
  readonly tokens: (use: Token['use'], nowMs: number, subject?: string) => Promise<readonly Token[]>;
  /** Takes a token and ends it in one step: of two callers one gets null. */
  readonly spendToken: (hash: string, use: Token['use'], nowMs: number) => Promise<Token | null>;
  readonly dropToken: (hash: string) => Promise<void>;

  /** Small durable facts by name: a channel's last update, which forum topic a booking has. */
  readonly note: (name: string) => Promise<string | null>;
  readonly putNote: (name: string, value: string) => Promise<void>;
  /** The same without waiting for the disk: it outlives the end of the process, but a power cut only once something else is written. */
  readonly putNoteSoon: (name: string, value: string) => Promise<void>;
  /** Names beginning with `prefix`, sorted. */
  readonly notes: (prefix: string) => Promise<readonly { readonly name: string; readonly value: string }[]>;

  /** A consistent copy while writing goes on; an older copy at `file` is replaced in one step. */
  readonly backup: (file: string) => Promise<void>;
  /** Ends cleanly: what was asked before is written. */
  readonly close: () => Promise<void>;
};
