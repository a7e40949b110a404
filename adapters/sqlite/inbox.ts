import type { Message, Received } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';

/** The queue of messages that wait for their turn. `add` and `handle` are called within a transaction. */
export type Inbox = {
  /** The thread that has the message of this key; null when it was never received. */
  readonly threadOf: (channel: string, key: string) => string | null;
  readonly add: (seq: number, threadId: string, message: Message) => void;
  readonly next: (most: number, busy: ReadonlySet<string>) => readonly Received[];
  readonly isWaiting: (seq: number, threadId: string) => boolean;
  readonly handle: (seq: number, atMs: number) => void;
};

export function inboxIn(at: Connection): Inbox {
  const find = prepare(at, (sql, given: { channel: string; key: string }) =>
    sql.selectFrom('messages').select('thread_id').where('channel', '=', given.channel).where('key', '=', given.key),
  );
  const add = prepare(
    at,
    (sql, given: { seq: number; thread_id: string; channel: string; key: string; body: string }) =>
      sql.insertInto('messages').values({
        seq: given.seq,
        thread_id: given.thread_id,
        channel: given.channel,
        key: given.key,
        body: given.body,
      }),
  );
  const oldest = prepare(at, (sql, given: { most: number }) =>
    sql
      .selectFrom('messages as m')
      .select(['m.seq', 'm.thread_id', 'm.body'])
      .where('m.handled_ms', 'is', null)
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('messages as earlier')
              .select('earlier.seq')
              .whereRef('earlier.thread_id', '=', 'm.thread_id')
              .whereRef('earlier.seq', '<', 'm.seq')
              .where('earlier.handled_ms', 'is', null),
          ),
        ),
      )
      .orderBy('m.seq')
      .limit(given.most),
  );
  const waiting = prepare(at, (sql, given: { seq: number; thread_id: string }) =>
    sql
      .selectFrom('messages')
      .select('seq')
      .where('seq', '=', given.seq)
      .where('thread_id', '=', given.thread_id)
      .where('handled_ms', 'is', null),
  );
  const handle = prepare(at, (sql, given: { seq: number; handled_ms: number }) =>
    sql.updateTable('messages').set({ handled_ms: given.handled_ms }).where('seq', '=', given.seq),
  );
  return {
    threadOf: (channel, key) => find.first({ channel, key })?.thread_id ?? null,
    add: (seq, thread_id, message) => {
      add.run({ seq, thread_id, channel: message.channel, key: message.key, body: JSON.stringify(message) });
    },
    // As many more as are busy: enough, since a thread has one oldest message at most.
    next: (most, busy) =>
      oldest
        .all({ most: most + busy.size })
        .filter((row) => !busy.has(row.thread_id))
        .slice(0, most)
        .map((row) => ({ seq: row.seq, threadId: row.thread_id, message: JSON.parse(row.body) as Message })),
    isWaiting: (seq, thread_id) => waiting.first({ seq, thread_id }) !== undefined,
    handle: (seq, handled_ms) => {
      handle.run({ seq, handled_ms });
    },
  };
}
