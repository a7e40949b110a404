import { addDays, isoDay, weekdayOf } from '../basics/time.ts';

/**
 * Whether a day (as 2027-12-27) is one on which a door's usual hours may not hold in England and Wales: a bank holiday; Easter
 * Sunday (Sunday Trading Act 1994); or Christmas Day, also where its bank holiday is kept later (Christmas Day (Trading) Act 2004).
 */
export function isPublicHoliday(day: string): boolean {
  const year = Number(day.slice(0, 4));
  return [...bankHolidays(year), easterSunday(year), isoDay(year, 12, 25)].includes(day);
}

/**
 * The eight bank holidays of a year in England and Wales, first to last: Banking and Financial Dealings Act 1971, schedule 1,
 * with New Year's Day and the first Monday in May, which are proclaimed each year. One at a weekend is kept on the next
 * weekday. Days proclaimed once, for a coronation or a jubilee, are not known.
 */
export function bankHolidays(year: number): readonly string[] {
  const easter = easterSunday(year);
  const newYear = isoDay(year, 1, 1);
  // Christmas Day and Boxing Day move past each other: both go on by two days, so that neither lands on the other.
  const christmas = [isoDay(year, 12, 25), isoDay(year, 12, 26)].map((day) => (isWeekend(day) ? addDays(day, 2) : day));
  return [
    isWeekend(newYear) ? mondayFrom(newYear) : newYear,
    addDays(easter, -2),
    addDays(easter, 1),
    mondayFrom(isoDay(year, 5, 1)),
    mondayFrom(isoDay(year, 5, 25)),
    mondayFrom(isoDay(year, 8, 25)),
    ...christmas.sort(),
  ];
}

function isWeekend(day: string): boolean {
  return [0, 6].includes(weekdayOf(day));
}

/** The first Monday on or after a day. */
function mondayFrom(day: string): string {
  return addDays(day, (8 - weekdayOf(day)) % 7);
}

/** The Gregorian rule without exceptions (Nature, 20 April 1876), with the letters of Meeus, Astronomical Algorithms, chapter 8. */
function easterSunday(year: number): string {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const f = Math.floor((b + 8) / 25);
  const g = Math.floor((b - f + 1) / 3);
  const h = (19 * a + b - Math.floor(b / 4) - g + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const sum = h + l - 7 * m + 114;
  return isoDay(year, Math.floor(sum / 31), (sum % 31) + 1);
}
