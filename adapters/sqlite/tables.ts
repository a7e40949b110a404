import type { Generated, Selectable } from 'kysely';

/*
 * The database as Kysely sees it. Instants are epoch milliseconds. What only the core reads (a thread's memory, a reply's
 * blocks) is kept whole as JSON text in `body`; what is searched or sorted by has a column of its own.
 *
 * A line's id is also the `seq` of the message or the `id` of the outbox row that belongs to it: one order for everything
 * that was said.
 */
export type Tables = {
  threads: ThreadTable;
  lines: LineTable;
  messages: MessageTable;
  outbox: OutboxTable;
  events: EventTable;
  bookings: BookingTable;
  tokens: TokenTable;
  notes: NoteTable;
  jobs: JobTable;
};

type ThreadTable = {
  id: string;
  channel: string;
  address: string;
  booking: string | null;
  keeper: string;
  since_ms: number;
  version: number;
  body: string;
};

type LineTable = {
  id: Generated<number>;
  thread_id: string;
  at_ms: number;
  who: string;
  /** JSON; null for what the hirer said, whose text is in `messages`. */
  reply: string | null;
};

type MessageTable = {
  seq: number;
  thread_id: string;
  channel: string;
  key: string;
  /** Null while it waits for its turn. */
  handled_ms: number | null;
  body: string;
};

type OutboxTable = {
  id: number;
  thread_id: string;
  channel: string;
  address: string;
  tries: number;
  not_before_ms: number;
  /** 1 from the moment the channel is asked until the row is settled. */
  sending: number;
  /** Null while it waits; then the kind of the receipt that ended it. */
  outcome: 'delivered' | 'unknown' | 'gone' | null;
  /** The channel's id of what was delivered, or why it was not. */
  detail: string | null;
  settled_ms: number | null;
};

type EventTable = { id: Generated<number>; thread_id: string; at_ms: number; kind: string; body: string };

type BookingTable = {
  ref: string;
  hirer: string;
  first_name: string;
  people: string | null;
  van: string;
  site: string | null;
  pitch: string | null;
  amps: number | null;
  from_day: string;
  to_day: string | null;
  phone: string | null;
  note: string;
};

type TokenTable = { hash: string; use: string; subject: string; data: string; expires_ms: number };
type NoteTable = { name: string; value: string };
type JobTable = { key: string; due_ms: number; data: string };

export type ThreadRow = Selectable<ThreadTable>;
export type BookingRow = Selectable<BookingTable>;
export type TokenRow = Selectable<TokenTable>;
