import type { InputSpec, Reading } from './input-spec.ts';
import { peopleIn } from './people.ts';
import { isOfADay, type Quantity, type Unit } from './quantities.ts';

/** The end of a range that the sum has to plan for. */
export function endOf(quantity: Quantity, spec: InputSpec): number {
  return spec.worse === 'low' ? Math.min(quantity.low, quantity.high) : Math.max(quantity.low, quantity.high);
}

/** The first quantity of a unit, near the spec's words where it has some. */
export function firstOf(unit: Unit): (reading: Reading, spec: InputSpec) => number | null {
  return (reading, spec) => {
    const quantity = reading.counted.quantities.find((each) => each.unit === unit && nearWords(reading, each, spec));
    return quantity === undefined ? null : endOf(quantity, spec);
  };
}

/** Whether one of the spec's words stands within a few pieces of the quantity. True when the spec has none. */
function nearWords(reading: Reading, quantity: Quantity, spec: InputSpec): boolean {
  if (spec.words === undefined) return true;
  const { pieces } = reading.counted;
  const before = pieces.slice(Math.max(0, quantity.from - 5), quantity.from);
  const after = pieces.slice(quantity.to, quantity.to + 4);
  return spec.words.test([...before, ...after].map((piece) => piece.text).join(' '));
}

/** Ratings that posts have: IEC 60898-1's preferred values and what sites abroad fit. */
export const RATINGS = new Set([2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 32]);

/** What posts in Britain give. */
const POSTS = new Set([6, 10, 16]);

