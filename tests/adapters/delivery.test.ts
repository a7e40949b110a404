import { pino } from 'pino';
import { afterEach, describe, expect, it } from 'vitest';
import { type Delivery, deliverAll } from '../../adapters/delivery.ts';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { type Address, type Channel, newThread, type Receipt, type Reply, type Store } from '../../src/index.ts';
import { aReply } from '../helpers/pages-world.ts';

const NOW_MS = Date.parse('2027-07-27T13:40:00Z');
const log = pino({ level: 'silent' });

const running: Delivery[] = [];
afterEach(async () => {
  for (const delivery of running.splice(0)) await delivery.stop();
});

/** A channel whose every delivery is decided by `how`, and a delivery that runs over a store in memory. */
function rig(how: (text: string, to: Address) => Promise<Receipt> | Receipt, store: Store = memoryStore()) {
  let nowMs = NOW_MS;
  const sent: string[] = [];
  const changed: string[] = [];
  const channel: Channel = {
    name: 'test',
    abilities: { buttons: true, pictures: true, edits: true, media: true, longest: 4096 },
    start: async () => {},
    stop: async () => {},
    deliver: async (reply, to) => {
      const text = textOf(reply);
      const receipt = await how(text, to);
      sent.push(`${to.address} ${text}: ${receipt.kind}`);
      return receipt;
    },
  };
  const make = () => {
    const delivery = deliverAll(channel, {
      store,
      clock: { nowMs: () => nowMs },
      log,
      onChange: (id) => changed.push(id),
    });
    running.push(delivery);
    return delivery;
  };
  return { store, sent, changed, make, later: (ms: number) => (nowMs += ms) };
}

const DELIVERED: Receipt = { kind: 'delivered', id: '1' };

function textOf({ blocks: [block] }: Reply): string {
  return block?.kind === 'line' ? block.text : '';
}

async function says(store: Store, address: string, text: string, kind: Reply['kind'] = 'answer'): Promise<void> {
  const at = { channel: 'test', address };
  if ((await store.threadAt(at)) === null)
    await store.saveTurn({
      seq: null,
      thread: newThread({ ...at, id: `thread-${address}` }, NOW_MS),
      replies: [],
      events: [],
      atMs: NOW_MS,
    });
  await store.post(`thread-${address}`, aReply({ kind, blocks: [{ kind: 'line', text }] }), NOW_MS);
}

/** Something that is over when told so. */
function gate(): { readonly opened: Promise<void>; readonly open: () => void } {
  let open = (): void => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { opened, open };
}

