import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { connect } from '../../../adapters/sqlite/connection.ts';
import { DatabaseError } from '../../../adapters/sqlite/database-error.ts';
import { groupCommit } from '../../../adapters/sqlite/group-commit.ts';
import { migrate } from '../../../adapters/sqlite/migrate.ts';
import { MIGRATIONS } from '../../../adapters/sqlite/migrations/all.ts';
import { openSqlite } from '../../../adapters/sqlite/sqlite-store.ts';
import type { Store } from '../../../src/index.ts';
import { aBooking, aMessage, answer, IDLE, NOW, receive, threadFor } from '../../contracts/store-fixtures.ts';
import { temporaryFolder } from './temporary.ts';

let folder: ReturnType<typeof temporaryFolder>;
let file: string;
beforeEach(() => {
  folder = temporaryFolder();
  file = join(folder.path, 'pitchhand.db');
});
afterEach(() => folder.remove());

/** What opening (or anything else) says is wrong with a file. */
async function trouble(work: Promise<unknown>): Promise<string> {
  return work.then(
    () => 'none',
    (error: unknown) =>
      error instanceof DatabaseError ? `${error.trouble} ${error.message.startsWith(error.file)}` : String(error),
  );
}

/** Enough for several pages. */
async function fill(store: Store): Promise<void> {
  await Promise.all(Array.from({ length: 200 }, (_, i) => store.putNote(`note ${i}`, 'x'.repeat(500))));
}

describe('a file that is opened again', () => {
  test('has everything that was said, and what was waiting still waits', async () => {
    const { store, jobs } = await openSqlite(file);
    const threadId = await receive(store, aMessage('1'));
    await answer(store, threadId, 'An answer');
    await receive(store, aMessage('2'));
    await store.putBookings([aBooking('BR-2701')]);
    await store.putToken({ hash: 'h', use: 'chat', subject: 'BR-2701', data: {}, expiresMs: NOW + 1 });
    await store.putNote('n', 'v');
    await jobs.put({ key: 'j', dueMs: NOW, data: { a: 'b' } });
    await store.close();

    const again = await openSqlite(file);
    expect((await again.store.lines(threadId)).map((line) => line.text)).toEqual([
      'text of 1',
      'An answer',
      'text of 2',
    ]);
    expect((await again.store.nextMessages(9, IDLE)).map((each) => each.message.key)).toEqual(['2']);
    expect(await again.store.nextToSend('telegram', NOW, 9, IDLE)).toHaveLength(1);
    expect((await again.store.receive(aMessage('1'), threadFor(aMessage('1')))).kind).toBe('repeated');
    expect(await again.store.booking('BR-2701')).toEqual(aBooking('BR-2701'));
    expect((await again.store.token('h', 'chat', NOW))?.subject).toBe('BR-2701');
    expect(await again.store.note('n')).toBe('v');
    expect(await again.jobs.due(NOW)).toEqual([{ key: 'j', dueMs: NOW, data: { a: 'b' } }]);
    await again.store.close();
  });

  test('has what was asked for in the instant before it was closed', async () => {
    const { store } = await openSqlite(file);
    const received = store.receive(aMessage('1'), threadFor(aMessage('1')));
    await store.close();
    expect((await received).kind).toBe('stored');
    const again = await openSqlite(file);
    expect(await again.store.nextMessages(9, IDLE)).toHaveLength(1);
    await again.store.close();
  });

  test('shows one process what another has written', async () => {
    const server = await openSqlite(file);
    const command = await openSqlite(file);
    await command.store.putBookings([aBooking('BR-2701')]);
    expect((await server.store.booking('BR-2701'))?.ref).toBe('BR-2701');
    await receive(server.store, aMessage('1'));
    expect(await command.store.nextMessages(1, IDLE)).toHaveLength(1);
    await server.store.close();
    await command.store.close();
  });

  test('refuses to write after it was closed', async () => {
    const { store } = await openSqlite(file);
    await store.close();
    await store.close();
    await expect(receive(store, aMessage('1'))).rejects.toThrow('not open');
  });

  test('makes the folder, for its owner only', async () => {
    const { store } = await openSqlite(join(folder.path, 'a', 'b', 'pitchhand.db'));
    await store.close();
    expect(statSync(join(folder.path, 'a', 'b')).mode & 0o077).toBe(0);
  });
});

