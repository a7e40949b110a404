import { addDays, clockText, dayOf, daysBetween, localTime, weekdayOf } from '../basics/time.ts';
import type { FirmData } from '../knowledge/schema.ts';
import { instantOn } from './opening.ts';

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;
type Weekday = (typeof WEEKDAYS)[number];

/**
 * Who of the firm answers now. `open`: the office. `on-call`: one person, for emergencies and 'cannot stay the night'.
 * `closed`: nobody. `untilMs` is when that changes; `opensMs` when the office next opens (now, while it is open).
 */
export type Staffed = {
  readonly kind: 'open' | 'on-call' | 'closed';
  readonly untilMs: number;
  readonly opensMs: number;
};

export function staffedAt(firm: FirmData, nowMs: number): Staffed {
  const today = dayOf(nowMs, firm.timeZone);
  const opensMs = nextOpening(firm, nowMs);
  const office = officeHours(firm, today);
  if (office !== null && nowMs >= office.fromMs && nowMs < office.toMs) {
    return { kind: 'open', untilMs: office.toMs, opensMs: nowMs };
  }
  const onCall = spanOn(today, firm.onCall, firm.timeZone);
  if (nowMs >= onCall.fromMs && nowMs < onCall.toMs) return { kind: 'on-call', untilMs: onCall.toMs, opensMs };
  const untilMs = nowMs < onCall.fromMs ? Math.min(opensMs, onCall.fromMs) : opensMs;
  return { kind: 'closed', untilMs, opensMs };
}

/** The next instant at which the office opens; `nowMs` itself while it is open. */
function nextOpening(firm: FirmData, nowMs: number): number {
  let day = dayOf(nowMs, firm.timeZone);
  for (let tries = 0; tries < 370; tries++, day = addDays(day, 1)) {
    const office = officeHours(firm, day);
    if (office === null || office.toMs <= nowMs) continue;
    return Math.max(office.fromMs, nowMs);
  }
  throw new Error(`the firm never opens in the year after ${day}: look at hours and closed in firm.yaml`);
}

type SpanMs = { readonly fromMs: number; readonly toMs: number };

function officeHours(firm: FirmData, day: string): SpanMs | null {
  if (firm.closed.some((closed) => day === closed || day.slice(5) === closed)) return null;
  const hours = firm.hours[weekdayNamed(day)];
  return hours === undefined ? null : spanOn(day, hours, firm.timeZone);
}

function spanOn(day: string, hours: { readonly from: string; readonly to: string }, zone: string): SpanMs {
  return { fromMs: instantOn(day, hours.from, zone), toMs: instantOn(day, hours.to, zone) };
}

function weekdayNamed(day: string): Weekday {
  return WEEKDAYS[weekdayOf(day)] ?? 'sun';
}

/** Who of the firm may be told now, best first: the reason decides in office hours, the rota on call. */
export function peopleToTell(
  firm: FirmData,
  nowMs: number,
  wants: 'office' | 'workshop',
): readonly FirmData['people'][number][] {
  const staffed = staffedAt(firm, nowMs);
  const weekday = weekdayNamed(dayOf(nowMs, firm.timeZone));
  if (staffed.kind === 'on-call') return firm.people.filter((person) => person.onCall.includes(weekday));
  if (staffed.kind === 'closed') return [];
  const present = firm.people.filter((person) => person.days.includes(weekday));
  return [...present].sort((a, b) => Number(b.does.includes(wants)) - Number(a.does.includes(wants)));
}

/** 08:30, or tomorrow 08:30, or Sun 08:30: when something is, as seen from now. */
export function whenText(atMs: number, nowMs: number, zone: string): string {
  const clock = clockText(localTime(atMs, zone));
  const ahead = daysBetween(dayOf(nowMs, zone), dayOf(atMs, zone));
  if (ahead === 0) return clock;
  if (ahead === 1) return `tomorrow at ${clock}`;
  const day = weekdayNamed(dayOf(atMs, zone));
  return ahead < 7 ? `${day[0]?.toUpperCase()}${day.slice(1)} at ${clock}` : `${dayOf(atMs, zone)} at ${clock}`;
}
