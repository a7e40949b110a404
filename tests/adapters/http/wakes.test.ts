import { describe, expect, it } from 'vitest';
import { createWakes } from '../../../adapters/http/wakes.ts';

describe('wakes', () => {
  it('wake those who wait under the name, and nobody else', async () => {
    const wakes = createWakes();
    const mine = wakes.join('a');
    const other = wakes.join('b');
    const waits = Promise.all([mine.wait(5000), other.wait(20)]);
    wakes.wake('a');
    expect(await waits).toEqual(['woken', 'slept']);
  });

  it('remember a wake that comes while the sleeper is busy', async () => {
    const wakes = createWakes();
    const bell = wakes.join('a');
    wakes.wake('a');
    expect(await bell.wait(5000)).toBe('woken');
    expect(await bell.wait(10)).toBe('slept');
  });

  it('end every wait when closed, now and later', async () => {
    const wakes = createWakes();
    const bell = wakes.join('a');
    const waiting = bell.wait(60_000);
    wakes.close();
    expect(await waiting).toBe('closed');
    expect(await wakes.join('b').wait(60_000)).toBe('closed');
  });

  it('let a sleeper leave in the middle of a wait, and count it no more', async () => {
    const wakes = createWakes();
    const bell = wakes.join('a');
    const waiting = bell.wait(60_000);
    bell.leave();
    bell.leave();
    await waiting;
    expect(wakes.size()).toBe(0);
  });
});
