/** A wall clock reading in one time zone. `weekday` is 0 for Sunday; `month` is 1..12. */
export type LocalTime = {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  readonly weekday: number;
};

export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const formats = new Map<string, Intl.DateTimeFormat>();

function formatIn(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
      weekday: 'short',
    });
    formats.set(zone, format);
  }
  return format;
}

/**
 * What a clock on the wall shows in `zone` at an instant.
 *
 * @param atMs Epoch milliseconds.
 * @param zone IANA name, such as Europe/London.
 * @throws RangeError when the zone is unknown.
 */
export function localTime(atMs: number, zone: string): LocalTime {
  const found: Record<string, string> = {};
  for (const part of formatIn(zone).formatToParts(atMs)) found[part.type] = part.value;
  return {
    year: Number(found['year']),
    month: Number(found['month']),
    day: Number(found['day']),
    hour: Number(found['hour']),
    minute: Number(found['minute']),
    second: Number(found['second']),
    weekday: WEEKDAYS.indexOf(found['weekday'] ?? ''),
  };
}

/**
 * The instant at which the clock in `zone` shows the given wall time.
 * In the hour that a spring change skips it gives the instant the clock would have shown without the change;
 * in the hour that an autumn change repeats it gives the first of the two.
 */
export function instantOf(
  wall: { year: number; month: number; day: number; hour?: number; minute?: number },
  zone: string,
): number {
  const { year, month, day, hour = 0, minute = 0 } = wall;
  const asUtc = Date.UTC(year, month - 1, day, hour, minute);
  const before = asUtc - offsetMs(asUtc - DAY_MS, zone);
  const after = asUtc - offsetMs(asUtc + DAY_MS, zone);
  return shows(before, asUtc, zone) || !shows(after, asUtc, zone) ? before : after;
}

function offsetMs(atMs: number, zone: string): number {
  const local = localTime(atMs, zone);
  const shown = Date.UTC(local.year, local.month - 1, local.day, local.hour, local.minute, local.second);
  return shown - Math.floor(atMs / 1000) * 1000;
}

function shows(atMs: number, asUtc: number, zone: string): boolean {
  return atMs + offsetMs(atMs, zone) === asUtc;
}

/** The calendar day in `zone`, as 2027-07-15: days compare and sort as text. */
export function dayOf(atMs: number, zone: string): string {
  const { year, month, day } = localTime(atMs, zone);
  return isoDay(year, month, day);
}

/** 2027-07-15 for (2027, 7, 15); a day past the month's end rolls over, as in `Date.UTC`. */
export function isoDay(year: number, month: number, day: number): string {
  const at = Date.UTC(year, month - 1, day);
  const whole = Math.floor(at / DAY_MS);
  return civil(whole);
}

/** The day `days` after `day` (both as 2027-07-15). */
export function addDays(day: string, days: number): string {
  return civil(dayNumber(day) + days);
}

/** Whole days from `from` to `to` (both as 2027-07-15); negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** The weekday of a day (as 2027-07-15), 0 for Sunday. */
export function weekdayOf(day: string): number {
  // 1970-01-01 was a Thursday.
  return (((dayNumber(day) + 4) % 7) + 7) % 7;
}

/** Days since 1970-01-01. */
function dayNumber(day: string): number {
  return Math.floor(Date.parse(`${day}T00:00:00Z`) / DAY_MS);
}

function civil(daysSinceEpoch: number): string {
  return new Date(daysSinceEpoch * DAY_MS).toISOString().slice(0, 10);
}

/** 9:05 as '09:05'. */
export function clockText(time: { readonly hour: number; readonly minute: number }): string {
  return `${String(time.hour).padStart(2, '0')}:${String(time.minute).padStart(2, '0')}`;
}
