import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashOf, newToken } from '../../adapters/files/tokens.ts';
import { createCounters } from '../../adapters/http/counters.ts';
import { createServer } from '../../adapters/http/server.ts';
import { createUploads } from '../../adapters/http/uploads.ts';
import { createWakes } from '../../adapters/http/wakes.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { createWebChannel } from '../../adapters/web/channel.ts';
import type { WebWorld } from '../../adapters/web/world.ts';
import { type Booking, type Message, newThread, type Reply, type Store } from '../../src/index.ts';
import { pageScript } from './page-scripts.ts';

export const NOW_MS = Date.parse('2027-07-27T13:40:00Z');

export const VANS = {
  dunlin: { name: 'Dunlin', body: 'caravan', silhouette: 'dunlin' },
  wren: { name: 'Wren', body: 'caravan', silhouette: 'wren' },
  curlew: { name: 'Curlew', body: 'caravan', silhouette: 'curlew' },
  plover: { name: 'Plover', body: 'campervan', silhouette: 'plover' },
  godwit: { name: 'Godwit', body: 'caravan', silhouette: 'godwit' },
} as const;

export const SITES: Readonly<Record<string, string>> = {
  'fernbeck-meadow': 'Fernbeck Meadow',
  'gullstone-sands': 'Gullstone Sands',
  'thorngill-tarn-farm': 'Thorngill Tarn Farm',
  'hawmire-field': 'Hawmire Field',
};

export function aBooking(change: Partial<Booking> = {}): Booking {
  return {
    ref: 'BR-2702',
    hirer: 'The Okonkwo-Hale family',
    firstName: 'Ngozi',
    people: { adults: 2, children: [9, 12], dogs: 0 },
    van: 'dunlin',
    site: 'gullstone-sands',
    pitch: '14',
    amps: 10,
    from: '2027-07-24',
    to: '2027-07-31',
    phone: '07700 900412',
    note: '',
    ...change,
  };
}

export function aReply(change: Partial<Reply> = {}): Reply {
  return { kind: 'answer', from: null, topic: null, blocks: [{ kind: 'line', text: 'Yes.' }], choices: [], ...change };
}

export type PagesWorld = {
  readonly store: Store;
  readonly origin: string;
  readonly received: readonly Message[];
  /** A link token for a booking, which is put into the store. */
  readonly link: (booking?: Booking) => Promise<string>;
  /** Something said to a thread that no turn brought about, delivered. */
  readonly tell: (threadId: string, reply: Reply) => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly start: () => Promise<void>;
};

/** A server with the chat page on it, the memory store and a bot that says what `answer` says. */
export async function chatWorld(
  options: {
    readonly answer?: (message: Message) => readonly Reply[];
    readonly web?: Partial<WebWorld>;
    readonly port?: number;
  } = {},
): Promise<PagesWorld> {
  const store = memoryStore();
  const folder = await mkdtemp(join(tmpdir(), 'pitchhand-pages-'));
  const received: Message[] = [];
  const answer = options.answer ?? (() => [aReply()]);
  let handled = Promise.resolve();

  const handle = async (message: Message) => {
    const stored = await store.receive(message, () =>
      newThread({ id: randomUUID(), channel: message.channel, address: message.address }, message.atMs),
    );
    if (stored.kind === 'repeated') return;
    received.push(message);
    handled = handled.then(async () => {
      const thread = await store.thread(stored.threadId);
      const next = (await store.nextMessages(100, new Set())).find((one) => one.threadId === stored.threadId);
      if (thread === null || next === undefined) return;
      const replies = answer(next.message);
      await store.saveTurn({ seq: next.seq, thread, replies, events: [], atMs: message.atMs });
      for (const reply of replies) await web.channel.deliver(reply, message);
    });
  };

  let wakes = createWakes();
  const world = (): WebWorld => ({
    firm: { name: 'Brackenfold Touring Hire', phone: '01632 960147', timeZone: 'Europe/London' },
    receive: handle,
    store,
    clock: { nowMs: () => NOW_MS + performance.now() },
    tokens: { newToken, hashOf },
    welcome: (booking) =>
      aReply({
        kind: 'welcome',
        blocks: [
          {
            kind: 'line',
            text:
              booking === null
                ? 'Type the code on your document wallet, or your question.'
                : `Hello. This is the bot for ${VANS[booking.van as 'dunlin'].name}.`,
          },
        ],
        choices:
          booking === null ? [] : [{ id: 'topic:hotwater-how', label: 'How do we get hot water?', tone: 'quiet' }],
      }),
    vanOf: (booking) => VANS[booking.van as keyof typeof VANS] ?? null,
    siteName: (site) => SITES[site] ?? null,
    pictureSvg: () => null,
    uploads: createUploads(folder),
    wakes,
    script: pageScript('adapters/web/page/chat.ts'),
    secure: false,
    patienceMs: 300,
    ...options.web,
  });
  const build = (port: number) => {
    web = createWebChannel(world());
    return createServer({
      port,
      host: '127.0.0.1',
      routes: [{ path: '/chat', app: web.routes }],
      ready: async () => ({ ok: true }),
      counters: createCounters(),
      wakes,
      graceMs: 500,
      log: (what, about) => console.error(what, about),
    });
  };
  let web: ReturnType<typeof createWebChannel>;
  let server = build(options.port ?? 0);
  const { port } = await server.start();

  return {
    store,
    origin: `http://127.0.0.1:${port}`,
    received,
    link: async (booking = aBooking()) => {
      await store.putBookings([booking]);
      const { token, hash } = newToken();
      await store.putToken({ hash, use: 'chat', subject: booking.ref, data: {}, expiresMs: NOW_MS + 9e9 });
      return token;
    },
    tell: async (threadId, reply) => {
      await store.post(threadId, reply, NOW_MS);
      const thread = await store.thread(threadId);
      if (thread !== null) await web.channel.deliver(reply, thread);
    },
    stop: async () => {
      await server.stop();
      await handled;
      await rm(folder, { recursive: true, force: true });
    },
    /** On the same port again, as after a restart. */
    start: async () => {
      wakes = createWakes();
      server = build(port);
      await server.start();
    },
  };
}
