import type { Arrived, OutboxRow, Receipt, Reply, Thread } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';

/** The queue of replies on their way out. All but `next` are called within a transaction. */
export type Outbox = {
  readonly add: (id: number, thread: Thread) => void;
  readonly next: (channel: string, nowMs: number, most: number, busy: ReadonlySet<string>) => readonly OutboxRow[];
  readonly markSending: (id: number) => void;
  readonly settle: (id: number, receipt: Receipt, nowMs: number) => void;
};

export function outboxIn(at: Connection): Outbox {
  const add = prepare(at, (sql, given: { id: number; thread_id: string; channel: string; address: string }) =>
    sql.insertInto('outbox').values({
      id: given.id,
      thread_id: given.thread_id,
      channel: given.channel,
      address: given.address,
      tries: 0,
      not_before_ms: 0,
      sending: 0,
    }),
  );
  const first = prepare(at, (sql, given: { channel: string; now: number; most: number }) =>
    sql
      .selectFrom('outbox as o')
      .innerJoin('lines as l', 'l.id', 'o.id')
      .select(['o.id', 'o.thread_id', 'o.channel', 'o.address', 'o.tries', 'o.not_before_ms', 'o.sending', 'l.reply'])
      .where('o.channel', '=', given.channel)
      .where('o.outcome', 'is', null)
      .where('o.not_before_ms', '<=', given.now)
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('outbox as earlier')
              .select('earlier.id')
              .whereRef('earlier.channel', '=', 'o.channel')
              .whereRef('earlier.address', '=', 'o.address')
              .whereRef('earlier.id', '<', 'o.id')
              .where('earlier.outcome', 'is', null),
          ),
        ),
      )
      .orderBy('o.id')
      .limit(given.most),
  );
  const delivered = prepare(at, (sql, given: { thread_id: string; from: number; before: number }) =>
    sql
      .selectFrom('outbox as o')
      .innerJoin('lines as l', 'l.id', 'o.id')
      .select(['o.id', 'o.detail', 'l.reply'])
      .where('l.thread_id', '=', given.thread_id)
      .where('l.id', '>=', given.from)
      .where('l.id', '<', given.before)
      .where('o.outcome', '=', 'delivered')
      .orderBy('l.id', 'desc'),
  );
  const arrivedBefore = (id: number, thread_id: string, { putsRight }: Reply): Arrived | null => {
    if (putsRight === undefined) return null;
    for (const row of delivered.all({ thread_id, from: putsRight, before: id })) {
      const reply = JSON.parse(row.reply ?? 'null') as Reply;
      if (row.id === putsRight || reply.putsRight === putsRight) return { id: row.detail ?? '', reply };
    }
    return null;
  };
  const mark = prepare(at, (sql, given: { id: number }) =>
    sql.updateTable('outbox').set({ sending: 1 }).where('id', '=', given.id).where('outcome', 'is', null),
  );
  const defer = prepare(at, (sql, given: { id: number; until: number; why: string }) =>
    sql
      .updateTable('outbox')
      .set(({ eb }) => ({ tries: eb('tries', '+', 1), not_before_ms: given.until, sending: 0, detail: given.why }))
      .where('id', '=', given.id)
      .where('outcome', 'is', null),
  );
  const end = prepare(
    at,
    (sql, given: { id: number; outcome: 'delivered' | 'unknown' | 'gone'; detail: string; now: number }) =>
      sql
        .updateTable('outbox')
        .set({ outcome: given.outcome, detail: given.detail, settled_ms: given.now })
        .where('id', '=', given.id)
        .where('outcome', 'is', null),
  );
  return {
    add: (id, { id: thread_id, channel, address }) => {
      add.run({ id, thread_id, channel, address });
    },
    next: (channel, now, most, busy) =>
      first
        .all({ channel, now, most: most + busy.size })
        .filter((row) => !busy.has(row.address))
        .slice(0, most)
        .map((row) => {
          const reply = JSON.parse(row.reply ?? 'null') as Reply;
          return {
            id: row.id,
            threadId: row.thread_id,
            channel: row.channel,
            address: row.address,
            reply,
            tries: row.tries,
            notBeforeMs: row.not_before_ms,
            maybeSent: row.sending === 1,
            arrived: arrivedBefore(row.id, row.thread_id, reply),
          };
        }),
    markSending: (id) => {
      mark.run({ id });
    },
    settle: (id, receipt, now) => {
      if (receipt.kind === 'later') defer.run({ id, until: now + receipt.afterMs, why: receipt.why });
      else {
        const detail = receipt.kind === 'delivered' ? receipt.id : receipt.why;
        end.run({ id, outcome: receipt.kind, detail, now });
      }
    },
  };
}
