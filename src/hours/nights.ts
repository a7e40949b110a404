import { dayOf, daysBetween } from '../basics/time.ts';

/** Nights from today until the day of return, as the firm's calendar has it; null when that day is not known. */
export function nightsLeft(to: string | null, nowMs: number, zone: string): number | null {
  return to === null ? null : Math.max(0, daysBetween(dayOf(nowMs, zone), to));
}
