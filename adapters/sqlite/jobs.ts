import type { Job, Jobs } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';
import type { Writer } from './group-commit.ts';

export function jobsIn(at: Connection, writer: Writer): Jobs {
  const put = prepare(at, (sql, given: { key: string; due_ms: number; data: string }) => {
    const rest = { due_ms: given.due_ms, data: given.data };
    return sql
      .insertInto('jobs')
      .values({ key: given.key, ...rest })
      .onConflict((conflict) => conflict.column('key').doUpdateSet(rest));
  });
  const drop = prepare(at, (sql, given: { key: string }) => sql.deleteFrom('jobs').where('key', '=', given.key));
  const dropDue = prepare(at, (sql, given: { key: string; due: number }) =>
    sql.deleteFrom('jobs').where('key', '=', given.key).where('due_ms', '=', given.due),
  );
  const due = prepare(at, (sql, given: { now: number }) =>
    sql.selectFrom('jobs').selectAll().where('due_ms', '<=', given.now).orderBy('due_ms').orderBy('key'),
  );
  const earliest = prepare(at, (sql, _given: Record<never, never>) =>
    sql.selectFrom('jobs').select('due_ms').orderBy('due_ms').limit(1),
  );
  return {
    put: ({ key, dueMs, data }) =>
      writer.write(() => {
        put.run({ key, due_ms: dueMs, data: JSON.stringify(data) });
      }),
    drop: (key, dueMs) =>
      writer.write(() => {
        if (dueMs === undefined) drop.run({ key });
        else dropDue.run({ key, due: dueMs });
      }),
    due: async (now) =>
      due.all({ now }).map(({ key, due_ms, data }) => ({ key, dueMs: due_ms, data: JSON.parse(data) as Job['data'] })),
    nextDueMs: async () => earliest.first({})?.due_ms ?? null,
  };
}
