import { rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import type { Connection } from './connection.ts';
import { asDatabaseError, DatabaseError } from './database-error.ts';

/**
 * Copies the database to `to` as it is at this instant, while this process and others go on writing.
 *
 * A connection of its own holds one reading transaction from start to end: the copy is of one moment, and a busy writer
 * cannot make it begin again for ever. The pages are copied in small steps with other work of the process in between.
 *
 * @throws DatabaseError `unreachable` when `to` cannot be written or is the database itself; nothing is then left behind.
 */
export async function backUp(at: Connection, to: string): Promise<void> {
  if (await isSameFile(at.file, to)) {
    throw new DatabaseError('unreachable', to, 'this is the database itself; give the copy another name');
  }
  if ((await fileAt(dirname(to))) === null) throw new DatabaseError('unreachable', to, 'its folder does not exist');
  // Beside the target, so that taking its place is one step: a copy cut short never looks like a whole one.
  const part = `${to}.part-${process.pid}`;
  const reader = at.run(() => new Database(at.file, { readonly: true, fileMustExist: true }));
  try {
    reader.exec('begin');
    // A transaction sees the moment of its first read, not of its beginning.
    reader.prepare('select count(*) from sqlite_master').get();
    await reader.backup(part);
    await rename(part, to);
  } catch (error) {
    throw troubleAt(to, error);
  } finally {
    reader.close();
    await rm(part, { force: true });
  }
}

function troubleAt(to: string, error: unknown): unknown {
  if (error instanceof Error && 'syscall' in error) {
    return new DatabaseError('unreachable', to, 'the copy cannot be written', { cause: error });
  }
  return asDatabaseError(error, to);
}

async function isSameFile(one: string, other: string): Promise<boolean> {
  const [a, b] = await Promise.all([fileAt(one), fileAt(other)]);
  return a !== null && b !== null && a.ino === b.ino && a.dev === b.dev;
}

async function fileAt(path: string): Promise<{ readonly ino: number; readonly dev: number } | null> {
  return stat(path).catch(() => null);
}
