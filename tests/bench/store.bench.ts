import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { openSqlite } from '../../adapters/sqlite/sqlite-store.ts';
import type { Store } from '../../src/index.ts';
import { temporaryFolder } from '../adapters/sqlite/temporary.ts';
import { aGap, aMessage, aReply, IDLE, NOW, receive } from '../contracts/store-fixtures.ts';

/*
 * design.md section 10: a thousand messages a second or more, durable, on one process. Each round takes a thousand
 * messages of a hundred threads all the way: received, taken in order, saved with a reply and an event, marked and settled.
 */
const MESSAGES = 1_000;
const THREADS = 100;
/** As many as the shell saves together. */
const TOGETHER = 64;

const folder = temporaryFolder();
const { store: sqlite } = await openSqlite(join(folder.path, 'pitchhand.db'));
const { store: backlog } = await openSqlite(join(folder.path, 'backlog.db'));
const memory = memoryStore();
let round = 0;

afterAll(async () => {
  await Promise.all([sqlite.close(), backlog.close()]);
  folder.remove();
});

async function receiveAll(store: Store): Promise<void> {
  round += 1;
  const messages = Array.from({ length: MESSAGES }, (_, i) => aMessage(`${round}.${i}`, { address: `${i % THREADS}` }));
  await Promise.all(messages.map((message) => receive(store, message)));
}

async function answerAll(store: Store): Promise<void> {
  for (;;) {
    const waiting = await store.nextMessages(TOGETHER, IDLE);
    if (waiting.length === 0) return;
    const results = await Promise.all(
      waiting.map(async ({ seq, threadId, message }) => {
        const thread = await store.thread(threadId);
        if (thread === null) throw new Error(`there is no thread ${threadId}`);
        const replies = [aReply(`An answer as long as they usually are, to ${message.text}. `.repeat(4))];
        return { seq, thread, replies, events: [aGap(message.text)], atMs: NOW };
      }),
    );
    await store.saveTurns(results);
  }
}

async function sendAll(store: Store): Promise<void> {
  for (;;) {
    const rows = await store.nextToSend('telegram', NOW, TOGETHER, IDLE);
    if (rows.length === 0) return;
    await store.markSending(rows.map((row) => row.id));
    await Promise.all(rows.map((row) => store.settle(row.id, { kind: 'delivered', id: `${row.id}` }, NOW)));
  }
}

async function allTheWay(store: Store): Promise<void> {
  await receiveAll(store);
  await answerAll(store);
  await sendAll(store);
}

function median(numbers: readonly number[]): number {
  return [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? Number.NaN;
}

async function timesMs(count: number, work: () => void | Promise<void>): Promise<number[]> {
  const times: number[] = [];
  for (let i = 0; i < count; i++) {
    const began = performance.now();
    await work();
    times.push(performance.now() - began);
  }
  return times;
}

/** How long the disk takes to confirm a page. */
async function fsyncMs(): Promise<number> {
  const file = openSync(join(folder.path, 'fsync'), 'w');
  const page = Buffer.alloc(4_096);
  const times = await timesMs(100, () => {
    writeSync(file, page);
    fsyncSync(file);
  });
  closeSync(file);
  return median(times);
}

const PACE_MS = 10;

/**
 * A hundred messages a second for three seconds, with the loops of the program beside each other: from the call of
 * `receive` to the moment the reply is handed to the channel. The channel itself takes 20 ms.
 */
async function pacedMs(): Promise<number[]> {
  const came = new Map<string, number>();
  const took: number[] = [];
  let ended = false;
  const again = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
  const turns = async (): Promise<void> => {
    while (!ended) {
      await answerAll(sqlite);
      await again();
    }
  };
  const deliveries = async (): Promise<void> => {
    const underWay = new Set<string>();
    while (!ended) {
      const rows = await sqlite.nextToSend('telegram', NOW, TOGETHER, underWay);
      await sqlite.markSending(rows.map((row) => row.id));
      for (const row of rows) {
        underWay.add(row.address);
        took.push(performance.now() - (came.get(row.address) ?? Number.NaN));
        setTimeout(async () => {
          await sqlite.settle(row.id, { kind: 'delivered', id: `${row.id}` }, NOW);
          underWay.delete(row.address);
        }, 20);
      }
      await again();
    }
  };
  const loops = [turns(), deliveries()];
  for (let n = 0; n < 300; n++) {
    const address = `paced ${n}`;
    came.set(address, performance.now());
    void receive(sqlite, aMessage(address, { address }));
    await new Promise((resolve) => setTimeout(resolve, PACE_MS));
  }
  while (took.length < 300) await again();
  await new Promise((resolve) => setTimeout(resolve, 100));
  ended = true;
  await Promise.all(loops);
  return took.sort((a, b) => a - b);
}

const answering = median(
  await timesMs(5, async () => {
    await receiveAll(sqlite);
    await answerAll(sqlite);
  }),
);
await sendAll(sqlite);
const whole = median(await timesMs(5, () => allTheWay(sqlite)));
const paced = await pacedMs();
const perSecond = (ms: number): string => Math.round((MESSAGES / ms) * 1_000).toLocaleString('en-GB');
console.log(
  [
    `${cpus().length} cores, fsync of a page ${(await fsyncMs()).toFixed(2)} ms`,
    `durable: ${perSecond(answering)} messages/s received and answered, ${perSecond(whole)} messages/s also sent and settled`,
    `100 messages/s, received to handed over: p50 ${paced[150]?.toFixed(1)} ms, p99 ${paced[297]?.toFixed(1)} ms`,
  ].join('\n'),
);

await receive(backlog, aMessage('first', { address: 'calm' }));
const flood = Array.from({ length: 1_000 }, (_, i) => aMessage(`${i}`, { address: 'flood' }));
await Promise.all(flood.map((message) => receive(backlog, message)));

describe('1,000 messages received, answered and settled', () => {
  bench('sqlite, durable', () => allTheWay(sqlite), { iterations: 5, time: 0, warmupIterations: 1, warmupTime: 0 });
  bench('memory', () => allTheWay(memory), { iterations: 5, time: 0, warmupIterations: 1, warmupTime: 0 });
});

describe('a look at the queue', () => {
  bench('while one thread has 1,000 messages waiting', async () => {
    await backlog.nextMessages(TOGETHER, IDLE);
  });
});
