import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, dayOf, daysBetween, instantOf, localTime } from '../../../src/basics/time.ts';

const LONDON = 'Europe/London';

describe('local time', () => {
  // British Summer Time 2027: from 28 March 01:00 UTC to 31 October 01:00 UTC, by the Summer Time Order 2002
  // (last Sundays of March and October).
  it.each([
    ['2027-03-28T00:59:59Z', { hour: 0, minute: 59 }],
    ['2027-03-28T01:00:00Z', { hour: 2, minute: 0 }],
    ['2027-10-31T00:30:00Z', { hour: 1, minute: 30 }],
    ['2027-10-31T01:30:00Z', { hour: 1, minute: 30 }],
  ])('shows %s as the London clock does', (instant, shown) => {
    expect(localTime(Date.parse(instant), LONDON)).toMatchObject(shown);
  });

  it('finds the instant of a clock time on both sides of a change', () => {
    expect(instantOf({ year: 2027, month: 3, day: 28, hour: 8, minute: 30 }, LONDON)).toBe(
      Date.parse('2027-03-28T07:30:00Z'),
    );
    expect(instantOf({ year: 2027, month: 10, day: 31, hour: 8, minute: 30 }, LONDON)).toBe(
      Date.parse('2027-10-31T08:30:00Z'),
    );
  });

  it('takes the first of the two instants in the hour that comes twice', () => {
    expect(instantOf({ year: 2027, month: 10, day: 31, hour: 1, minute: 30 }, LONDON)).toBe(
      Date.parse('2027-10-31T00:30:00Z'),
    );
  });

  it('goes from instant to clock and back, but for the hour that comes twice', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_700_000_000, max: 1_900_000_000 }), (seconds) => {
        const atMs = Math.floor(seconds / 60) * 60_000;
        const back = instantOf(localTime(atMs, LONDON), LONDON);
        expect([atMs, atMs - 3_600_000]).toContain(back);
      }),
    );
  });

  it('counts days over months, years and clock changes', () => {
    expect(addDays('2027-02-27', 2)).toBe('2027-03-01');
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(daysBetween('2026-12-30', '2027-01-02')).toBe(3);
    expect(dayOf(Date.parse('2027-07-14T23:30:00Z'), LONDON)).toBe('2027-07-15');
  });
});
