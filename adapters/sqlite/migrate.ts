import { Kysely, type Migration, Migrator, SqliteDialect } from 'kysely';
import type { Connection } from './connection.ts';
import { DatabaseError } from './database-error.ts';
import { MIGRATIONS } from './migrations/all.ts';

/** Kysely's own book of what was done. */
const DONE = 'kysely_migration';

/**
 * Brings the tables up to date, all migrations in one transaction. A database that is up to date is only read, so that a
 * command beside a running server does not wait for it.
 *
 * @throws DatabaseError `newer` or `not-ours`: the file is then left as it was.
 */
export async function migrate(
  at: Connection,
  migrations: Readonly<Record<string, Migration>> = MIGRATIONS,
): Promise<void> {
  if (pending(at, migrations).length === 0) return;
  // Held from the look until the end: a second process that starts at the same time waits here and then finds it done.
  at.run(() => at.raw.exec('begin immediate'));
  try {
    if (pending(at, migrations).length > 0) await runAll(at, migrations);
    at.run(() => at.raw.exec('commit'));
  } catch (error) {
    if (at.raw.inTransaction) at.raw.exec('rollback');
    throw error;
  }
}

function pending(at: Connection, migrations: Readonly<Record<string, Migration>>): readonly string[] {
  const tables = at.run(() =>
    at.raw.prepare<[], { name: string }>("select name from sqlite_master where type = 'table'").all(),
  );
  const known = Object.keys(migrations);
  if (tables.length === 0) return known;
  if (!tables.some(({ name }) => name === DONE)) {
    throw new DatabaseError('not-ours', at.file, 'this database belongs to another program');
  }
  const done = at
    .run(() => at.raw.prepare<[], { name: string }>(`select name from ${DONE}`).all())
    .map(({ name }) => name);
  const strange = done.filter((name) => !known.includes(name));
  if (strange.length > 0) {
    throw new DatabaseError(
      'newer',
      at.file,
      `a newer version of the program has changed this database (${strange.join(', ')}); install that version, or use a backup from before`,
    );
  }
  return known.filter((name) => !done.includes(name));
}

/** The transaction is the caller's: on SQLite Kysely begins none of its own. */
async function runAll(at: Connection, migrations: Readonly<Record<string, Migration>>): Promise<void> {
  const db = new Kysely<unknown>({ dialect: new SqliteDialect({ database: at.raw }) });
  const provider = { getMigrations: async () => ({ ...migrations }) };
  const { error } = await new Migrator({ db, provider }).migrateToLatest();
  if (error !== undefined) throw error;
}
