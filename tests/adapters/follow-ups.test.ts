import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import { createGapRecords } from '../../adapters/cli/gap-records.ts';
import { createFollowUps } from '../../adapters/follow-ups.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { servedWith } from '../../adapters/training/models.ts';
import {
  type Booking,
  type ChangeRecord,
  type Event,
  type GrowthDecision,
  newThread,
  plainText,
  type Store,
  summaryOf,
  type Thread,
} from '../../src/index.ts';
import { aBooking, aBrief } from '../helpers/pages-world.ts';
import { smallKnowledge } from '../helpers/small-graph.ts';

const served = servedWith(smallKnowledge(), { model: null, net: null });
/** A Tuesday evening, and the Thursday noon after it. */
const TUESDAY_MS = Date.parse('2027-07-20T18:00:00Z');
const THURSDAY_MS = Date.parse('2027-07-22T11:00:00Z');
const OVEN: GrowthDecision = { kind: 'add-wordings', topic: 'oven-use', wordings: ['pie in the oven'] };

function aGap(change: Partial<Extract<Event, { kind: 'gap' }>> = {}): Event {
  return { kind: 'gap', text: 'a pie, Ngozi asks', why: 'no-such-topic', van: 'daisy', topics: [], ...change };
}

type Asker = {
  readonly thread?: Partial<Thread>;
  readonly booking?: Partial<Booking>;
  readonly after?: readonly Event[];
};

/** Hirers who asked on Tuesday, and a change since that settles all their gaps. */
async function afterAChange(
  askers: readonly Asker[],
  {
    decision = OVEN,
    undone = null,
    nowMs = THURSDAY_MS,
  }: { decision?: GrowthDecision; undone?: ChangeRecord['undone']; nowMs?: number } = {},
) {
  const store = memoryStore();
  for (const [i, { thread = {}, booking = {}, after = [] }] of askers.entries()) {
    const ref = `BR-${1000 + i}`;
    await store.putBookings([aBooking({ ref, van: 'daisy', from: '2027-07-17', to: '2027-07-24', ...booking })]);
    const made = newThread({ id: `t${i}`, channel: 'web', address: `a${i}`, booking: ref, van: 'daisy' }, TUESDAY_MS);
    const memory = { ...made.memory, lastAtMs: TUESDAY_MS };
    const events = [aGap(), ...after];
    await store.saveTurn({ seq: null, thread: { ...made, memory, ...thread }, replies: [], events, atMs: TUESDAY_MS });
  }
  const clock = { now: nowMs };
  const gaps = createGapRecords(store, () => clock.now).gaps;
  const ids = (await gaps(served.knowledge)).map(({ id }) => id);
  const sums = summaryOf([]);
  const change: ChangeRecord = {
    id: 1,
    atMs: TUESDAY_MS + 1,
    by: 'Nessa',
    why: '',
    decision,
    gaps: ids,
    splices: [],
    figures: { before: sums, after: sums, better: [], worse: [], changed: [] },
    tell: true,
    undone,
  };
  const changed: string[] = [];
  const rounds = (over: Store = store) =>
    createFollowUps({
      store: over,
      served: () => served,
      changes: async () => [change],
      gaps,
      clock: { nowMs: () => clock.now },
      log: pino({ level: 'silent' }),
      onChange: (id) => changed.push(id),
    });
  const saidTo = async (id: string) =>
    (await store.lines(id)).map(({ reply, text }) => (reply === null ? text : plainText(reply)));
  return { store, clock, rounds, saidTo, changed };
}