const NO_HOOK_UP =
  /\b(no|without|without a|without any|not got|haven't got|havent got|no mains) (hook|hookup|ehu|electric|electrics|electricity|mains|power|post)\b|\boff ?-? ?grid\b|(?<!\b(run|runs|running|work|works|powered|power|live|have|use|on) )\boff (the |our |your )?(hook ?-? ?up|ehu|mains)\b|\bnot (plugged|hooked|connected)\b|\bun ?-? ?(plugged|hooked)\b|\bwild camp|\b(on|off|from|using) (the )?(leisure )?battery\b|\bno hook ?-? ?up\b|\bbattery (only|alone)\b/;
const POST_WORDS =
  /^(post|pitch|site|supply|hook|hookup|ehu|bollard|pedestal|says|say|said|gives|rated|ampage|amps|socket|plug|marked|reads|campsite)$/;

/** What may follow a rating that is said without its unit: 'we're on a 16, what can we use'. */
const AFTER_RATING =
  /^$|^[?.,!]$|^(site|post|hook|pitch|pole|for|with|here|so|can|what|whats|and|is|will|tonight|enough|ok|okay|alright|sufficient|plenty)$/;

export function readAmps(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const said = quantities.find(
    (each) =>
      each.unit === 'amps' &&
      (!/^(fuse|plug|breaker|fuses|charger|hours?)$/.test(pieces[each.to]?.text ?? '') ||
        // People call the post's breaker its fuse.
        (POSTS.has(each.high) && /^(fuse|breaker)$/.test(pieces[each.to]?.text ?? ''))),
  );
  if (said !== undefined) return endOf(said, spec);
  if (NO_HOOK_UP.test(reading.text)) return 0;
  for (const each of quantities) {
    if (each.unit !== 'bare') continue;
    const before = pieces.slice(Math.max(0, each.from - 4), each.from).map((piece) => piece.text);
    const next = pieces[each.to]?.text ?? '';
    if (RATINGS.has(each.high) && /^(hook|hookup|ehu|post|pole|pitch|bollard)$/.test(next)) return each.high;
    if (/^(people|adults?|kids?|of|nights?|days?|degrees?)$/.test(next) || isWeather(each, before, next)) continue;
    if (before.some((word) => isOfPost(word, before)) && !before.some((word) => /^(heating|heater|boiler)$/.test(word)))
      return each.high;
    if (
      RATINGS.has(each.high) &&
      each.high >= 4 &&
      /\b(is|on|on a|got|have|only|just got|only got|a)$/.test(before.join(' ')) &&
      AFTER_RATING.test(next)
    )
      return each.high;
  }
  return null;
}

/** 'Up' is a post's only in 'hook up'. */
function isOfPost(word: string, before: readonly string[]): boolean {
  return POST_WORDS.test(word) || (word === 'up' && before.includes('hook'));
}

/** 'The forecast says 3 tonight' is no post. */
function isWeather(number: Quantity, before: readonly string[], next: string): boolean {
  return (
    number.high < 0 ||
    before.some((word) => /^(forecast|weather|temperature|temp|thermometer|outside|frost|degrees)$/.test(word)) ||
    /^(tonight|tomorrow|overnight|outside|out)$/.test(next)
  );
}

export function readPeople(reading: Reading): number | null {
  const said = peopleIn(reading.counted);
  if (said === null) return null;
  return said.people ?? (reading.asked === 'people' ? said.children : null);
}

export function readNights(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  if (/\blong weekend\b/.test(reading.text)) return 3;
  for (const each of quantities) {
    if (each.unit === 'hours' && !isOfADay(each, reading.counted)) return each.high / 24;
    if (each.unit !== 'nights') continue;
    const article = /^(a|an)$/.test(pieces[each.from]?.text ?? '') && each.to - each.from === 2;
    const before = pieces[each.from - 1]?.text ?? '';
    if (
      article &&
      (each.high === 1 ||
        !/^(for|last|lasts|lasting|of|be|about|us|whole|here|than|over|through|battery|gas|bottle|it|days?)$/.test(
          before,
        ))
    )
      continue;
    return endOf(each, spec);
  }
  if (/\b(the|all|this) weekend\b/.test(reading.text)) return 2;
  if (/\b(for the|all|the whole|whole|the full|rest of the) week\b/.test(reading.text)) return 7;
  if (/\b(for the|a) fortnight\b/.test(reading.text)) return 14;
  if (spec.words?.test(reading.text) === true) return 1;
  return null;
}

export function readHours(reading: Reading, spec: InputSpec): number | null {
  const said = reading.counted.quantities.find(
    (each) => each.unit === 'hours' && isOfADay(each, reading.counted) && nearWords(reading, each, spec),
  );
  if (said !== undefined) return endOf(said, spec);
  return clockSpan(reading);
}

/** Hours between two clock times: 'from 6pm to 8am' is 14. */
function clockSpan(reading: Reading): number | null {
  const clocks = reading.counted.pieces
    .filter((piece) => piece.kind === 'clock')
    .map((piece) => clockHours(piece.text));
  const [start, end] = clocks;
  if (start === undefined || end === undefined) return null;
  return (end - start + 24) % 24 || 24;
}

function clockHours(text: string): number {
  const [, hour = '0', minute = '0', half] = /^(\d{1,2})(?:[:.](\d{2}))?\s?([ap]m)?$/.exec(text) ?? [];
  const base = half === undefined ? Number(hour) : (Number(hour) % 12) + (half === 'pm' ? 12 : 0);
  return base + Number(minute) / 60;
}

const SHARES: readonly (readonly [RegExp, number])[] = [
  [/\b(three quarters|3 ?\/ ?4)( full| left| of|$)/, 75],
  [/\b(two thirds|2 ?\/ ?3)( full| left| of|$)/, 67],
  [/\b(a third|one third|1 ?\/ ?3)( full| left| of|$)/, 33],
  [/\b(a quarter|one quarter|quarter|1 ?\/ ?4)( full| left| of|$)/, 25],
  [
    /\b(half|1 ?\/ ?2)( charge| battery| a tank| full| empty| left| gone| used| charged| of it| the| way|$)|\b(about|at|down to|to|only|on) half\b/,
    50,
  ],
];

/** In reply to 'how full is it?'. */
const WHEN_ASKED: readonly (readonly [RegExp, number])[] = [
  [/\b(nearly|almost) (empty|gone|out)\b/, 10],
  [/\b(nearly|almost) full\b/, 90],
  [/\bempty\b/, 0],
  [/\bfull\b/, 100],
];

export function readPercent(reading: Reading, spec: InputSpec): number | null {
  const said = firstOf('percent')(reading, spec);
  if (said !== null) return said;
  const share = SHARES.find(([pattern]) => pattern.test(reading.text))?.[1] ?? null;
  if (share !== null || reading.asked !== spec.name) return share;
  return WHEN_ASKED.find(([pattern]) => pattern.test(reading.text))?.[1] ?? null;
}

export function readSlope(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const said = quantities.find((each) => each.unit === 'degrees' || each.unit === 'celsius');
  if (said !== undefined) return endOf(said, spec);
  const ratio = /\b1 in (\d+)\b/.exec(reading.text);
  if (ratio !== null) return (Math.atan(1 / Number(ratio[1])) * 180) / Math.PI;
  const bare = quantities.find(
    (each) => each.unit === 'bare' && /^(out|off|level|lean|leaning)$/.test(pieces[each.to]?.text ?? ''),
  );
  return bare === undefined ? null : endOf(bare, spec);
}

/** From this on a plain number may be a weight: 'my car is 1600'. */
const LEAST_BARE_KG = 100;

/** A weight in kilograms, by the words of its own part of the sentence. */
export function readWeight(reading: Reading, spec: InputSpec): number | null {
  const candidates = reading.counted.quantities.filter(
    (each) =>
      each.unit === 'kg' ||
      (each.unit === 'bare' &&
        (reading.asked === spec.name || Math.abs(each.high) >= LEAST_BARE_KG || spec.words !== undefined)),
  );
  for (const each of candidates) {
    const part = partAround(reading, each);
    if (spec.unless?.test(part) === true) continue;
    if (spec.words !== undefined && !spec.words.test(part) && reading.asked !== spec.name) continue;
    return endOf(each, spec);
  }
  return null;
}

/**
 * The words of a quantity's own part of the sentence, up to a comma, 'and' or 'but'. Words between two quantities
 * belong to the second: 'car 1,700 kg towing limit 1,350'.
 */
function partAround(reading: Reading, quantity: Quantity): string {
  const { pieces, quantities } = reading.counted;
  const isOther = (i: number) => quantities.some((other) => other !== quantity && i >= other.from && i < other.to);
  const stops = (i: number) => /^(,|;|\.|and|but|\?)$/.test(pieces[i]?.text ?? '') || isOther(i);
  let from = quantity.from;
  while (from > 0 && !stops(from - 1)) from--;
  let to = quantity.to;
  while (to < pieces.length && !stops(to)) to++;
  if (isOther(to) && from < quantity.from) to = quantity.to;
  return pieces
    .slice(from, to)
    .map((piece) => piece.text)
    .join(' ');
}
export function readFlag(reading: Reading, spec: InputSpec): boolean | null {
  if (spec.unless?.test(reading.text) === true) return false;
  return spec.words?.test(reading.text) === true ? true : null;
}

/** A plain number beside its word: '2 showers', 'three tanks'. */
export function readCount(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const found = quantities.find(
    (each) =>
      each.unit === 'bare' &&
      spec.words?.test([pieces[each.to]?.text, pieces[each.to + 1]?.text, pieces[each.to + 2]?.text].join(' ')) ===
        true,
  );
  return found === undefined ? null : endOf(found, spec);
}
