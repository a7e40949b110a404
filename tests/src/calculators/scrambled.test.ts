import { describe, expect, it } from 'vitest';
import { unscrambled } from '../../../src/calculators/scrambled.ts';

describe('a counting word with letters the wrong way round', () => {
  it('is read as it was meant', () => {
    expect(['poeple', 'nigths', 'degeres', 'minuets'].map(unscrambled)).toEqual([
      'people',
      'nights',
      'degrees',
      'minutes',
    ]);
  });

  it('leaves every other word as it is', () => {
    for (const word of ['things', 'kettle', 'shower', 'pitch', 'gas']) expect(unscrambled(word)).toBe(word);
  });
});