describe('durability', () => {
  test('waits for the disk at every commit and keeps references whole', async () => {
    const { raw } = connect(file);
    expect(raw.pragma('journal_mode', { simple: true })).toBe('wal');
    // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
    expect(raw.pragma('synchronous', { simple: true })).toBe(2);
    expect(raw.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(raw.pragma('busy_timeout', { simple: true })).toBe(5_000);
    raw.close();
  });

  test('writes everything asked for in one tick in one transaction', async () => {
    const at = connect(file);
    at.raw.exec('create table t (a integer)');
    const insert = at.raw.prepare('insert into t values (?)');
    const writer = groupCommit(at);
    const other = new Database(file, { readonly: true });
    const seen = (): unknown => other.prepare('select count(*) from t').pluck().get();
    const pending = [1, 2, 3].map((n) => writer.write(() => insert.run(n)));
    expect(seen()).toBe(0);
    await pending[0];
    expect(seen()).toBe(3);
    other.close();
    at.raw.close();
  });

  test('does not wait for the disk where only haste is asked for', async () => {
    const at = connect(file);
    const writer = groupCommit(at);
    const level = (): unknown => at.raw.pragma('synchronous', { simple: true });
    // 1 is NORMAL, 2 is FULL.
    expect(await writer.writeSoon(level)).toBe(1);
    expect(await Promise.all([writer.writeSoon(level), writer.write(level)])).toEqual([2, 2]);
    const failed = writer.writeSoon(() => at.raw.exec('rollback'));
    await expect(failed).rejects.toThrow();
    expect(level()).toBe(2);
    at.raw.close();
  });

  test('undoes all of a piece of work that fails half way, and nothing of its neighbours', async () => {
    const at = connect(file);
    at.raw.exec('create table t (a integer)');
    const insert = at.raw.prepare('insert into t values (?)');
    const writer = groupCommit(at);
    const works = [1, 2, 3].map((n) =>
      writer.write(() => {
        insert.run(n);
        if (n === 2) throw new Error('half way');
      }),
    );
    const outcomes = await Promise.allSettled(works);
    expect(outcomes.map((each) => each.status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(at.raw.prepare('select a from t').pluck().all()).toEqual([1, 3]);
    at.raw.close();
  });

  test('takes nothing for written when the transaction fails as a whole', async () => {
    const at = connect(file);
    at.raw.exec('create table t (a integer)');
    const writer = groupCommit(at);
    const first = writer.write(() => at.raw.prepare('insert into t values (1)').run());
    // As SQLite does by itself when the disk is full: https://www.sqlite.org/lang_transaction.html, section 2.4
    const second = writer.write(() => at.raw.exec('rollback'));
    const third = writer.write(() => at.raw.prepare('insert into t values (3)').run());
    const outcomes = await Promise.allSettled([first, second, third]);
    expect(outcomes.map((each) => each.status)).toEqual(['rejected', 'rejected', 'rejected']);
    expect(at.raw.prepare('select count(*) from t').pluck().get()).toBe(0);
    await writer.write(() => at.raw.prepare('insert into t values (2)').run());
    expect(at.raw.prepare('select a from t').pluck().all()).toEqual([2]);
    at.raw.close();
  });
});

describe('migrations', () => {
  test('come to the tables written down beside this test', async () => {
    const at = connect(file);
    await migrate(at);
    const sql =
      "select sql from sqlite_master where sql is not null and name not like 'sqlite_%' and name not like 'kysely_%' order by name";
    const tables = at.raw.prepare<[], { sql: string }>(sql).all();
    at.raw.close();
    const dump = tables.map((each) => `${each.sql.replaceAll(', "', ',\n  "')};\n`).join('\n');
    await expect(dump).toMatchFileSnapshot('schema.sql');
  });

  test('are named by number, without gaps', () => {
    expect(Object.keys(MIGRATIONS).map((name) => Number(name.slice(0, 4)))).toEqual(
      Object.keys(MIGRATIONS).map((_, i) => i + 1),
    );
  });

  test('run once each, new ones on what is there', async () => {
    const ran: string[] = [];
    const next = {
      ...MIGRATIONS,
      '0002-more': {
        up: async () => {
          ran.push('0002');
        },
      },
    };
    const { store } = await openSqlite(file);
    const threadId = await receive(store, aMessage('1'));
    await store.close();
    const at = connect(file);
    await migrate(at, next);
    await migrate(at, next);
    expect(ran).toEqual(['0002']);
    expect(at.raw.prepare('select id from threads').pluck().all()).toEqual([threadId]);
    at.raw.close();
  });

  test('that fail leave the file as it was', async () => {
    const failing = {
      ...MIGRATIONS,
      '0002-fails': {
        up: async () => {
          throw new Error('no');
        },
      },
    };
    const at = connect(file);
    await expect(migrate(at, failing)).rejects.toThrow('no');
    expect(at.raw.prepare('select count(*) from sqlite_master').pluck().get()).toBe(0);
    await migrate(at);
    at.raw.close();
  });
});

describe('a file that cannot be used', () => {
  test('is damaged when it is no database', async () => {
    writeFileSync(file, 'Dear Nessa, '.repeat(1_000));
    expect(await trouble(openSqlite(file))).toBe('damaged true');
  });

  test('is damaged when pages contradict each other', async () => {
    const { store } = await openSqlite(file);
    await fill(store);
    await store.close();
    const bytes = readFileSync(file);
    bytes.fill(0xa5, 4096 * 2);
    writeFileSync(file, bytes);
    const opened = await openSqlite(file).catch((error: unknown) => error);
    expect(opened).toBeInstanceOf(DatabaseError);
    expect((opened as DatabaseError).trouble).toBe('damaged');
    expect((opened as DatabaseError).message).toContain('backup');
  });

  test('is newer when it holds a migration this program does not know, and is left as it was', async () => {
    const at = connect(file);
    await migrate(at, { ...MIGRATIONS, '9999-from-the-future': { up: async () => {} } });
    at.raw.close();
    const before = readFileSync(file);
    const error = await openSqlite(file).catch((each: unknown) => each);
    expect(error).toMatchObject({ trouble: 'newer' });
    expect(String(error)).toContain('9999-from-the-future');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('is not ours when another program has made it', async () => {
    const other = new Database(file);
    other.exec('create table recipes (name text)');
    other.close();
    expect(await trouble(openSqlite(file))).toBe('not-ours true');
  });

  test('is unreachable when it is a folder or lies under a file', async () => {
    mkdirSync(file);
    expect(await trouble(openSqlite(file))).toBe('unreachable true');
    writeFileSync(join(folder.path, 'plain'), '');
    expect(await trouble(openSqlite(join(folder.path, 'plain', 'pitchhand.db')))).toBe('unreachable true');
  });

  test('tells of damage that shows while it is in use', async () => {
    const { store } = await openSqlite(file);
    await fill(store);
    await store.close();
    const again = await openSqlite(file);
    const bytes = readFileSync(file);
    bytes.fill(0xa5, 4096 * 2);
    writeFileSync(file, bytes);
    expect(await trouble(again.store.notes(''))).toBe('damaged true');
    await again.store.close();
  });
});

describe('a backup', () => {
  const copy = (): string => join(folder.path, 'copy.db');

  test('is whole and of one moment while writing goes on', async () => {
    const { store } = await openSqlite(file);
    // Large enough for the copy to take many steps.
    for (let i = 0; i < 40; i++) {
      await Promise.all(
        Array.from({ length: 50 }, (_, j) =>
          receive(store, aMessage(`${i}.${j}`, { address: `${j}`, text: 'x'.repeat(300) })),
        ),
      );
    }
    let done = false;
    const backup = store.backup(copy()).finally(() => {
      done = true;
    });
    let during = 0;
    while (!done) {
      await receive(store, aMessage(`during ${during}`));
      during += 1;
    }
    await backup;
    expect(during).toBeGreaterThan(2);
    await store.close();

    const raw = new Database(copy());
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    raw.close();
    const copied = await openSqlite(copy());
    const lines = await copied.store.lines('thread of telegram chat-1');
    expect(lines.length).toBeLessThan(during);
    expect(await copied.store.lines('thread of telegram 7')).toHaveLength(40);
    await copied.store.close();
  });

  test('has what was asked for in the instant before', async () => {
    const { store } = await openSqlite(file);
    const received = receive(store, aMessage('1'));
    await store.backup(copy());
    await received;
    await store.close();
    const copied = await openSqlite(copy());
    expect(await copied.store.nextMessages(1, IDLE)).toHaveLength(1);
    await copied.store.close();
  });

  test('takes the place of an older one and leaves nothing beside it', async () => {
    const { store } = await openSqlite(file);
    await store.backup(copy());
    await store.putNote('n', 'v');
    await store.backup(copy());
    await store.close();
    expect(readdirSync(folder.path).filter((name) => name.includes('part'))).toEqual([]);
    const copied = await openSqlite(copy());
    expect(await copied.store.note('n')).toBe('v');
    await copied.store.close();
  });

  test('refuses the database itself and a folder that is not there', async () => {
    const { store } = await openSqlite(file);
    await store.putNote('n', 'v');
    expect(await trouble(store.backup(file))).toBe('unreachable true');
    expect(await trouble(store.backup(join(folder.path, '.', 'pitchhand.db')))).toBe('unreachable true');
    expect(await trouble(store.backup(join(folder.path, 'nowhere', 'copy.db')))).toBe('unreachable true');
    mkdirSync(copy());
    writeFileSync(join(copy(), 'kept'), '');
    expect(await trouble(store.backup(copy()))).toBe('unreachable true');
    expect(existsSync(join(copy(), 'kept'))).toBe(true);
    expect(await store.note('n')).toBe('v');
    await store.close();
  });
});
