import { rounded } from './units.ts';

/** 2,250 W; whole watts. */
export function wattsText(watts: number): string {
  return `${rounded(watts).toLocaleString('en-GB')} W`;
}

/** 9.8 A. */
export function ampsText(amps: number): string {
  return `${rounded(amps, 1)} A`;
}

/** 3,680 as people write it, with at most `places` decimals. */
export function figure(value: number, places = 1): string {
  return rounded(value, places).toLocaleString('en-GB', { maximumFractionDigits: places });
}

/** Beyond this nobody plans, and the sum's own error is larger than the figure says. */
const MANY_DAYS = 60;

/** '0.5 days', '1 day', '6.8 days'. */
export function daysText(days: number): string {
  if (days > MANY_DAYS) return `more than ${MANY_DAYS} days`;
  const value = rounded(days, days < 10 ? 1 : 0);
  return value === 1 ? '1 day' : `${value.toLocaleString('en-GB')} days`;
}

/** ', enough for your 3 nights' by the booking; nothing where it does not tell how many are left. */
export function forNightsLeft(days: number, nights: number | null): string {
  if (nights === null || nights < 1) return '';
  const stay = nights === 1 ? 'the night you have left' : `the ${nights} nights you have left`;
  return days >= nights ? `, enough for ${stay}` : `, not ${stay}`;
}

/** '1 h 11 min', '47 min'. */
export function minutesText(minutes: number): string {
  const whole = rounded(minutes);
  const hours = Math.floor(whole / 60);
  if (hours === 0) return `${whole} min`;
  return whole % 60 === 0 ? `${hours} h` : `${hours} h ${whole % 60} min`;
}

/** 'a', 'a and b', 'a, b and c'. */
export function listText(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** '1 person', '4 people'. */
export function peopleText(people: number): string {
  return people === 1 ? '1 person' : `${figure(people)} people`;
}
