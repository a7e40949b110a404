import { localTime } from '../basics/time.ts';
import { openAt, readOpening } from '../hours/opening.ts';
import { isPublicHoliday } from '../hours/public-holidays.ts';
import type { AnswerData, PlacesData } from '../knowledge/schema.ts';
import type { AnswerContext } from './answer-context.ts';

type Place = PlacesData['sites'][string]['places'][number];

/**
 * The places an answer lists: nearest first, with distance, hours and whether open now. For gas only those that have
 * this van's gas. Never empty: without a site, or a place near it, it says so.
 */
export function placeLines(wanted: NonNullable<AnswerData['places']>, context: AnswerContext): string[] {
  const { site } = context;
  if (site === null)
    return ["I do not know which site you are on. Ask at the site's office, or look at the board by its entrance."];
  const gas = gasOf(context);
  const fitting = site.places
    .filter((place) => wanted.kinds.includes(place.kind))
    .filter(
      (place) => place.kind !== 'gas-exchange' || gas === null || place.gas.length === 0 || place.gas.includes(gas),
    )
    .sort((a, b) => a.metres - b.metres);
  const several = wanted.kinds.length > 1;
  const lines = nearestOfEachKindFirst(fitting)
    .slice(0, wanted.most)
    .map((place) => `${several ? `${kindText(place.kind)}: ` : ''}${placeLine(place, several, context)}`);
  return lines.length > 0 ? lines : [`I have none on my list near ${site.name}. Ask at the site's office.`];
}

/** One of each kind, nearest first, before a second of any: a list of tap and emptying point names both. */
function nearestOfEachKindFirst(places: readonly Place[]): readonly Place[] {
  const isFirst = (place: Place): boolean => places.find((each) => each.kind === place.kind) === place;
  return [...places.filter(isFirst), ...places.filter((place) => !isFirst(place))];
}

/** minor-injuries as 'Minor injuries'. */
function kindText(kind: string): string {
  return capital(kind.replaceAll('-', ' '));
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The van's gas as exchanges list it, such as propane-6; null when the van has none. */
function gasOf({ scope, nowMs, knowledge }: AnswerContext): string | null {
  const gas = scope.data.figures.gas;
  if (gas === undefined) return null;
  const month = localTime(nowMs, knowledge.firm.timeZone).month;
  const carried = gas.winter?.months.includes(month) === true ? gas.winter : gas;
  return `${carried.kind}-${carried.carriedKg / gas.cylinders}`;
}

function placeLine(place: Place, severalKinds: boolean, { nowMs, knowledge }: AnswerContext): string {
  const name = severalKinds ? place.name : capital(place.name);
  const parts = [`${name}, ${distanceText(place.metres)}`];
  if (place.hours !== '') parts.push(hoursText(place.hours, nowMs, knowledge.firm.timeZone));
  if (place.note !== '') parts.push(capital(place.note));
  return parts.join('. ');
}

function hoursText(hours: string, nowMs: number, zone: string): string {
  const now = openAt(readOpening(hours), nowMs, zone, isPublicHoliday);
  if (now === null) return hours;
  if (now.open && now.until === null) return 'Always open';
  if (now.holiday === 'today') return `Usual hours ${hours}, but today is a public holiday, so it may be closed`;
  if (now.open) return `Open now until ${now.until} (${hours})`;
  if (now.next === null) return `Closed now (${hours})`;
  const holiday = now.holiday === 'next' ? ', a public holiday, so it may stay closed' : '';
  return `Closed now, opens ${now.next}${holiday} (${hours})`;
}

/** Metres under a kilometre; above it kilometres and miles, because the signs outside are in miles. */
export function distanceText(metres: number): string {
  if (metres < 1000) return `${metres} m`;
  const km = metres / 1000;
  const miles = metres / 1609.344;
  return `${km.toFixed(km < 10 ? 1 : 0)} km (${miles.toFixed(miles < 10 ? 1 : 0)} miles)`;
}
