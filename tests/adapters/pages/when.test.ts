import { describe, expect, it } from 'vitest';
import { clockAt, dayAt, dayName, nightsWords, sameDay, waited } from '../../../adapters/pages/when.ts';

const ZONE = 'Europe/London';
const MINUTE = 60_000;

describe('times in words', () => {
  it('are those of the clock in the office, summer and winter', () => {
    expect(clockAt(Date.parse('2027-07-27T13:40:00Z'), ZONE)).toBe('14:40');
    expect(clockAt(Date.parse('2027-01-27T13:40:00Z'), ZONE)).toBe('13:40');
    expect(dayAt(Date.parse('2027-07-27T23:30:00Z'), ZONE)).toBe('Wednesday 28 July');
    expect(dayName('2027-07-31')).toBe('Saturday 31 July');
  });

  it('tell a new day by that clock', () => {
    const at = (text: string) => Date.parse(text);
    expect(sameDay(at('2027-07-27T22:59:00Z'), at('2027-07-27T23:01:00Z'), ZONE)).toBe(false);
    expect(sameDay(at('2027-07-27T08:00:00Z'), at('2027-07-27T22:00:00Z'), ZONE)).toBe(true);
  });

  it('say how long someone has waited', () => {
    expect([-5, 0, 59_000, MINUTE, 59 * MINUTE, 60 * MINUTE, 125 * MINUTE, 49 * 60 * MINUTE].map(waited)).toEqual([
      'now',
      'now',
      'now',
      '1 min',
      '59 min',
      '1 h 00',
      '2 h 05',
      '2 days',
    ]);
  });

  it('say how many nights are left', () => {
    expect([0, 1, 4].map(nightsWords)).toEqual(['home today', '1 night', '4 nights']);
  });
});
