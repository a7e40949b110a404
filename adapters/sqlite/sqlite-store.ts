import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Jobs, Store } from '../../src/index.ts';
import { backUp } from './backup.ts';
import { bookingsIn } from './bookings.ts';
import { type Connection, connect } from './connection.ts';
import { DatabaseError } from './database-error.ts';
import { groupCommit } from './group-commit.ts';
import { historyIn } from './history.ts';
import { inboxIn } from './inbox.ts';
import { jobsIn } from './jobs.ts';
import { migrate } from './migrate.ts';
import { notesIn } from './notes.ts';
import { outboxIn } from './outbox.ts';
import { threadsIn } from './threads.ts';
import { tokensIn } from './tokens.ts';
import { turnsIn } from './turns.ts';

/**
 * Opens the database at `file`, made and brought up to date when needed, with its folder.
 * Several processes may have it open: a command works beside a running server.
 *
 * @returns The store and the jobs of one connection; `store.close()` ends both.
 * @throws DatabaseError when the file is damaged, newer than this program, another program's, or cannot be reached.
 */
export async function openSqlite(file: string): Promise<{ readonly store: Store; readonly jobs: Jobs }> {
  const at = connect(makeFolder(file));
  try {
    await migrate(at);
    return storeOn(at);
  } catch (error) {
    at.raw.close();
    throw error;
  }
}

function storeOn(at: Connection): { readonly store: Store; readonly jobs: Jobs } {
  const writer = groupCommit(at);
  const rooms = { threads: threadsIn(at), inbox: inboxIn(at), outbox: outboxIn(at), history: historyIn(at) };
  const { threads, inbox, outbox, history } = rooms;
  const store: Store = {
    ...turnsIn(writer, rooms),
    ...bookingsIn(at, writer),
    ...tokensIn(at, writer),
    ...notesIn(at, writer),
    nextMessages: async (most, busy) => inbox.next(most, busy),
    thread: async (id) => threads.byId(id),
    threadAt: async (address) => threads.at(address),
    threads: async (filter) => threads.all(filter),
    lines: async (threadId, after = 0) => history.lines(threadId, after),
    events: async (filter) => history.events(filter),
    nextToSend: async (channel, nowMs, most, busy) => outbox.next(channel, nowMs, most, busy),
    // Told apart after a kill is what counts; after a power cut the reply is sent again at worst.
    markSending: (ids) => writer.writeSoon(() => ids.forEach(outbox.markSending)),
    settle: (id, receipt, nowMs) => writer.write(() => outbox.settle(id, receipt, nowMs)),
    backup: async (to) => {
      writer.flush();
      await backUp(at, to);
    },
    close: async () => {
      writer.flush();
      at.raw.close();
    },
  };
  return { store, jobs: jobsIn(at, writer) };
}

/** Only its owner may look into a folder that the program makes: it holds people's names and numbers. */
function makeFolder(file: string): string {
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new DatabaseError('unreachable', file, 'its folder cannot be made', { cause });
  }
  return file;
}
