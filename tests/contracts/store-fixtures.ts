import {
  type Booking,
  type Event,
  type Jobs,
  type Message,
  newThread,
  type Reply,
  type Store,
  type Thread,
} from '../../src/index.ts';

/** What a suite is run on. `reopen` ends the process as it were, and begins again; absent where nothing outlives it. */
export type Kept = { readonly store: Store; readonly jobs: Jobs };
export type Keeper = {
  readonly name: string;
  readonly open: () => Promise<Kept & { readonly end: () => Promise<void>; readonly reopen?: () => Promise<Kept> }>;
};

/** 2027-07-15T11:00:00Z, a Thursday in the season. */
export const NOW = 1_815_649_200_000;
export const IDLE: ReadonlySet<string> = new Set();

export function aMessage(key: string, given: Partial<Message> = {}): Message {
  return {
    channel: 'telegram',
    address: 'chat-1',
    key,
    atMs: NOW,
    text: `text of ${key}`,
    choice: null,
    attachments: [],
    edit: false,
    from: 'Pat',
    startToken: null,
    ...given,
  };
}

export function aReply(text: string, given: Partial<Reply> = {}): Reply {
  return { kind: 'answer', from: null, topic: null, blocks: [{ kind: 'line', text }], choices: [], ...given };
}

export function aGap(text: string): Event {
  return { kind: 'gap', text, why: 'no-such-topic', van: 'wren', topics: [] };
}

export function aBooking(ref: string, given: Partial<Booking> = {}): Booking {
  return {
    ref,
    hirer: 'Pat and Sol Amberley',
    firstName: 'Pat',
    people: { adults: 2, children: [9, 12], dogs: 1 },
    van: 'wren',
    site: 'fernbeck-meadow',
    pitch: '14',
    amps: 16,
    from: '2027-07-12',
    to: '2027-07-19',
    phone: '07700 900123',
    note: 'First time in a caravan',
    ...given,
  };
}

/** The id says where the thread lives, so that failures read well. */
export function threadFor(message: Message): () => Thread {
  const id = `thread of ${message.channel} ${message.address}`;
  return () => newThread({ id, channel: message.channel, address: message.address }, message.atMs);
}

export async function receive(store: Store, message: Message): Promise<string> {
  return (await store.receive(message, threadFor(message))).threadId;
}

/** Takes the next message of a thread and answers it with the given texts. */
export async function answer(store: Store, threadId: string, ...texts: readonly string[]): Promise<void> {
  const next = (await store.nextMessages(100, IDLE)).find((each) => each.threadId === threadId);
  const thread = await store.thread(threadId);
  if (next === undefined || thread === null) throw new Error(`nothing waits in ${threadId}`);
  const replies = texts.map((text) => aReply(text));
  const saved = await store.saveTurn({ seq: next.seq, thread, replies, events: [], atMs: NOW });
  if (saved !== 'saved') throw new Error(`${threadId} has changed meanwhile`);
}

export async function threadNow(store: Store, id: string): Promise<Thread> {
  const thread = await store.thread(id);
  if (thread === null) throw new Error(`there is no thread ${id}`);
  return thread;
}
