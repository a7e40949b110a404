import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashOf, newToken } from '../../adapters/files/tokens.ts';
import { createCounters } from '../../adapters/http/counters.ts';
import { createServer } from '../../adapters/http/server.ts';
import { createUploads, type Uploads } from '../../adapters/http/uploads.ts';
import { createWakes } from '../../adapters/http/wakes.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { createWebChannel } from '../../adapters/web/channel.ts';
import type { WebWorld } from '../../adapters/web/world.ts';
import type { Growth } from '../../adapters/yard/growth-world.ts';
import type { ActionEnd, Role, YardWorld } from '../../adapters/yard/world.ts';
import { createYard } from '../../adapters/yard/yard.ts';
import {
  type ActionResult,
  type Booking,
  type Brief,
  type Channel,
  type Event,
  giveBack,
  type Message,
  newThread,
  putRight,
  type Reply,
  type Store,
  staffNotes,
  staffSays,
  type Thread,
  takeThread,
} from '../../src/index.ts';
import { BARE, NOBODY } from './a-brief.ts';
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

export function aBrief(change: Partial<Brief> = {}): Brief {
  return {
    ...NOBODY,
    ...BARE,
    threadId: '',
    reason: 'asked',
    question: 'can somebody ring me please',
    atMs: NOW_MS,
    ...change,
  };
}

/** A yard in which nothing waits to be taught. */
export const NO_GROWTH: Growth = {
  groups: async () => [],
  group: async () => null,
  knowledge: () => {
    throw new Error('this yard has no graph');
  },
  begin: () => ({ kind: 'refused', problems: [] }),
  trial: () => null,
  decisionTried: () => null,
  publish: async () => ({ kind: 'refused', problems: [] }),
  changes: async () => [],
  undo: async () => ({ kind: 'refused', problems: [] }),
  figures: async () => [],
  effects: async () => [],
  heat: async () => new Map(),
};

export type PagesWorld = {
  readonly store: Store;
  readonly origin: string;
  readonly received: readonly Message[];
  readonly channel: Channel;
  readonly uploads: Uploads;
  /** A link token for a booking, which is put into the store. */
  readonly link: (booking?: Booking, token?: string) => Promise<string>;
  /** Something said to a thread that no turn brought about, delivered. */
  readonly tell: (threadId: string, reply: Reply) => Promise<void>;
  /** A one-time sign-in link's token. */
  readonly invite: (name: string, role?: Role) => Promise<string>;
  /** A thread that was passed to people, as a turn would have left it. */
  readonly passed: (change: Partial<Thread>, brief?: Partial<Brief>) => Promise<Thread>;
  readonly changed: () => void;
  readonly stop: () => Promise<void>;
  /** The server goes away; the store stays. */
  readonly halt: () => Promise<void>;
  readonly start: () => Promise<void>;
};

