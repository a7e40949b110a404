import Database from 'better-sqlite3';

/**
 * What is wrong with a database file, apart from bugs of ours.
 *
 * - `damaged`: not a database, or its pages contradict each other: put the last backup in its place.
 * - `newer`: a later version of the program has changed it; this one would not understand what it reads.
 * - `not-ours`: a healthy database of some other program.
 * - `busy`: another process held it for longer than the waiting time.
 * - `no-room`: the disk is full. `unreachable`: it cannot be opened, read or written.
 */
export type DatabaseTrouble = 'damaged' | 'newer' | 'not-ours' | 'busy' | 'no-room' | 'unreachable';

/** The database file cannot be used. The message names the file and says what to do; `cause` is the driver's own error. */
export class DatabaseError extends Error {
  override readonly name = 'DatabaseError';
  readonly trouble: DatabaseTrouble;
  readonly file: string;

  constructor(trouble: DatabaseTrouble, file: string, why: string, options?: ErrorOptions) {
    super(`${file}: ${why}`, options);
    this.trouble = trouble;
    this.file = file;
  }
}

/** The driver's codes by their beginnings: https://www.sqlite.org/rescode.html */
const TROUBLES: readonly (readonly [string, DatabaseTrouble, string])[] = [
  ['SQLITE_CORRUPT', 'damaged', 'the database is damaged; put the last backup in its place'],
  ['SQLITE_NOTADB', 'damaged', 'this is not a database, or its beginning is damaged; put the last backup in its place'],
  ['SQLITE_BUSY', 'busy', 'another process holds the database; try again when it is done'],
  ['SQLITE_FULL', 'no-room', 'the disk is full'],
  ['SQLITE_CANTOPEN', 'unreachable', 'the database cannot be opened; does the folder exist and may it be written?'],
  ['SQLITE_READONLY', 'unreachable', 'the database may not be written'],
  ['SQLITE_PERM', 'unreachable', 'the database may not be opened'],
  ['SQLITE_IOERR', 'unreachable', 'the disk reports an error'],
];

/** The driver's error as one of ours where it tells of the file; any other error (a bug) as it is. */
export function asDatabaseError(error: unknown, file: string): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const { code } = error;
  const known = TROUBLES.find(([beginning]) => code.startsWith(beginning));
  return known === undefined ? error : new DatabaseError(known[1], file, known[2], { cause: error });
}
