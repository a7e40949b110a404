import Database from 'better-sqlite3';
import { type Compilable, DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler } from 'kysely';
import { asDatabaseError } from './database-error.ts';
import type { Tables } from './tables.ts';

/** An open file. `run` is where the driver's errors about the file become {@link DatabaseError}s. */
export type Connection = {
  readonly file: string;
  readonly raw: Database.Database;
  readonly run: <T>(work: () => T) => T;
};

/** A query compiled once. `given` are its named values. */
export type Prepared<Given, Row> = {
  readonly all: (given: Given) => Row[];
  readonly first: (given: Given) => Row | undefined;
  /** @returns The number of rows it changed. */
  readonly run: (given: Given) => number;
};

/** How long a process waits while another one writes. */
const BUSY_WAIT_MS = 5_000;
const TRY_AGAIN_MS = 20;

/**
 * Opens `file`. Full synchronisation: what was committed is on the disk, also after a power cut.
 *
 * @throws DatabaseError when the file cannot be opened or is no database.
 */
export function connect(file: string): Connection {
  const run = <T>(work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw asDatabaseError(error, file);
    }
  };
  const raw = run(() => new Database(file, { timeout: BUSY_WAIT_MS }));
  try {
    run(() => {
      writeAhead(raw);
      raw.pragma('synchronous = FULL');
      raw.pragma('foreign_keys = ON');
    });
  } catch (error) {
    raw.close();
    throw error;
  }
  return { file, raw, run };
}

/**
 * Makes the file a write-ahead database, once and for all who open it. For this step alone SQLite does not wait while
 * another process writes (it would raise a read lock, and two who do that would wait for each other for ever:
 * https://www.sqlite.org/c3ref/busy_handler.html), so we let go and try again.
 */
function writeAhead(raw: Database.Database): void {
  for (let waitedMs = 0; ; waitedMs += TRY_AGAIN_MS) {
    try {
      raw.pragma('journal_mode = WAL');
      return;
    } catch (error) {
      const busy = error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
      if (!busy || waitedMs >= BUSY_WAIT_MS) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, TRY_AGAIN_MS);
    }
  }
}

/** Kysely as the writer of SQL only: it types and compiles, the driver below runs. */
const writer = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

class Named {
  readonly name: string;
  constructor(name: string) {
    this.name = name;
  }
}

/** Stands for the values while a query is compiled: whatever is asked of it is a place to fill in later. */
const PLACES = new Proxy({}, { get: (_, name) => new Named(String(name)) });

/**
 * Compiles a query once, to be run many times within one tick.
 * Everything runs synchronously: between two statements of a transaction nothing else of this process can slip in.
 *
 * @example const find = prepare(at, (sql, given: { id: string }) => sql.selectFrom('threads').selectAll().where('id', '=', given.id));
 *          find.first({ id: 't1' })
 */
export function prepare<Given extends object, Row>(
  at: Connection,
  build: (sql: Kysely<Tables>, given: Given) => Compilable<Row>,
): Prepared<Given, Row> {
  const query = build(writer, PLACES as Given).compile();
  const statement = at.run(() => at.raw.prepare<unknown[], Row>(query.sql));
  const bind = (given: Given): unknown[] =>
    query.parameters.map((each) => (each instanceof Named ? given[each.name as keyof Given] : each));
  return {
    all: (given) => at.run(() => statement.all(...bind(given))),
    first: (given) => at.run(() => statement.get(...bind(given))),
    run: (given) => at.run(() => statement.run(...bind(given)).changes),
  };
}

/** Runs a query whose shape depends on what is asked. */
export function query<Row>(at: Connection, build: (sql: Kysely<Tables>) => Compilable<Row>): Row[] {
  return prepare(at, (sql, _given: Record<string, never>) => build(sql)).all({});
}
