import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createOutbox, newKey, type Unsent } from '../../../adapters/web/page/outbox.ts';
import { createSender, type Sent } from '../../../adapters/web/page/sender.ts';

function aStorage(): Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> {
  const kept = new Map<string, string>();
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, value) => void kept.set(name, value),
    removeItem: (name) => void kept.delete(name),
  };
}
const aMessage = (key: string, change: Partial<Unsent> = {}): Unsent => ({
  key,
  text: `text ${key}`,
  choice: null,
  atMs: 0,
  ...change,
});

describe('the outbox of a page', () => {
  it('outlives the page and is shared by two tabs', () => {
    const storage = aStorage();
    createOutbox(storage, 'a').add(aMessage('1'));
    const other = createOutbox(storage, 'a');
    other.add(aMessage('2'));
    expect(
      createOutbox(storage, 'a')
        .all()
        .map((one) => one.key),
    ).toEqual(['1', '2']);
    expect(createOutbox(storage, 'b').all()).toEqual([]);
  });

  it('works as long as the page where the browser keeps nothing', () => {
    const outbox = createOutbox(
      {
        getItem: () => {
          throw new Error('forbidden');
        },
        setItem: () => {
          throw new Error('full');
        },
        removeItem: () => undefined,
      },
      'a',
    );
    outbox.add(aMessage('1'));
    expect(outbox.all()).toHaveLength(1);
  });

  it('reads nothing into what is not its own', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const storage = aStorage();
        storage.setItem('a', text);
        for (const one of createOutbox(storage, 'a').all()) expect(typeof one.text).toBe('string');
      }),
    );
  });

  it('makes keys that the server takes, each a new one', () => {
    const keys = Array.from({ length: 50 }, newKey);
    expect(new Set(keys).size).toBe(50);
    for (const key of keys) expect(key).toMatch(/^[A-Za-z0-9_-]{8,64}$/);
  });
});

describe('the sender of a page', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  function aRig(answers: (message: Unsent, attempt: number) => Sent) {
    const outbox = createOutbox(aStorage(), 'a');
    const attempts: string[] = [];
    const states: { signal: boolean; says: string | null }[] = [];
    const sender = createSender(
      outbox,
      async (message) => {
        attempts.push(message.key);
        return answers(message, attempts.length);
      },
      (state) => states.push(state),
    );
    return { outbox, attempts, states, sender };
  }

  it('sends in the order typed and forgets what was taken', async () => {
    const rig = aRig(() => ({ kind: 'taken', says: null }));
    for (const key of ['1', '2', '3']) rig.outbox.add(aMessage(key));
    rig.sender.flush();
    rig.sender.flush();
    await vi.runAllTimersAsync();
    expect(rig.attempts).toEqual(['1', '2', '3']);
    expect(rig.outbox.all()).toEqual([]);
  });

  it('tries again by itself, more and more seldom, and keeps the order', async () => {
    const rig = aRig((_, attempt) => (attempt < 4 ? { kind: 'later' } : { kind: 'taken', says: null }));
    rig.outbox.add(aMessage('1'));
    rig.outbox.add(aMessage('2'));
    rig.sender.flush();
    await vi.advanceTimersByTimeAsync(1500 + 3000);
    expect(rig.attempts).toEqual(['1', '1', '1']);
    expect(rig.states.at(-1)).toEqual({ signal: false, says: null });
    await vi.advanceTimersByTimeAsync(6000);
    expect(rig.attempts).toEqual(['1', '1', '1', '1', '2']);
  });

  it('keeps what the server refused, with its words, and goes on with the rest', async () => {
    const rig = aRig((message) =>
      message.key === '1' ? { kind: 'refused', says: 'too long' } : { kind: 'taken', says: null },
    );
    rig.outbox.add(aMessage('1'));
    rig.outbox.add(aMessage('2'));
    rig.sender.flush();
    await vi.runAllTimersAsync();
    expect(rig.outbox.all()).toEqual([aMessage('1', { refused: 'too long' })]);
    expect(rig.attempts).toEqual(['1', '2']);
  });
});
