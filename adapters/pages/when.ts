import { clockText, DAY_MS, dayOf, localTime, MINUTE_MS } from '../../src/index.ts';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** 14:05, as the clock in the firm's office shows it. */
export function clockAt(atMs: number, zone: string): string {
  return clockText(localTime(atMs, zone));
}

/** 'Tuesday 24 November'. */
export function dayAt(atMs: number, zone: string): string {
  const { weekday, day, month } = localTime(atMs, zone);
  return `${DAYS[weekday]} ${day} ${MONTHS[month - 1]}`;
}

/** For a day written 2027-07-24. */
export function dayName(day: string): string {
  return dayAt(Date.parse(`${day}T12:00:00Z`), 'UTC');
}

export function sameDay(aMs: number, bMs: number, zone: string): boolean {
  return Math.abs(aMs - bMs) < DAY_MS && dayOf(aMs, zone) === dayOf(bMs, zone);
}

/** 'now', '7 min', '2 h 05', '3 days'. */
export function waited(ms: number): string {
  const minutes = Math.max(0, Math.floor(ms / MINUTE_MS));
  if (minutes < 1) return 'now';
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 48 * 60) return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
  return `${Math.floor(minutes / 1440)} days`;
}

/** 'home today', '1 night', '3 nights'. */
export function nightsWords(nights: number): string {
  if (nights <= 0) return 'home today';
  return nights === 1 ? '1 night' : `${nights} nights`;
}
