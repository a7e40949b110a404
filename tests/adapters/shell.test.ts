import { pino } from 'pino';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { createShell, type Shell } from '../../adapters/shell.ts';
import type { Channel, Message, Reply, Served, Store } from '../../src/index.ts';
import { realServed } from '../helpers/real-graph.ts';

const NOW_MS = Date.parse('2027-07-27T13:40:00Z');

/** A store that can be taken down: then nothing is read or written. */
function fragileStore(): { readonly store: Store; readonly down: (now: boolean) => void } {
  const plain = memoryStore();
  let isDown = false;
  const store = Object.fromEntries(
    Object.entries(plain).map(([name, act]) => [
      name,
      async (...given: never[]) => {
        if (isDown) throw new Error('the store is down');
        return (act as (...given: never[]) => unknown)(...given);
      },
    ]),
  ) as unknown as Store;
  return { store, down: (now) => (isDown = now) };
}

function said(text: string, key: string): Message {
  return {
    channel: 'test',
    address: 'a',
    key,
    atMs: NOW_MS,
    text,
    choice: null,
    attachments: [],
    edit: false,
    from: null,
    startToken: null,
  };
}

describe('while the store is down', () => {
  let served: Served;
  let shell: Shell;
  beforeAll(() => {
    served = realServed();
  });
  afterEach(() => shell.stop());

  function rig() {
    const { store, down } = fragileStore();
    const delivered: Reply[] = [];
    const channel: Channel = {
      name: 'test',
      abilities: { buttons: true, pictures: true, edits: true, media: true, longest: 4096 },
      start: async () => {},
      stop: async () => {},
      deliver: async (reply) => {
        delivered.push(reply);
        return { kind: 'delivered', id: `${delivered.length}` };
      },
    };
    shell = createShell({
      store,
      served: () => served,
      clock: { nowMs: () => NOW_MS },
      channels: [channel],
      log: pino({ level: 'silent' }),
    });
    shell.start();
    return { store, down, delivered };
  }

  it('sends a danger’s notice past it, once a message, and confirms nothing', async () => {
    const { down, delivered } = rig();
    down(true);
    for (let i = 0; i < 3; i++)
      await expect(shell.receive(said('I can smell gas', 'key-1'))).rejects.toThrow('the store is down');
    expect(delivered.map(({ kind }) => kind)).toEqual(['notice']);
    await expect(shell.receive(said('now the alarm is going off', 'key-2'))).rejects.toThrow();
    expect(delivered.map(({ kind }) => kind)).toEqual(['notice', 'notice']);
    await expect(shell.receive(said('how do I turn the heating on', 'key-3'))).rejects.toThrow();
    expect(delivered).toHaveLength(2);
  });

  it('writes message, notice and pass when it is back and the channel brings the message again', async () => {
    const { store, down, delivered } = rig();
    down(true);
    await expect(shell.receive(said('I can smell gas', 'key-1'))).rejects.toThrow();
    down(false);
    await shell.receive(said('I can smell gas', 'key-1'));
    await shell.receive(said('I can smell gas', 'key-1'));
    await shell.idle();
    const [thread] = await store.threads({});
    expect(thread).toMatchObject({ keeper: 'waiting', reason: 'safety' });
    const lines = await store.lines(thread?.id ?? '');
    expect(lines.filter(({ who }) => who === 'hirer').map(({ text }) => text)).toEqual(['I can smell gas']);
    expect(lines.filter(({ reply }) => reply?.kind === 'notice').map(({ sent }) => sent)).toEqual(['delivered']);
    expect(await store.events({ kinds: ['passed'] })).toHaveLength(1);
    // Once past the store, once as written: twice is better than never.
    expect(delivered.filter(({ kind }) => kind === 'notice')).toHaveLength(2);
  });
});
