import { localTime } from '../basics/time.ts';
import { openAt, readOpening } from '../hours/opening.ts';
import type { AnswerData, PlacesData } from '../knowledge/schema.ts';
import type { AnswerContext } from './answer-context.ts';

type Place = PlacesData['sites'][string]['places'][number];

/**
 * The places an answer lists: nearest first, with distance, hours and whether open now. For gas only those that have
 * this van's gas. Empty when the site is not known.
 */
export function placeLines(wanted: NonNullable<AnswerData['places']>, context: AnswerContext): string[] {
  if (context.site === null) return [];
  const gas = gasOf(context);
  return context.site.places
    .filter((place) => wanted.kinds.includes(place.kind))
    .filter(
      (place) => place.kind !== 'gas-exchange' || gas === null || place.gas.length === 0 || place.gas.includes(gas),
    )
    .sort((a, b) => a.metres - b.metres)
    .slice(0, wanted.most)
    .map((place) => placeLine(place, context));
}

/** The van's gas as exchanges list it, such as propane-6; null when the van has none. */
function gasOf({ scope, nowMs, knowledge }: AnswerContext): string | null {
  const gas = scope.data.figures.gas;
  if (gas === undefined) return null;
  const month = localTime(nowMs, knowledge.firm.timeZone).month;
  const carried = gas.winter?.months.includes(month) === true ? gas.winter : gas;
  return `${carried.kind}-${carried.carriedKg / gas.cylinders}`;
}

function placeLine(place: Place, { nowMs, knowledge }: AnswerContext): string {
  const parts = [`${place.name}, ${distanceText(place.metres)}`];
  if (place.hours !== '') parts.push(hoursText(place.hours, nowMs, knowledge.firm.timeZone));
  if (place.note !== '') parts.push(place.note);
  return parts.join('. ');
}

function hoursText(hours: string, nowMs: number, zone: string): string {
  const now = openAt(readOpening(hours), nowMs, zone);
  if (now === null) return hours;
  if (now.open) return now.until === null ? 'Always open' : `Open now until ${now.until} (${hours})`;
  return now.next === null ? `Closed now (${hours})` : `Closed now, opens ${now.next} (${hours})`;
}

/** Metres under a kilometre; above it kilometres and miles, because the signs outside are in miles. */
export function distanceText(metres: number): string {
  if (metres < 1000) return `${metres} m`;
  const km = metres / 1000;
  const miles = metres / 1609.344;
  return `${km.toFixed(km < 10 ? 1 : 0)} km (${miles.toFixed(miles < 10 ? 1 : 0)} miles)`;
}
