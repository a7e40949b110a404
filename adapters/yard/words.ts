import { type Booking, daysBetween, type Reason } from '../../src/index.ts';
import { dayName, nightsWords, waited } from '../pages/when.ts';
import type { Field, Parked, Watched } from './field.ts';

/** Why people have it, as one says it across the yard. */
export const REASONS: Readonly<Record<Reason, string>> = {
  unsure: 'the bot was not sure',
  asked: 'asked for a person',
  safety: 'someone may be in danger',
  'not-fixed': 'tried everything, still not right',
  'staff-only': 'only we can do it',
  language: 'writes in another language',
};

/** 'waits 12 min, 18 to go', 'Gethin has it'. */
export function watchWords(watched: Watched): string {
  if (watched.keeper === 'staff') return `${watched.thread.keeperName ?? 'A colleague'} has it`;
  const wait = watched.waitedMs < 60_000 ? 'waits since just now' : `waits ${waited(watched.waitedMs)}`;
  if (watched.share === null) return `${wait}, ${watched.danger ? 'nobody on duty' : 'until the office opens'}`;
  // In danger every minute counts, and none is to go.
  if (watched.danger || watched.share <= 0) return wait;
  const aimMs = watched.waitedMs / watched.share;
  const left = aimMs - watched.waitedMs;
  return left >= 0 ? `${wait}, ${waited(left + 59_999)} to go` : `${wait}, ${waited(-left)} late`;
}

export function stayWords(parked: Parked): string {
  if (parked.booking === null) return 'not out';
  if (parked.today === 'arrives') return 'goes out today';
  return parked.nightsLeft === null ? 'touring' : nightsWords(parked.nightsLeft);
}

/** Of somebody at the gate: which hire it is, whose van is home, with the next hirer, or not out yet. */
export function gateWords(booking: Booking | null, { vans, today }: Pick<Field, 'vans' | 'today'>): string {
  if (booking === null) return 'no booking yet';
  const van = vans.get(booking.van)?.name ?? booking.van;
  if (booking.from > today) return `${van}, goes out ${dayName(booking.from)}`;
  if (booking.to === null) return van;
  const days = daysBetween(booking.to, today);
  return `${van}, ${days <= 0 ? 'home today' : days === 1 ? 'home since yesterday' : `home since ${dayName(booking.to)}`}`;
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
