import { addDays, clockText, dayOf, instantOf, localTime } from '../basics/time.ts';

/** Hours of one day: minutes after midnight; `to` may pass 24 h for places open past midnight. */
export type Span = { readonly from: number; readonly to: number };
/** Spans by weekday, 0 Sunday to 6 Saturday; null when it is always open or nothing is known. */
export type Week = {
  readonly kind: 'week';
  readonly days: readonly (readonly Span[])[];
  readonly months: readonly number[] | null;
};
export type Opening = Week | { readonly kind: 'always' } | { readonly kind: 'words'; readonly text: string };

const DAY_NAMES = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTH_NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * Reads hours as they stand on a door: '09:00-17:00 daily', '07:30-19:00 Mon-Sat; 09:00-17:00 Sun',
 * '12:00-14:30 and 17:30-20:30 Wed-Sun', '10:00-17:00 daily Apr-Sep', 'always open'.
 * Anything else is kept as words and never judged.
 */
export function readOpening(text: string): Opening {
  if (/^always open$/i.test(text.trim())) return { kind: 'always' };
  const days: Span[][] = [[], [], [], [], [], [], []];
  let months: number[] | null = null;
  for (const piece of text.split(';')) {
    const found = piece
      .trim()
      .match(
        /^((?:\d\d:\d\d-\d\d:\d\d(?: and )?)+)\s+(daily|[A-Z][a-z]{2}(?:-[A-Z][a-z]{2})?)(?:\s+([A-Z][a-z]{2})-([A-Z][a-z]{2}))?$/,
      );
    if (found === null) return { kind: 'words', text };
    const spans = [...(found[1] ?? '').matchAll(/(\d\d):(\d\d)-(\d\d):(\d\d)/g)].map(
      ([, h1, m1, h2, m2]): Span => ({ from: Number(h1) * 60 + Number(m1), to: Number(h2) * 60 + Number(m2) }),
    );
    for (const day of daysNamed(found[2] ?? '')) days[day]?.push(...spans);
    if (found[3] !== undefined && found[4] !== undefined)
      months = cycle(MONTH_NAMES, found[3], found[4]).map((i) => i + 1);
  }
  return { kind: 'week', days, months };
}

function daysNamed(text: string): number[] {
  if (text === 'daily') return [0, 1, 2, 3, 4, 5, 6];
  const [from = '', to = from] = text.split('-');
  return cycle(DAY_NAMES, from, to);
}

/** Positions from one name to another, round the end if need be. */
function cycle(names: readonly string[], from: string, to: string): number[] {
  const start = names.indexOf(from);
  const length = ((names.indexOf(to) - start + names.length) % names.length) + 1;
  return Array.from({ length }, (_, i) => (start + i) % names.length);
}

/**
 * `until` and `next` are clock times; `next` names the day when it is not today. Null: not known. `holiday`: today, or the
 * day it opens next, is a public holiday, on which a door's usual hours may not hold.
 */
export type OpenNow = {
  readonly open: boolean;
  readonly until: string | null;
  readonly next: string | null;
  readonly holiday: 'today' | 'next' | null;
};

/** Whether a place is open at an instant; null when its hours are words only. `isHoliday` is asked about days such as 2027-12-27. */
export function openAt(
  opening: Opening,
  atMs: number,
  zone: string,
  isHoliday: (day: string) => boolean,
): OpenNow | null {
  switch (opening.kind) {
    case 'words':
      return null;
    case 'always':
      return { open: true, until: null, next: null, holiday: null };
    case 'week': {
      const now = localTime(atMs, zone);
      if (opening.months !== null && !opening.months.includes(now.month))
        return { open: false, until: null, next: null, holiday: null };
      const day = dayOf(atMs, zone);
      const holiday = isHoliday(day) ? 'today' : null;
      const minute = now.hour * 60 + now.minute;
      const today = opening.days[now.weekday] ?? [];
      const current = today.find((span) => span.from <= minute && minute < span.to);
      if (current !== undefined) return { open: true, until: minuteText(current.to), next: null, holiday };
      const next = nextOpening(opening, now.weekday, minute);
      if (next === null) return { open: false, until: null, next: null, holiday };
      const then = holiday === null && isHoliday(addDays(day, next.ahead)) ? 'next' : holiday;
      return { open: false, until: null, next: next.text, holiday: then };
    }
  }
}

function nextOpening(week: Week, weekday: number, minute: number): { ahead: number; text: string } | null {
  for (let ahead = 0; ahead < 8; ahead++) {
    const spans = week.days[(weekday + ahead) % 7] ?? [];
    const span = spans.filter((each) => ahead > 0 || each.from > minute).sort((a, b) => a.from - b.from)[0];
    if (span === undefined) continue;
    const at = minuteText(span.from);
    const day = ahead === 1 ? 'tomorrow' : DAY_NAMES[(weekday + ahead) % 7];
    return { ahead, text: ahead === 0 ? at : `${day} ${at}` };
  }
  return null;
}

function minuteText(minute: number): string {
  return clockText({ hour: Math.floor(minute / 60) % 24, minute: minute % 60 });
}

/** The instant of a clock time such as '08:30' on a local day. */
export function instantOn(day: string, clock: string, zone: string): number {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return instantOf({ year, month, day: date, hour, minute }, zone);
}
