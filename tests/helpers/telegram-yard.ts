import { pino } from 'pino';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { createShell } from '../../adapters/shell.ts';
import type { StaffActions } from '../../adapters/telegram/staff-desk.ts';
import { createTelegram, type TelegramOptions } from '../../adapters/telegram/telegram.ts';
import {
  type Attachment,
  type Booking,
  type Brief,
  type Event,
  newThread,
  type Served,
  type Store,
  type Thread,
} from '../../src/index.ts';
import { adasBrief } from './a-brief.ts';
import type { GroupOnTelegram, PersonOnTelegram } from './telegram-people.ts';
import { optionsFor } from './telegram-rig.ts';
import { TelegramStandIn } from './telegram-stand-in.ts';

/** A clock that only waiting moves on: nothing takes real time, and every wait is on record. */
export function aClock(nowMs = 1_000_000) {
  const waits: number[] = [];
  return {
    waits,
    clock: { nowMs: () => nowMs },
    wait: async (ms: number, signal?: AbortSignal) => {
      waits.push(ms);
      await briefly(ms, signal);
      if (signal?.aborted !== true) nowMs += ms;
    },
  };
}

/** Waits a moment instead of the whole time. */
export function briefly(ms: number, signal?: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal?.aborted === true) return resolve();
    const timer = setTimeout(resolve, Math.min(ms, 3));
    signal?.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });
}

export const aBooking = (more: Partial<Booking> = {}): Booking => ({
  ref: 'BR-2702',
  hirer: 'The Tolland family',
  firstName: 'Ada',
  people: { adults: 2, children: [], dogs: 0 },
  van: 'dunlin',
  site: null,
  pitch: '14',
  amps: 10,
  from: '2027-07-12',
  to: '2027-07-19',
  phone: '01632 960111',
  note: '',
  ...more,
});

type YardOptions = {
  readonly forum: boolean;
  readonly store?: Store;
  readonly standIn?: TelegramStandIn;
  readonly group?: GroupOnTelegram;
  readonly actions?: (real: StaffActions) => StaffActions;
  readonly telegram?: Partial<TelegramOptions>;
  /** What hirers are answered with; left out: no turn may be taken. */
  readonly served?: () => Served;
};

/**
 * A yard at work on Telegram: a stand-in, the real store, shell and channel, a staff group. Hirers' turns are written
 * straight into the store, so that these tests hold whatever the graph says.
 */
export async function aYard(options: YardOptions) {
  const standIn = options.standIn ?? (await new TelegramStandIn().start());
  const group = options.group ?? standIn.group({ forum: options.forum });
  const store = options.store ?? memoryStore();
  const clock = { nowMs: () => Date.now() };
  const troubles: (string | null)[] = [];
  const links = new Map<string, string>();
  const late: { shell: ReturnType<typeof createShell> | null } = { shell: null };
  const act =
    <A extends unknown[], R>(run: (shell: ReturnType<typeof createShell>, ...args: A) => R) =>
    (...args: A): R => {
      if (late.shell === null) throw new Error('not started');
      return run(late.shell, ...args);
    };
  const real: StaffActions = {
    take: act((shell, thread: string, by: string) => shell.take(thread, by)),
    giveBack: act((shell, thread: string, by: string) => shell.giveBack(thread, by)),
    say: act((shell, thread: string, by: string, text: string, attachments: readonly Attachment[]) =>
      shell.say(thread, by, text, attachments),
    ),
    putRight: act((shell, thread: string, by: string, line: number, text: string, attachments: readonly Attachment[]) =>
      shell.putRight(thread, by, line, text, attachments),
    ),
    note: act((shell, thread: string, by: string, text: string) => shell.note(thread, by, text)),
  };
  const channel = createTelegram(
    optionsFor(standIn, {
      store,
      desk: {
        chat: group.id,
        actions: options.actions?.(real) ?? real,
        spendStaffToken: async (token) => {
          const name = links.get(token) ?? null;
          links.delete(token);
          return name;
        },
        trouble: (what) => void troubles.push(what),
      },
      ...options.telegram,
    }),
  );
  const shell = createShell({
    store,
    served:
      options.served ??
      (() => {
        throw new Error('no turn is taken in these tests');
      }),
    clock,
    channels: [channel],
    log: pino({ level: 'silent' }),
    onChange: () => channel.desk?.wake(),
  });
  late.shell = shell;
  shell.start();
  await channel.start();

  async function save(threadId: string, change: Partial<Thread>, events: readonly Event[]): Promise<void> {
    const thread = (await store.thread(threadId)) as Thread;
    await store.saveTurn({ seq: null, thread: { ...thread, ...change }, replies: [], events, atMs: Date.now() });
    channel.desk?.wake();
  }

  return {
    standIn,
    group,
    store,
    channel,
    shell,
    troubles,
    links,
    /** A hirer with a chat and a thread, bound to a booking unless that is null. */
    async hirer(name: string, booking: Booking | null): Promise<{ person: PersonOnTelegram; threadId: string }> {
      const person = standIn.person(name);
      if (booking !== null) await store.putBookings([booking]);
      const threadId = `thread-${person.user.id}`;
      const address = { channel: 'telegram', address: String(person.user.id) };
      const thread = newThread(
        { id: threadId, ...address, booking: booking?.ref ?? null, van: booking?.van ?? null },
        Date.now(),
      );
      const message = {
        ...address,
        key: `first-${person.user.id}`,
        atMs: Date.now(),
        text: 'hello',
        choice: null,
        attachments: [],
        edit: false,
        from: name,
        startToken: null,
      };
      await store.receive(message, () => thread);
      const [received] = (await store.nextMessages(100, new Set())).filter((each) => each.threadId === threadId);
      const stored = (await store.thread(threadId)) as Thread;
      await store.saveTurn({ seq: received?.seq ?? null, thread: stored, replies: [], events: [], atMs: Date.now() });
      return { person, threadId };
    },
    pass: (threadId: string, brief: Partial<Brief> = {}, urgency: 'danger' | 'urgent' | 'usual' = 'usual') =>
      save(threadId, { keeper: 'waiting', reason: brief.reason ?? 'unsure', sinceMs: Date.now() }, [
        { kind: 'passed', reason: brief.reason ?? 'unsure', urgency, brief: adasBrief({ threadId, ...brief }) },
      ]),
    hirerSays: (threadId: string, text: string, attachments: readonly Attachment[] = [], edit = false) =>
      save(threadId, {}, [{ kind: 'to-staff', text, attachments, edit }]),
    notice: (threadId: string, hazard: string) => save(threadId, {}, [{ kind: 'notice', hazard, level: 'danger' }]),
    shiftEnds: (threadId: string, by: string) =>
      save(threadId, { keeper: 'waiting', keeperName: null }, [{ kind: 'shift-ended', by }]),
    keeper: async (threadId: string) => (await store.thread(threadId))?.keeper,
    /** Stops without closing the stand-in: as a restart would. */
    async halt(): Promise<void> {
      await channel.stop();
      await shell.stop();
    },
    async close(): Promise<void> {
      await channel.stop();
      await shell.stop();
      await standIn.close();
      if (standIn.complaints.length > 0)
        throw new Error(`against the published description:\n${standIn.complaints.join('\n')}`);
    },
  };
}

export type Yard = Awaited<ReturnType<typeof aYard>>;
