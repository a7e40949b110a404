import type { Event, Line, Message, Reply, Store, StoredEvent } from '../../src/index.ts';
import { plainText } from '../../src/index.ts';
import { type Connection, prepare, query } from './connection.ts';

/** What was said and what came about. The adding halves are called within a transaction. */
export type History = {
  /** @returns The line's id. */
  readonly addLine: (threadId: string, atMs: number, reply: Reply | null) => number;
  readonly lines: (threadId: string, after: number) => readonly Line[];
  readonly addEvent: (threadId: string, atMs: number, event: Event) => void;
  readonly events: (filter: Parameters<Store['events']>[0]) => readonly StoredEvent[];
};

export function historyIn(at: Connection): History {
  const addLine = prepare(at, (sql, given: { thread_id: string; at_ms: number; who: string; reply: string | null }) =>
    sql
      .insertInto('lines')
      .values({ thread_id: given.thread_id, at_ms: given.at_ms, who: given.who, reply: given.reply })
      .returning('id'),
  );
  const lines = prepare(at, (sql, given: { thread_id: string; after: number }) =>
    sql
      .selectFrom('lines as l')
      .leftJoin('messages as m', 'm.seq', 'l.id')
      .leftJoin('outbox as o', 'o.id', 'l.id')
      .select(['l.id', 'l.thread_id', 'l.at_ms', 'l.who', 'l.reply', 'm.body as message', 'o.outcome'])
      .where('l.thread_id', '=', given.thread_id)
      .where('l.id', '>', given.after)
      .orderBy('l.id'),
  );
  const addEvent = prepare(at, (sql, given: { thread_id: string; at_ms: number; kind: string; body: string }) =>
    sql
      .insertInto('events')
      .values({ thread_id: given.thread_id, at_ms: given.at_ms, kind: given.kind, body: given.body }),
  );
  return {
    addLine: (thread_id, at_ms, reply) => {
      const who = reply === null ? 'hirer' : (reply.from ?? 'bot');
      const row = addLine.first({ thread_id, at_ms, who, reply: reply === null ? null : JSON.stringify(reply) });
      if (row === undefined) throw new Error('the database gave no id for a new line');
      return row.id;
    },
    lines: (thread_id, after) => lines.all({ thread_id, after }).map(lineOf),
    addEvent: (thread_id, at_ms, event) => {
      addEvent.run({ thread_id, at_ms, kind: event.kind, body: JSON.stringify(event) });
    },
    events: ({ threadId, kinds, after = 0 }) =>
      query(at, (sql) => {
        let found = sql.selectFrom('events').selectAll().where('id', '>', after);
        if (threadId !== undefined) found = found.where('thread_id', '=', threadId);
        if (kinds !== undefined) found = found.where('kind', 'in', [...kinds]);
        return found.orderBy('id');
      }).map(({ id, thread_id, at_ms, body }) => ({
        id,
        threadId: thread_id,
        atMs: at_ms,
        event: JSON.parse(body) as Event,
      })),
  };
}

type LineRow = {
  readonly id: number;
  readonly thread_id: string;
  readonly at_ms: number;
  readonly who: string;
  readonly reply: string | null;
  readonly message: string | null;
  readonly outcome: 'delivered' | 'unknown' | 'gone' | null;
};

function lineOf(row: LineRow): Line {
  const said = { id: row.id, threadId: row.thread_id, atMs: row.at_ms, who: row.who };
  if (row.reply === null) {
    const message = JSON.parse(row.message ?? 'null') as Message;
    return { ...said, text: message.text, reply: null, message, sent: null };
  }
  const reply = JSON.parse(row.reply) as Reply;
  return { ...said, text: plainText(reply), reply, message: null, sent: row.outcome ?? 'waiting' };
}
