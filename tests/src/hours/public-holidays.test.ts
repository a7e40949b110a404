import { describe, expect, it } from 'vitest';
import { bankHolidays, isPublicHoliday } from '../../../src/hours/public-holidays.ts';

/** The government's published list for England and Wales (gov.uk, 'UK bank holidays'). */
const PUBLISHED: readonly (readonly [number, readonly string[]])[] = [
  [2021, ['01-01', '04-02', '04-05', '05-03', '05-31', '08-30', '12-27', '12-28']],
  [2024, ['01-01', '03-29', '04-01', '05-06', '05-27', '08-26', '12-25', '12-26']],
  [2026, ['01-01', '04-03', '04-06', '05-04', '05-25', '08-31', '12-25', '12-28']],
  [2027, ['01-01', '03-26', '03-29', '05-03', '05-31', '08-30', '12-27', '12-28']],
];

describe('bank holidays', () => {
  it.each(PUBLISHED)('of %i are those published', (year, days) => {
    expect(bankHolidays(year)).toEqual(days.map((day) => `${year}-${day}`));
  });

  it('move New Year from a weekend to Monday, and Christmas from a Sunday past Boxing Day', () => {
    expect(bankHolidays(2022)[0]).toBe('2022-01-03');
    expect(bankHolidays(2022).slice(-2)).toEqual(['2022-12-26', '2022-12-27']);
  });

  it('are public holidays, as are Easter Sunday and a Christmas Day at a weekend', () => {
    for (const day of ['2027-08-30', '2027-03-28', '2027-12-25', '2027-12-27']) expect(isPublicHoliday(day)).toBe(true);
    for (const day of ['2027-08-31', '2027-03-27', '2027-12-26']) expect(isPublicHoliday(day)).toBe(false);
  });
});
