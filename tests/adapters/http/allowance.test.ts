import { describe, expect, it } from 'vitest';
import { createAllowance } from '../../../adapters/http/allowance.ts';

describe('an allowance', () => {
  it('refuses what is over, for that caller only, until the window has passed', () => {
    const allowance = createAllowance({ most: 2, windowMs: 1000 });
    expect([allowance.take('a', 0), allowance.take('a', 400), allowance.take('a', 900)]).toEqual([true, true, false]);
    expect(allowance.take('b', 900)).toBe(true);
    expect(allowance.take('a', 1001)).toBe(true);
    expect(allowance.take('a', 1002)).toBe(false);
  });
});
