import { describe, expect, it } from 'vitest';
import { createGapRecords } from '../../../adapters/cli/gap-records.ts';
import { messageOf } from '../../../adapters/console/ask-lines.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { type Event, newThread } from '../../../src/index.ts';
import { aBooking } from '../../helpers/pages-world.ts';
import { aGap } from '../../helpers/small-desk.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const NOW_MS = Date.parse('2027-07-20T18:00:00Z');
const knowledge = smallKnowledge();

/** What a hirer wrote, and what came of it; one thread for each. */
async function storeWith(talks: readonly (readonly [string, readonly Event[]])[]) {
  const store = memoryStore();
  await store.putBookings([aBooking({ van: 'daisy' })]);
  for (const [i, [text, events]] of talks.entries()) {
    const thread = newThread(
      { id: `t${i}`, channel: 'console', address: `a${i}`, booking: 'BR-2702', van: 'daisy' },
      NOW_MS,
    );
    const message = { ...messageOf(text, i, NOW_MS), address: `a${i}` };
    await store.receive(message, () => thread);
    const next = (await store.nextMessages(100, new Set())).find(({ threadId }) => threadId === thread.id);
    const loaded = await store.thread(thread.id);
    if (loaded === null) throw new Error('the thread was just made');
    await store.saveTurn({ seq: next?.seq ?? null, thread: loaded, replies: [], events, atMs: NOW_MS });
  }
  return store;
}
const walked: Event = { kind: 'answered', topic: 'fridge-light-dead', probability: 0.9 };
const walkEnded = (end: 'fixed' | 'passed'): Event => ({
  kind: 'walk-ended',
  symptom: 'fridge-light-dead',
  van: 'daisy',
  end,
  cause: null,
  tried: [],
});
const answered: Event = { kind: 'answered', topic: 'oven-use', probability: 0.9 };

describe('what is read out of the store', () => {
  it('keeps no name of the booking, and knows the van', async () => {
    const store = await storeWith([['x', [aGap('oven? Ngozi Okonkwo-Hale', { van: null })]]]);
    const [gap] = await createGapRecords(store, () => NOW_MS).gaps(knowledge);
    expect(gap).toMatchObject({ text: 'oven? [name] [name]-[name]', van: 'daisy' });
  });

  it('takes what hirers asked as questions to replay, with the topic that helped', async () => {
    const store = await storeWith([
      ['light the oven how, Ngozi', [answered, { kind: 'helped', topic: 'oven-use', yes: true }]],
      ['oven lighting', [answered, { kind: 'helped', topic: 'oven-use', yes: false }]],
      ['oven lighting', [answered]],
      ['oven on how', [answered]],
      ['no lamp in it', [walked, walkEnded('fixed')]],
      ['no lamp again', [walked, walkEnded('passed')]],
    ]);
    expect(await createGapRecords(store, () => NOW_MS).realQuestions(knowledge)).toEqual([
      { text: 'light the oven how, [name]', van: 'daisy', topic: 'oven-use' },
      { text: 'oven lighting', van: 'daisy' },
      { text: 'no lamp in it', van: 'daisy', topic: 'fridge-light-dead' },
      { text: 'no lamp again', van: 'daisy' },
    ]);
  });

  it('takes choices that nobody picked for a gap, by what was asked', async () => {
    const store = await storeWith([['the thing that glows', [{ kind: 'offered', topics: ['oven-use'] }]]]);
    const later = createGapRecords(store, () => NOW_MS + 2 * 3_600_000);
    expect(await later.gaps(knowledge)).toMatchObject([{ text: 'the thing that glows', why: 'nothing-picked' }]);
  });
});
