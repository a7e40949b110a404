import type { Constants, Figures } from '../knowledge/schema.ts';
import type { Load } from './kept.ts';
import { FLAT_CHARGE } from './lexicon.ts';

/** What a load does to a breaker, by its share of the rating. */
export type LoadVerdict = 'fits' | 'over' | 'may-trip' | 'will-trip';

/**
 * Conventional currents of a circuit breaker as multiples of its rating, IEC/EN 60898-1: it holds 1.13 for an hour and
 * trips within the hour at 1.45. Between the two the standard leaves it open; no time in seconds can be told.
 */
export const HOLDS = 1.13;
export const TRIPS = 1.45;
/** So that 2,300 W on 10 A at 230 V is exactly the rating, whatever the floating point says. */
const TINY = 1e-9;

/** `share` of a rating: to 1 it fits, to 1.13 it is over but holds, to 1.45 it may trip, above it will. */
export function loadVerdict(share: number): LoadVerdict {
  if (share <= 1 + TINY) return 'fits';
  if (share <= HOLDS + TINY) return 'over';
  return share <= TRIPS + TINY ? 'may-trip' : 'will-trip';
}

/** I = P / V. */
export function ampsOf(watts: number, volts: number): number {
  return watts / volts;
}

/** P = V x I, power factor 1. */
export function wattsOf(amps: number, volts: number): number {
  return amps * volts;
}

/** What a heating element rated at `ratedW` gives at another voltage: power goes with its square. */
export function heaterW(ratedW: number, ratedV: number, actualV: number): number {
  return ratedW * (actualV / ratedV) ** 2;
}

/** Resistance there and back of a lead, in ohms. */
export function loopOhms(lengthM: number, ohmPerKm: number): number {
  return (2 * lengthM * ohmPerKm) / 1000;
}

/** Volts lost in a lead of `ohms` at `amps`. */
export function dropV(ohms: number, amps: number): number {
  return ohms * amps;
}

/** The id of the post among the limits; the others are the van's breakers. */
export const POST = 'post';

/** A limit and the share of it that is used. */
export type Limit = {
  readonly id: string;
  readonly name: string;
  readonly amps: number;
  readonly usedW: number;
  readonly share: number;
};

/**
 * The post and each of the van's breakers with what the loads put on them, the background included.
 * Things plugged in count on the breaker of the sockets. Loads without watts count nothing.
 */
export function limitsOf(
  loads: readonly Load[],
  amps: number,
  figures: Figures,
  constants: Constants,
): readonly Limit[] {
  const { mains } = figures;
  const background = backgroundOn(figures);
  const used = new Map<string, number>(background);
  for (const load of loads) {
    if (isBackground(load.key)) continue;
    const id = breakerOf(load.key, figures);
    used.set(id, (used.get(id) ?? 0) + drawW(load));
  }
  const totalW =
    mains.backgroundW + loads.filter((load) => !isBackground(load.key)).reduce((sum, load) => sum + drawW(load), 0);
  const limit = (id: string, name: string, rating: number, usedW: number): Limit => ({
    id,
    name,
    amps: rating,
    usedW,
    share: rating === 0 ? (usedW > 0 ? Number.POSITIVE_INFINITY : 0) : ampsOf(usedW, constants.volts) / rating,
  });
  return [
    limit(POST, 'the post', amps, totalW),
    ...mains.breakers.map((breaker) =>
      limit(breaker.id, `the van's ${breaker.name}`, breaker.amps, used.get(breaker.id) ?? 0),
    ),
  ];
}

/** Watts of a load with its count; nothing for one whose plate is not known. */
export function drawW(load: Load): number {
  return (load.watts ?? 0) * load.count;
}

/** The fridge and the charger are on whenever the van is hooked up and already counted. */
export function isBackground(key: string): boolean {
  return key === 'fridge' || key === 'charger';
}

/** What nobody switches off to make room: the background, and the charger at work. */
export function staysOn(key: string): boolean {
  return isBackground(key) || key === FLAT_CHARGE;
}

function backgroundOn(figures: Figures): readonly (readonly [string, number])[] {
  const sums = new Map<string, number>();
  for (const key of ['fridge', 'charger']) {
    const load = figures.mains.loads[key];
    if (load !== undefined) sums.set(load.circuit, (sums.get(load.circuit) ?? 0) + load.watts);
  }
  return [...sums];
}

/** What stands on a limit: the background's share of it and the loads named. For the post that is all of them. */
export function onLimit(
  limit: Limit,
  loads: readonly Load[],
  figures: Figures,
): { readonly backgroundW: number; readonly loads: readonly Load[] } {
  const named = loads.filter((load) => !isBackground(load.key));
  if (limit.id === POST) return { backgroundW: figures.mains.backgroundW, loads: named };
  return {
    backgroundW: new Map(backgroundOn(figures)).get(limit.id) ?? 0,
    loads: named.filter((load) => breakerOf(load.key, figures) === limit.id),
  };
}

/** The breaker behind a load; the sockets' for everything that is not wired in. */
function breakerOf(key: string, figures: Figures): string {
  const { loads, breakers } = figures.mains;
  if (key === FLAT_CHARGE) return breakerOf('charger', figures);
  const wired =
    key === 'heating'
      ? Object.entries(loads).find(([id]) => id.startsWith('heating-'))?.[1].circuit
      : loads[key]?.circuit;
  return wired ?? breakers.find((breaker) => breaker.feeds.includes('sockets'))?.id ?? breakers[0]?.id ?? POST;
}

/** The limit that is furthest past its rating; the post when none is, or when they are equal. */
export function tightest(limits: readonly Limit[]): Limit {
  const [first, ...rest] = limits;
  if (first === undefined) throw new Error('a van has at least the post as a limit');
  return rest.reduce((worst, limit) => (limit.share > Math.max(1, worst.share) + TINY ? limit : worst), first);
}
