import type { Address, Thread, ThreadFilter } from '../../src/index.ts';
import { type Connection, prepare, query } from './connection.ts';
import type { ThreadRow } from './tables.ts';

/** The rows of threads. `add` and `change` are called within a transaction; both say whether they did it. */
export type Threads = {
  readonly at: (address: Address) => Thread | null;
  readonly byId: (id: string) => Thread | null;
  readonly all: (filter: ThreadFilter) => readonly Thread[];
  /** As version 1; not when its id or its address is taken. */
  readonly add: (thread: Thread) => boolean;
  /** As the next version; not when another save came first. The address of a thread never changes. */
  readonly change: (thread: Thread) => boolean;
};

type Found = Pick<ThreadRow, 'body' | 'version'>;

export function threadsIn(at: Connection): Threads {
  const byId = prepare(at, (sql, given: { id: string }) =>
    sql.selectFrom('threads').select(['body', 'version']).where('id', '=', given.id),
  );
  const byAddress = prepare(at, (sql, given: Address) =>
    sql
      .selectFrom('threads')
      .select(['body', 'version'])
      .where('channel', '=', given.channel)
      .where('address', '=', given.address),
  );
  const add = prepare(at, (sql, given: ThreadRow) =>
    sql
      .insertInto('threads')
      .values({
        id: given.id,
        channel: given.channel,
        address: given.address,
        booking: given.booking,
        keeper: given.keeper,
        since_ms: given.since_ms,
        version: given.version,
        body: given.body,
      })
      .onConflict((conflict) => conflict.doNothing()),
  );
  const change = prepare(at, (sql, given: ThreadRow & { loaded: number }) =>
    sql
      .updateTable('threads')
      .set({
        booking: given.booking,
        keeper: given.keeper,
        since_ms: given.since_ms,
        version: given.version,
        body: given.body,
      })
      .where('id', '=', given.id)
      .where('version', '=', given.loaded),
  );
  return {
    at: (address) => threadOf(byAddress.first(address)),
    byId: (id) => threadOf(byId.first({ id })),
    all: ({ keeper, booking, channel }) =>
      query(at, (sql) => {
        let found = sql.selectFrom('threads').select(['body', 'version']);
        if (keeper !== undefined) found = found.where('keeper', 'in', [...keeper]);
        if (booking !== undefined) found = found.where('booking', '=', booking);
        if (channel !== undefined) found = found.where('channel', '=', channel);
        return found.orderBy('since_ms').orderBy('id');
      }).map(parse),
    add: (thread) => add.run(rowOf(thread, 1)) === 1,
    change: (thread) => change.run({ ...rowOf(thread, thread.version + 1), loaded: thread.version }) === 1,
  };
}

function rowOf(thread: Thread, version: number): ThreadRow {
  const { id, channel, address, booking, keeper, sinceMs } = thread;
  return { id, channel, address, booking, keeper, since_ms: sinceMs, version, body: JSON.stringify(thread) };
}

function threadOf(row: Found | undefined): Thread | null {
  return row === undefined ? null : parse(row);
}

/** The body was written with the version that had been loaded; the column has the one it became. */
function parse(row: Found): Thread {
  return { ...(JSON.parse(row.body) as Thread), version: row.version };
}
