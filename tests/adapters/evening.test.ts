import { pino } from 'pino';
import { beforeAll, describe, expect, it } from 'vitest';
import { createDutyRounds } from '../../adapters/duty-rounds.ts';
import { hashOf } from '../../adapters/files/tokens.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { createShell } from '../../adapters/shell.ts';
import { seeded, shuffled } from '../../src/basics/seeded.ts';
import { type Booking, type Channel, instantOn, type Line, type Served, type Store } from '../../src/index.ts';
import { realServed } from '../helpers/real-graph.ts';

/*
 * Two hours of a Friday in July, as the firm's own rota has it: Nessa and Gethin until 17:30, Dilys from then on call.
 * Forty hirers write; some want a person, one is in danger. The shell and the duty rounds are the real ones, the clock
 * is the test's, and everything that is drawn by lot is drawn from one seed.
 */

const SEED = 20270716;
const DAY = '2027-07-16';
const STEP_MS = 5_000;
const MINUTE = 60_000;
const HIRERS = 40;
const VANS = ['dunlin', 'wren', 'curlew', 'plover', 'godwit'] as const;
const LAST_PART = 25 * MINUTE;

const at = (clock: string): number => instantOn(DAY, clock, 'Europe/London');

type Reminder = { readonly threadId: string; readonly text: string; readonly urgent: boolean; readonly atMs: number };

type Evening = {
  readonly store: Store;
  readonly reminders: readonly Reminder[];
  /** Thread ids by hirer's number. */
  readonly threadOf: (hirer: number) => Promise<string>;
  readonly delivered: readonly string[];
};

/** Hirers with a part of their own in the evening; the rest ask about their vans or for a person, by lot. */
const IN_DANGER = 0;
const WRITES_AGAIN = 1;
const LEFT_AT_SHIFT_END = 2;
const ASKS_AS_THE_SHIFT_ENDS = 3;

