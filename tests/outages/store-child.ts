import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { openSqlite } from '../../adapters/sqlite/sqlite-store.ts';
import { newThread, plainText, type Reply, type Store } from '../../src/index.ts';

/*
 * The process that is killed: a store under load, driven as the program drives it. Standard input has one `key address`
 * a line; standard output tells `stored key` once a message may be confirmed, and `sent address text` for each delivery.
 * Output goes out by a system call of its own, so that what was told before the kill has been told.
 */
const CHANNEL = 'telegram';
const NOBODY: ReadonlySet<string> = new Set();

const tell = (line: string): void => {
  writeSync(1, `${line}\n`);
};

async function receive(store: Store, line: string): Promise<void> {
  const [key = '', address = ''] = line.split(' ');
  const message = {
    channel: CHANNEL,
    address,
    key,
    atMs: 0,
    text: key,
    choice: null,
    attachments: [],
    edit: false,
    from: null,
    startToken: null,
  };
  await store.receive(message, () => newThread({ id: `t-${address}`, channel: CHANNEL, address }, 0));
  tell(`stored ${key}`);
}

/** Two replies to each message, so that a turn cut in half would show. */
async function turns(store: Store): Promise<boolean> {
  const waiting = await store.nextMessages(16, NOBODY);
  const results = await Promise.all(
    waiting.map(async ({ seq, threadId, message }) => {
      const thread = await store.thread(threadId);
      if (thread === null) throw new Error(`no thread ${threadId}`);
      const replies = [1, 2].map(
        (n): Reply => ({
          kind: 'answer',
          from: null,
          topic: null,
          blocks: [{ kind: 'line', text: `${message.key}/${n}` }],
          choices: [],
        }),
      );
      return {
        seq,
        thread,
        replies,
        events: [{ kind: 'answered' as const, topic: message.key, probability: 1 }],
        atMs: 0,
      };
    }),
  );
  await store.saveTurns(results);
  return waiting.length > 0;
}

/** At least once: what may have been on its way when the last process ended is sent again. */
async function deliveries(store: Store): Promise<boolean> {
  const rows = await store.nextToSend(CHANNEL, 0, 4, NOBODY);
  await store.markSending(rows.map((row) => row.id));
  for (const row of rows) tell(`sent ${row.address} ${plainText(row.reply)}`);
  // The channel's answer takes its time, as over a network.
  await new Promise((resolve) => setTimeout(resolve, 3));
  await Promise.all(rows.map((row) => store.settle(row.id, { kind: 'delivered', id: `${row.id}` }, 0)));
  return rows.length > 0;
}

async function main(): Promise<void> {
  const { store } = await openSqlite(process.argv[2] ?? '');
  let ended = false;
  let receiving = 0;
  const input = createInterface({ input: process.stdin });
  input.on('line', (line) => {
    receiving += 1;
    void receive(store, line).finally(() => {
      receiving -= 1;
    });
  });
  input.on('close', () => {
    ended = true;
  });
  tell('ready');
  for (;;) {
    const did = [await turns(store), await deliveries(store)].includes(true);
    if (ended && receiving === 0 && !did) break;
    if (!did) await new Promise((resolve) => setTimeout(resolve, 1));
  }
  await store.close();
}

void main();