describe('telling hirers what was taught since', () => {
  it('gives their own van’s answer through the outbox, with the day they asked, and their names left out', async () => {
    const { store, rounds, saidTo, changed } = await afterAChange([{}]);
    await rounds().round();
    const [said = ''] = await saidTo('t0');
    expect(said).toContain('You asked on Tuesday: ‘a pie, asks’. Here is the answer.');
    expect(said).toContain('Light it at the knob.');
    expect(changed).toEqual(['t0']);
    const [row] = await store.nextToSend('web', THURSDAY_MS, 10, new Set());
    expect(row).toMatchObject({ threadId: 't0', reply: { topic: 'oven-use' } });
  });

  it('tells each once, whatever ends in between and however many rounds run at once', async () => {
    const { store, clock, rounds, saidTo } = await afterAChange([{}, {}]);
    // The second hirer's saving fails once: as if the process had ended there.
    let failed = false;
    const failing: Store = {
      ...store,
      saveTurn: async (result) => {
        if (result.thread.id === 't1' && !failed) {
          failed = true;
          throw new Error('gone');
        }
        return store.saveTurn(result);
      },
    };
    await rounds(failing).round();
    expect(await saidTo('t1')).toEqual([]);
    // Long after the first was told: nothing but the record keeps the answer from being given again.
    clock.now += 3_600_000;
    await Promise.all([rounds().round(), rounds().round()]);
    await rounds().round();
    for (const id of ['t0', 't1'])
      expect((await saidTo(id)).filter((text) => text.includes('You asked'))).toHaveLength(1);
  });

  const danger: Partial<Thread> = {
    memory: { ...newThread({ id: '', channel: '', address: '' }, 0).memory, dangers: ['gas-smell'] },
  };
  const staffSaid: Event = { kind: 'staff-said', by: 'Nessa', text: 'At the knob.' };
  const passed: Event = { kind: 'passed', reason: 'unsure', urgency: 'usual', brief: aBrief() };
  it.each<[string, Asker]>([
    ['is with staff', { thread: { keeper: 'staff', keeperName: 'Nessa' } }],
    ['was passed for safety', { thread: { keeper: 'waiting', reason: 'safety' } }],
    ['has had a danger in the thread', { thread: danger }],
    ['is home again', { booking: { to: '2027-07-21' } }],
    ['has another van by now, which has none of it', { booking: { van: 'buttercup' } }],
    ['was answered by one of us since', { after: [passed, staffSaid] }],
    ['has no booking', { thread: { booking: null } }],
  ])('tells nobody who %s', async (_who, asker) => {
    const { rounds, saidTo } = await afterAChange([asker]);
    await rounds().round();
    expect(await saidTo('t0')).toEqual([]);
  });

  it('tells one who still waits for us', async () => {
    const { rounds, saidTo } = await afterAChange([{ thread: { keeper: 'waiting', reason: 'unsure' } }]);
    await rounds().round();
    expect((await saidTo('t0'))[0]).toContain('Light it at the knob.');
  });

  it('breaks into no talk, but tells them later', async () => {
    const { memory } = newThread({ id: '', channel: '', address: '' }, 0);
    const talking: Partial<Thread> = {
      memory: { ...memory, lastAtMs: THURSDAY_MS - 60_000 },
      open: { kind: 'choice', text: 'so', topics: ['fridge-modes'] },
    };
    const { clock, rounds, saidTo } = await afterAChange([{ thread: talking }]);
    await rounds().round();
    expect(await saidTo('t0')).toEqual([]);
    clock.now += 3_600_000;
    await rounds().round();
    expect((await saidTo('t0'))[0]).toContain('You asked on Tuesday');
  });

  it('wakes nobody at night, but tells them later', async () => {
    const { clock, rounds, saidTo } = await afterAChange([{}], { nowMs: Date.parse('2027-07-22T22:30:00Z') });
    await rounds().round();
    expect(await saidTo('t0')).toEqual([]);
    clock.now = Date.parse('2027-07-23T08:00:00Z');
    await rounds().round();
    expect((await saidTo('t0'))[0]).toContain('You asked on Tuesday');
  });

  it('tells nothing of a change that was taken back, or that taught no answer', async () => {
    const undone = await afterAChange([{}], { undone: { atMs: THURSDAY_MS, by: 'Nessa' } });
    await undone.rounds().round();
    expect(await undone.saidTo('t0')).toEqual([]);
    const aside = await afterAChange([{}], { decision: { kind: 'set-aside', wordings: ['pool'] } });
    await aside.rounds().round();
    expect(await aside.saidTo('t0')).toEqual([]);
  });
});