async function playEvening(served: Served): Promise<Evening> {
  const random = seeded(SEED);
  const store = memoryStore();
  const log = pino({ level: 'silent' });
  const delivered: string[] = [];
  const reminders: Reminder[] = [];
  let nowMs = at('16:30');
  const clock = { nowMs: () => nowMs };
  const channel: Channel = {
    name: 'test',
    abilities: { buttons: true, pictures: true, edits: true, media: true, longest: 4096 },
    start: async () => {},
    stop: async () => {},
    deliver: async (reply, { address }) => {
      delivered.push(`${address} ${reply.kind}`);
      return { kind: 'delivered', id: `${delivered.length}` };
    },
  };
  const shell = createShell({ store, served: () => served, clock, channels: [channel], log });
  const makeRounds = () =>
    createDutyRounds({
      store,
      firm: () => served.knowledge.firm,
      clock,
      log,
      remind: async (threadId, text, urgent) => void reminders.push({ threadId, text, urgent, atMs: nowMs }),
      onChange: () => {},
    });
  let rounds = makeRounds();
  await store.putBookings(Array.from({ length: HIRERS }, (_, i) => bookingOf(i)));
  for (let i = 0; i < HIRERS; i++)
    await store.putToken({
      hash: hashOf(tokenOf(i)),
      use: 'chat',
      subject: bookingOf(i).ref,
      data: {},
      expiresMs: at('23:00'),
    });
  shell.start();

  let key = 0;
  const receive = (hirer: number, text: string, startToken: string | null): Promise<void> =>
    shell.receive({
      channel: 'test',
      address: `h${hirer}`,
      key: `k${key++}`,
      atMs: nowMs,
      text,
      choice: null,
      attachments: [],
      edit: false,
      from: null,
      startToken,
    });
  /** Opens the link of the hire first, if this is the hirer's first word. */
  const says = (hirer: number, text: string) => async (): Promise<void> => {
    if ((await store.threadAt({ channel: 'test', address: `h${hirer}` })) === null)
      await receive(hirer, '', tokenOf(hirer));
    await receive(hirer, text, null);
  };
  const threadOf = async (hirer: number): Promise<string> =>
    (await store.threadAt({ channel: 'test', address: `h${hirer}` }))?.id ?? '';

  // What happens by plan, by instant.
  const plan: { readonly atMs: number; readonly act: () => Promise<unknown> }[] = [
    { atMs: at('17:05'), act: says(IN_DANGER, 'the carbon monoxide alarm is going off') },
    { atMs: at('17:13') + 30_000, act: async () => shell.take(await threadOf(IN_DANGER), 'Gethin') },
    {
      atMs: at('17:15'),
      act: async () => shell.say(await threadOf(IN_DANGER), 'Gethin', 'I am with you in ten minutes. Stay outside.'),
    },
    { atMs: at('16:32'), act: says(WRITES_AGAIN, 'can I speak to a person please') },
    { atMs: at('16:33'), act: async () => shell.take(await threadOf(WRITES_AGAIN), 'Nessa') },
    { atMs: at('16:40'), act: says(WRITES_AGAIN, 'are you still there?') },
    {
      atMs: at('17:22'),
      act: async () => shell.say(await threadOf(WRITES_AGAIN), 'Nessa', 'Yes: the deposit comes back on Monday.'),
    },
    { atMs: at('17:00'), act: says(LEFT_AT_SHIFT_END, 'speak to a human please') },
    { atMs: at('17:15'), act: async () => shell.take(await threadOf(LEFT_AT_SHIFT_END), 'Nessa') },
    { atMs: at('17:25'), act: says(LEFT_AT_SHIFT_END, 'we would like to stay two nights longer') },
    { atMs: at('17:27'), act: says(ASKS_AS_THE_SHIFT_ENDS, 'please get me a human') },
  ];
  const questions = shuffled(served.knowledge.questions.questions, random);
  for (let hirer = ASKS_AS_THE_SHIFT_ENDS + 1; hirer < HIRERS; hirer++) {
    const texts =
      hirer % 4 === 0
        ? ['can I speak to a person please']
        : [questions[hirer]?.text ?? '', questions[hirer + HIRERS]?.text ?? ''];
    for (const text of texts)
      plan.push({
        atMs: at('16:30') + Math.floor(random() * (at('18:30') - LAST_PART - at('16:30'))),
        act: says(hirer, text),
      });
  }

  // Staff on duty: each has one conversation at a time, takes the longest waiting after a while, answers, gives back.
  const reserved = async () => new Set(await Promise.all([IN_DANGER, WRITES_AGAIN, LEFT_AT_SHIFT_END].map(threadOf)));
  const busyUntil = new Map<string, number>();
  const staffStep = async (name: string): Promise<void> => {
    if ((busyUntil.get(name) ?? 0) > nowMs) return;
    const apart = nowMs < at('17:30') ? await reserved() : new Set<string>();
    const held = (await store.threads({ keeper: ['staff'] })).find(
      (thread) => thread.keeperName === name && !apart.has(thread.id),
    );
    if (held !== undefined) {
      await shell.say(held.id, name, 'This is how it is done: as on the card in the locker.');
      await shell.giveBack(held.id, name);
      return;
    }
    const waiting = (await store.threads({ keeper: ['waiting'] })).find((thread) => !apart.has(thread.id));
    if (waiting === undefined) return;
    busyUntil.set(name, nowMs + MINUTE + Math.floor(random() * MINUTE));
    await shell.take(waiting.id, name);
  };

  plan.sort((a, b) => a.atMs - b.atMs);
  for (; nowMs <= at('18:30'); nowMs += STEP_MS) {
    while (plan[0] !== undefined && plan[0].atMs <= nowMs) await plan.shift()?.act();
    await shell.idle();
    for (const name of nowMs < at('17:30') ? ['Nessa', 'Gethin'] : ['Dilys']) await staffStep(name);
    // A restart every quarter of an hour, and now and then two rounds in the same instant.
    if ((nowMs - at('16:30')) % (15 * MINUTE) === 0) rounds = makeRounds();
    await rounds.round();
    if (random() < 0.1) await rounds.round();
    await shell.idle();
  }
  await shell.stop();
  return { store, reminders, threadOf, delivered };
}

function bookingOf(i: number): Booking {
  return {
    ref: `BR-${3000 + i}`,
    hirer: `Hirer ${i}`,
    firstName: `H${i}`,
    people: null,
    van: VANS[i % VANS.length] ?? 'dunlin',
    site: null,
    pitch: null,
    amps: 10,
    from: '2027-07-12',
    to: '2027-07-20',
    phone: '07700 900001',
    note: '',
  };
}

function tokenOf(i: number): string {
  return `link-of-hirer-${String(i).padStart(4, '0')}`;
}

function minutesAfter(clock: string, reminder: Reminder): number {
  return (reminder.atMs - at(clock)) / MINUTE;
}