describe('sending the outbox', () => {
  it('holds nobody up for an address that is slow, not even for what is said later', async () => {
    const slow = gate();
    const { store, sent, make } = rig(async (_, { address }) => {
      if (address === 'slow') await slow.opened;
      return DELIVERED;
    });
    await says(store, 'slow', 'one');
    await says(store, 'quick', 'one');
    const delivery = make();
    delivery.start();
    await expect.poll(() => sent).toEqual(['quick one: delivered']);
    await says(store, 'quick', 'two');
    await says(store, 'other', 'three');
    delivery.wake();
    await expect
      .poll(() => [...sent].sort())
      .toEqual(['other three: delivered', 'quick one: delivered', 'quick two: delivered']);
    slow.open();
    await delivery.idle();
    expect(sent).toContain('slow one: delivered');
  });

  it('sends the rows of one address one after the other, in order, however many wake it', async () => {
    let atOnce = 0;
    let most = 0;
    const { store, sent, make } = rig(async () => {
      atOnce += 1;
      most = Math.max(most, atOnce);
      await new Promise((resolve) => setImmediate(resolve));
      atOnce -= 1;
      return DELIVERED;
    });
    for (let i = 0; i < 20; i++) await says(store, 'a', `${i}`);
    const delivery = make();
    delivery.start();
    for (let i = 0; i < 20; i++) {
      delivery.wake();
      await new Promise((resolve) => setImmediate(resolve));
    }
    await delivery.idle();
    expect(sent).toEqual(Array.from({ length: 20 }, (_, i) => `a ${i}: delivered`));
    expect(most).toBe(1);
  });

  it('has at most 64 addresses under way, and begins the next as soon as one is done', async () => {
    const gates = new Map<string, ReturnType<typeof gate>>();
    const { store, make, sent } = rig(async (_, { address }) => {
      const own = gate();
      gates.set(address, own);
      await own.opened;
      return DELIVERED;
    });
    for (let i = 0; i < 70; i++) await says(store, `a${i}`, 'x');
    const delivery = make();
    delivery.start();
    await expect.poll(() => gates.size).toBe(64);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(gates.size).toBe(64);
    gates.get('a5')?.open();
    await expect.poll(() => gates.size).toBe(65);
    while (sent.length < 70) {
      for (const each of gates.values()) each.open();
      await new Promise((resolve) => setImmediate(resolve));
    }
    await delivery.idle();
  });

  it('keeps a row that cannot go now before the later ones of its address', async () => {
    let busy = true;
    const { store, sent, make, later } = rig(() => (busy ? { kind: 'later', afterMs: 5_000, why: 'busy' } : DELIVERED));
    await says(store, 'a', 'one');
    await says(store, 'a', 'two');
    const delivery = make();
    delivery.start();
    await delivery.idle();
    delivery.wake();
    await delivery.idle();
    expect(sent).toEqual(['a one: later']);
    busy = false;
    later(5_000);
    delivery.wake();
    await delivery.idle();
    expect(sent).toEqual(['a one: later', 'a one: delivered', 'a two: delivered']);
  });

  it('finishes what is under way before it stops, and begins nothing more', async () => {
    const slow = gate();
    const { store, sent, make } = rig(async () => {
      await slow.opened;
      return DELIVERED;
    });
    await says(store, 'a', 'one');
    await says(store, 'a', 'two');
    const delivery = make();
    delivery.start();
    await new Promise((resolve) => setTimeout(resolve, 10));
    const stopped = delivery.stop();
    slow.open();
    await stopped;
    expect(sent).toEqual(['a one: delivered']);
    expect((await store.lines('thread-a')).map(({ sent: how }) => how)).toEqual(['delivered', 'waiting']);
  });

  it('sends again, in order, what a process that ended had on its way: twice is better than never', async () => {
    const { store, sent, make } = rig(() => DELIVERED);
    await says(store, 'a', 'words');
    await says(store, 'b', 'get out', 'notice');
    await store.markSending((await store.nextToSend('test', NOW_MS, 9, new Set())).map(({ id }) => id));
    const delivery = make();
    delivery.start();
    await delivery.idle();
    expect(sent).toEqual(['a words: delivered', 'b get out: delivered']);
    expect((await store.lines('thread-a'))[0]?.sent).toBe('delivered');
  });

  it('goes on when one row cannot be settled', async () => {
    const plain = memoryStore();
    let failing = true;
    const store: Store = {
      ...plain,
      settle: async (...row) => {
        if (failing) {
          failing = false;
          throw new Error('disk full');
        }
        return plain.settle(...row);
      },
    };
    const { sent, make } = rig(() => DELIVERED, store);
    await says(store, 'a', 'one');
    await says(store, 'b', 'two');
    const delivery = make();
    delivery.start();
    await delivery.idle();
    expect([...sent].sort()).toEqual(['a one: delivered', 'b two: delivered']);
    expect(await store.nextToSend('test', NOW_MS, 9, new Set())).toEqual([]);
  });
});

describe('a hirer who cannot be reached any more', () => {
  const gone: Receipt = { kind: 'gone', why: 'blocked' };
  const notesIn = async (store: Store) =>
    (await store.events({ kinds: ['staff-noted'] })).map(({ event }) => event.kind === 'staff-noted' && event.text);

  it('is told to staff once, however many replies were waiting', async () => {
    const { store, make, changed } = rig(() => gone);
    await says(store, 'a', 'one');
    await says(store, 'a', 'two');
    const delivery = make();
    delivery.start();
    await delivery.idle();
    expect(await notesIn(store)).toEqual([
      'The hirer can no longer be reached on test (blocked). Ring the number on the booking.',
    ]);
    expect(changed).toEqual(['thread-a', 'thread-a']);
  });

  it('is told to staff even when the thread changes in that very moment', async () => {
    const plain = memoryStore();
    let meddled = 0;
    const store: Store = {
      ...plain,
      saveTurn: async (result) => {
        const noted = result.events.some(({ kind }) => kind === 'staff-noted');
        if (noted && meddled < 3) {
          meddled += 1;
          const now = await plain.thread(result.thread.id);
          if (now !== null) await plain.saveTurn({ ...result, thread: { ...now, keeper: 'waiting' }, events: [] });
        }
        return plain.saveTurn(result);
      },
    };
    const { make } = rig(() => gone, store);
    await says(store, 'a', 'one');
    const delivery = make();
    delivery.start();
    await delivery.idle();
    expect(meddled).toBe(3);
    expect(await notesIn(store)).toHaveLength(1);
    expect((await store.thread('thread-a'))?.keeper).toBe('waiting');
  });
});