/** A server with the chat page on it, the memory store and a bot that says what `answer` says. */
export async function chatWorld(
  options: {
    readonly answer?: (message: Message) => readonly Reply[];
    readonly web?: Partial<WebWorld>;
    readonly yard?: Partial<YardWorld>;
    readonly port?: number;
  } = {},
): Promise<PagesWorld> {
  const store = memoryStore();
  const folder = await mkdtemp(join(tmpdir(), 'pitchhand-pages-'));
  const uploads = createUploads(folder);
  const received: Message[] = [];
  const answer = options.answer ?? (() => [aReply()]);
  let handled = Promise.resolve();
  const now = () => NOW_MS + performance.now();

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
    clock: { nowMs: now },
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
    fleet: Object.values(VANS),
    siteName: (site) => SITES[site] ?? null,
    pictureSvg: () => null,
    uploads,
    wakes,
    script: pageScript('adapters/web/page/chat.ts'),
    secure: false,
    patienceMs: 300,
    ...options.web,
  });
  const act = async (id: string, change: (thread: Thread) => ActionResult): Promise<ActionEnd> => {
    const thread = await store.thread(id);
    if (thread === null) return { kind: 'no-such-thread' };
    const result = change(thread);
    if (result.kind === 'taken-by') return result;
    await store.saveTurn({
      seq: null,
      thread: result.thread,
      replies: result.replies,
      events: result.events,
      atMs: now(),
    });
    for (const reply of result.replies) await web.channel.deliver(reply, thread);
    return { kind: 'done' };
  };
  const yardWorld = (web: WebWorld): YardWorld => ({
    firm: { name: 'Brackenfold Touring Hire', yard: 'Low Kiln Yard', timeZone: 'Europe/London' },
    store,
    clock: web.clock,
    tokens: { newToken, hashOf },
    vans: new Map(Object.entries(VANS)),
    sites: new Map(Object.entries(SITES)),
    people: ['Nessa', 'Gethin', 'Dilys'],
    actions: {
      take: (id, by) => act(id, (thread) => takeThread(thread, by, now())),
      giveBack: (id, by) => act(id, (thread) => giveBack(thread, by, now())),
      say: (id, by, text, attachments) => act(id, (thread) => staffSays(thread, by, text, attachments, now())),
      putRight: async (id, by, at, text) => {
        const reply = (await store.lines(id)).find((line) => line.id === at)?.reply;
        return reply == null
          ? { kind: 'no-such-thread' }
          : act(id, (thread) => putRight(thread, by, { id: at, reply }, text, []));
      },
      note: (id, by, text) => act(id, (thread) => staffNotes(thread, by, text)),
      pass: (id, _by, to) => act(id, (thread) => takeThread({ ...thread, keeper: 'waiting' }, to, now())),
    },
    aimMinutes: () => 30,
    growth: NO_GROWTH,
    workshop: async () => [{ van: 'Godwit', what: 'Rear nearside window stay is weak', since: '2 July' }],
    priors: { report: async () => [], accept: async () => null },
    drawings: () => [],
    pictureSvg: web.pictureSvg,
    uploads: web.uploads,
    wakes: web.wakes,
    script: pageScript('adapters/yard/page/yard.ts'),
    pictureScript: '',
    secure: false,
    url: 'http://yard.test',
    ...options.yard,
  });
  const build = (port: number) => {
    const shared = world();
    const web = createWebChannel(shared);
    const yard = createYard(yardWorld(shared));
    const server = createServer({
      port,
      host: '127.0.0.1',
      routes: [
        { path: '/chat', app: web.routes },
        { path: '/yard', app: yard.routes },
      ],
      ready: async () => ({ ok: true }),
      counters: createCounters(),
      wakes,
      graceMs: 500,
      log: (what, about) => console.error(what, about),
    });
    return { web, yard, server };
  };
  let { web, yard, server } = build(options.port ?? 0);
  const { port } = await server.start();

  return {
    store,
    origin: `http://127.0.0.1:${port}`,
    received,
    channel: { ...web.channel, deliver: (reply, to) => web.channel.deliver(reply, to) },
    uploads,
    link: async (booking = aBooking(), token = newToken().token) => {
      await store.putBookings([booking]);
      await store.putToken({
        hash: hashOf(token),
        use: 'chat',
        subject: booking.ref,
        data: {},
        expiresMs: NOW_MS + 9e9,
      });
      return token;
    },
    tell: async (threadId, reply) => {
      await store.post(threadId, reply, NOW_MS);
      const thread = await store.thread(threadId);
      if (thread !== null) await web.channel.deliver(reply, thread);
    },
    invite: async (name, role = 'staff') => {
      const { token, hash } = newToken();
      await store.putToken({ hash, use: 'sign-in', subject: name, data: { role }, expiresMs: NOW_MS + 9e7 });
      return token;
    },
    passed: async (change, brief = {}) => {
      const fresh = newThread({ id: randomUUID(), channel: 'web', address: randomUUID() }, NOW_MS);
      const thread: Thread = { ...fresh, keeper: 'waiting', reason: 'asked', ...change };
      const question = brief.question ?? 'can somebody ring me please';
      const asked: Message = {
        channel: thread.channel,
        address: thread.address,
        key: randomUUID(),
        atMs: thread.sinceMs,
        text: question,
        choice: null,
        attachments: [],
        edit: false,
        from: null,
        startToken: null,
      };
      await store.receive(asked, () => thread);
      const [next] = await store.nextMessages(1, new Set());
      const event: Event = {
        kind: 'passed',
        reason: thread.reason ?? 'asked',
        urgency: thread.reason === 'safety' ? 'danger' : 'usual',
        brief: aBrief({
          threadId: thread.id,
          booking: thread.booking,
          reason: thread.reason ?? 'asked',
          question,
          ...brief,
        }),
      };
      const stored = (await store.thread(thread.id)) ?? thread;
      const reply = aReply({
        kind: 'pass',
        blocks: [{ kind: 'line', text: 'I am asking the yard. Somebody answers within half an hour.' }],
      });
      await store.saveTurn({
        seq: next?.seq ?? null,
        thread: stored,
        replies: [reply],
        events: [event],
        atMs: thread.sinceMs,
      });
      yard.changed();
      return (await store.thread(thread.id)) ?? thread;
    },
    changed: () => yard.changed(),
    stop: async () => {
      await server.stop();
      await handled;
      await rm(folder, { recursive: true, force: true });
    },
    halt: () => server.stop(),
    /** On the same port again, as after a restart. */
    start: async () => {
      wakes = createWakes();
      ({ web, yard, server } = build(port));
      await server.start();
    },
  };
}