describe('two hours of an evening with forty hirers, three staff and a change of shift', () => {
  let evening: Evening;
  beforeAll(async () => {
    const from = performance.now();
    evening = await playEvening(realServed());
    const { store, reminders, delivered } = evening;
    const passes = await store.events({ kinds: ['passed'] });
    console.log(
      `seed ${SEED}: ${delivered.length} replies delivered, ${passes.length} passes, ${reminders.length} reminders, played in ${Math.round(performance.now() - from)} ms`,
    );
  });
  const remindersOf = async (hirer: number): Promise<readonly Reminder[]> => {
    const id = await evening.threadOf(hirer);
    return evening.reminders.filter(({ threadId }) => threadId === id);
  };
  const linesOf = async (hirer: number): Promise<readonly Line[]> => evening.store.lines(await evening.threadOf(hirer));

  it('leaves nothing unanswered and nothing undelivered', async () => {
    const threads = await evening.store.threads({});
    expect(threads).toHaveLength(HIRERS);
    for (const thread of threads) {
      const lines = await evening.store.lines(thread.id);
      const lastHirer = lines.findLastIndex(({ who }) => who === 'hirer');
      expect(lines.length, JSON.stringify(lines)).toBeGreaterThan(lastHirer + 1);
      expect(thread.keeper, JSON.stringify(lines.map(({ who, text }) => [who, text]))).not.toBe('waiting');
      if (thread.keeper === 'staff') expect(lines.slice(lastHirer).some(({ reply }) => reply?.from != null)).toBe(true);
      expect(lines.every(({ sent }) => sent === null || sent === 'delivered')).toBe(true);
    }
  });

  it('puts every pass before a person, who answered', async () => {
    const passes = await evening.store.events({ kinds: ['passed'] });
    expect(passes.length).toBeGreaterThanOrEqual(12);
    for (const { threadId, atMs } of passes) {
      const said = await evening.store.events({ threadId, kinds: ['staff-said'] });
      expect(said.some((each) => each.atMs >= atMs)).toBe(true);
    }
  });

  it('brings a danger to mind every 2 minutes until somebody has it, and then no more', async () => {
    const reminders = await remindersOf(IN_DANGER);
    expect(reminders.map((each) => minutesAfter('17:05', each))).toEqual([2, 4, 6, 8]);
    expect(reminders.every(({ urgent, text }) => urgent && text.startsWith('DANGER: '))).toBe(true);
    expect(reminders.at(-1)?.text).toMatch(/^DANGER: Everyone: waiting 8 min/);
  });

  it('reminds the keeper of what lies for 20 minutes, then a colleague, and no more once it is answered', async () => {
    const reminders = await remindersOf(WRITES_AGAIN);
    expect(reminders.map((each) => [minutesAfter('16:40', each), each.text.split(':')[0]])).toEqual([
      [20, 'Nessa'],
      [40, 'Dilys'],
    ]);
  });

  it('gives no reminder twice, whatever restarts', async () => {
    const given = evening.reminders.map(({ threadId, text }) => `${threadId} ${text}`);
    expect(new Set(given).size).toBe(given.length);
    for (const { threadId, atMs } of evening.reminders) {
      const soon = evening.reminders.filter((each) => each.threadId === threadId && each.atMs >= atMs);
      expect(soon.filter((each) => each.atMs < atMs + 2 * MINUTE)).toHaveLength(1);
    }
  });

  it('tells the hirer at the end of the shift, answers meanwhile, and has the next person answer', async () => {
    const lines = await linesOf(LEFT_AT_SHIFT_END);
    const told = lines.filter(({ text }) => text.includes('gone off duty'));
    expect(told).toHaveLength(1);
    expect(told[0]?.text).toMatch(/^Nessa has gone off duty before answering\. .*08:30 tomorrow/);
    expect(told[0]?.atMs).toBe(at('17:30'));
    expect(told[0]?.sent).toBe('delivered');
    const answered = lines.find(({ who }) => who === 'Dilys');
    expect(answered?.atMs).toBeGreaterThan(at('17:30'));
    const events = await evening.store.events({ threadId: await evening.threadOf(LEFT_AT_SHIFT_END) });
    expect(events.map(({ event }) => event.kind).filter((kind) => /passed|taken|shift|given/.test(kind))).toEqual([
      'passed',
      'taken',
      'shift-ended',
      'taken',
      'given-back',
    ]);
  });

  it('ends nobody’s hold who had answered', async () => {
    const ended = await evening.store.events({ kinds: ['shift-ended'] });
    for (const { threadId, atMs } of ended) {
      const lines = (await evening.store.lines(threadId)).filter((line) => line.atMs < atMs);
      expect(lines.findLastIndex(({ who }) => who === 'hirer')).toBeGreaterThan(
        lines.findLastIndex(({ reply }) => reply?.from != null),
      );
    }
  });
});
