import { type Booking, dayOf, daysBetween, type Keeper, localTime, MINUTE_MS, type Thread } from '../../src/index.ts';
import type { VanSight } from '../pages/silhouettes.tsx';

/*
 * The day as the yard sees it: which van stands where, who waits and how long, who comes and goes. Plain data worked out
 * from the store's rows; field-view.tsx and list-view.tsx show the same thing twice.
 */

/** A thread that people have or should have. */
export type Watched = {
  readonly thread: Thread;
  readonly booking: Booking | null;
  readonly danger: boolean;
  readonly keeper: Exclude<Keeper, 'bot'>;
  readonly waitedMs: number;
  /** Waiting time against the aim: 1 is the aim itself; null when nobody is on duty. */
  readonly share: number | null;
};

export type Parked = {
  readonly id: string;
  readonly van: VanSight;
  /** Null for a van at home. */
  readonly booking: Booking | null;
  readonly nightsLeft: number | null;
  readonly today: 'arrives' | 'leaves' | null;
  /** What matters most of its threads; null when all is quiet. */
  readonly watched: Watched | null;
};

export type Strip = {
  readonly id: string;
  readonly name: string;
  readonly kind: 'site' | 'road' | 'home';
  readonly parked: readonly Parked[];
  readonly danger: boolean;
};

export type Gate = { readonly out: readonly Booking[]; readonly back: readonly Booking[] };

export type Field = {
  /** The day at the yard, as 2027-07-27. */
  readonly today: string;
  readonly vans: ReadonlyMap<string, VanSight>;
  readonly strips: readonly Strip[];
  /** Watched threads of nobody we know, or of a hire whose van is not out with them now. */
  readonly unknown: readonly Watched[];
  /** Everything watched: danger first, then who has waited longest against the aim, then what staff have. */
  readonly watched: readonly Watched[];
  readonly gate: Gate;
};

export type FieldFacts = {
  readonly bookings: readonly Booking[];
  /** Those that wait or are with staff. */
  readonly threads: readonly Thread[];
  readonly vans: ReadonlyMap<string, VanSight>;
  readonly sites: ReadonlyMap<string, string>;
  readonly aimMinutes: (thread: Thread) => number | null;
  readonly timeZone: string;
};

/** Vans are back by ten; at noon the next hirer's booking is the one that counts. */
const CHANGE_OVER_HOUR = 12;

export function fieldAt(facts: FieldFacts, nowMs: number): Field {
  const today = dayOf(nowMs, facts.timeZone);
  const hour = localTime(nowMs, facts.timeZone).hour;
  const byRef = new Map(facts.bookings.map((booking) => [booking.ref, booking]));
  const watched = facts.threads
    .flatMap((thread) => watch(thread, byRef.get(thread.booking ?? '') ?? null, facts.aimMinutes, nowMs) ?? [])
    .sort(byWorry);

  const parked = [...facts.vans].map(([id, van]): Parked => {
    const booking = currentOf(facts.bookings, id, today, hour);
    return {
      id,
      van,
      booking,
      nightsLeft: booking?.to == null ? null : daysBetween(today, booking.to),
      today: booking?.from === today ? 'arrives' : booking?.to === today ? 'leaves' : null,
      watched: booking === null ? null : (watched.find((one) => one.booking?.ref === booking.ref) ?? null),
    };
  });

  return {
    today,
    vans: facts.vans,
    strips: stripsOf(parked, facts.sites),
    // A hirer whose van is home again, or who has not told us which it is, stands at the gate.
    unknown: watched.filter(
      (one) => !parked.some((van) => van.booking !== null && van.booking.ref === one.booking?.ref),
    ),
    watched,
    gate: {
      out: facts.bookings.filter((booking) => booking.from === today),
      back: facts.bookings.filter((booking) => booking.to === today),
    },
  };
}

/** A thread as the yard watches it; null for one that the bot has. */
export function watch(
  thread: Thread,
  booking: Booking | null,
  aimMinutes: FieldFacts['aimMinutes'],
  nowMs: number,
): Watched | null {
  if (thread.keeper === 'bot') return null;
  const waitedMs = Math.max(0, nowMs - thread.sinceMs);
  const aim = aimMinutes(thread);
  const share = aim === null ? null : waitedMs / (aim * MINUTE_MS);
  return { thread, booking, danger: thread.reason === 'safety', keeper: thread.keeper, waitedMs, share };
}

/** Untaken danger, taken danger, untaken, taken; within each the one nearest to or furthest past its aim. */
function byWorry(a: Watched, b: Watched): number {
  const rank = (one: Watched) => (one.danger ? 0 : 2) + (one.keeper === 'waiting' ? 0 : 1);
  return rank(a) - rank(b) || (b.share ?? 0) - (a.share ?? 0) || b.waitedMs - a.waitedMs;
}

/** The booking a van is out on today, if any; on a day with two, the one that has it at this hour. */
function currentOf(bookings: readonly Booking[], van: string, today: string, hour: number): Booking | null {
  const here = bookings.filter((one) => one.van === van && one.from <= today && (one.to === null || one.to >= today));
  const leaving = here.find((one) => one.to === today);
  const staying = here.find((one) => one.to !== today);
  return (hour < CHANGE_OVER_HOUR ? (leaving ?? staying) : (staying ?? leaving)) ?? null;
}

function stripsOf(parked: readonly Parked[], sites: ReadonlyMap<string, string>): readonly Strip[] {
  const onSite = [...sites].map(([id, name]) =>
    strip(
      id,
      name,
      'site',
      parked.filter((one) => one.booking?.site === id),
    ),
  );
  const road = strip(
    'road',
    'On the road',
    'road',
    parked.filter((one) => one.booking !== null && !sites.has(one.booking.site ?? '')),
  );
  const home = strip(
    'home',
    'Home',
    'home',
    parked.filter((one) => one.booking === null),
  );
  const occupied = [...onSite, road].filter((one) => one.parked.length > 0);
  return [...occupied.sort((a, b) => urgency(a) - urgency(b)), ...(home.parked.length > 0 ? [home] : [])];
}

/** Strips with danger stand first, then those where somebody waits; the rest keep their places. */
function urgency({ danger, parked }: Strip): number {
  if (danger) return 0;
  return parked.some((one) => one.watched?.keeper === 'waiting') ? 1 : 2;
}

function strip(id: string, name: string, kind: Strip['kind'], parked: readonly Parked[]): Strip {
  return { id, name, kind, parked, danger: parked.some((one) => one.watched?.danger === true) };
}
