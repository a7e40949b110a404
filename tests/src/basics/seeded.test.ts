import { describe, expect, it } from 'vitest';
import { roundOrder, seeded, shuffled, textSeed } from '../../../src/basics/seeded.ts';

describe('chance drawn from a seed', () => {
  it('repeats', () => {
    const [one, two] = [seeded(5), seeded(5)];
    expect([one(), one(), one()]).toEqual([two(), two(), two()]);
    expect(shuffled([1, 2, 3, 4, 5], seeded(5))).toEqual(shuffled([1, 2, 3, 4, 5], seeded(5)));
  });
});

describe('chance drawn from texts', () => {
  const texts = ['gas', 'fire', 'storm', 'sparks', 'smoke', 'shock'];
  const inOrder = (of: readonly string[], round: number) =>
    roundOrder(Int32Array.from(of, textSeed), round).order.map((at) => of[at]);

  it('puts the same texts into another order each round, wherever they stand', () => {
    expect(inOrder(texts, 1)).not.toEqual(inOrder(texts, 2));
    expect(inOrder([...texts].reverse(), 1)).toEqual(inOrder(texts, 1));
  });

  it('leaves the order of the others as it is when one is added', () => {
    const more = inOrder(['flood', ...texts], 1);
    expect(more).toContain('flood');
    expect(more.filter((text) => text !== 'flood')).toEqual(inOrder(texts, 1));
  });

  it('follows FNV-1a as its authors give it', () => {
    // Fowler, Noll and Vo's test vectors for 32 bits: '' and 'foobar'.
    expect(textSeed('') >>> 0).toBe(0x811c9dc5);
    expect(textSeed('foobar') >>> 0).toBe(0xbf9cf968);
  });
});
