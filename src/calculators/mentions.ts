import type { Piece } from '../language/numbers.ts';
import { ALWAYS_ON, type Appliance, OWN_MISSED, singular } from './lexicon.ts';
import { type Counted, isOfADay, type Quantity } from './quantities.ts';
import { isBackground } from './supply.ts';
import { unknownThings } from './unknown-things.ts';

/** An appliance named in a text, with what was said about it. */
export type Mention = {
  readonly appliance: Appliance;
  readonly count: number;
  /** Watts said of it; null when none were. */
  readonly watts: number | null;
  /** Hours a day said of it. */
  readonly hours: number | null;
  /** A step named without a unit: 2 for 'heating on 2'; 'high' and 'low' as such. */
  readonly step: number | 'low' | 'middle' | 'high' | null;
  /** 'Without the kettle', 'heating off'. */
  readonly off: boolean;
  /** 'Heating on gas': draws nothing from the hook-up. */
  readonly onGas: boolean;
  readonly from: number;
  readonly to: number;
};

type Place = { readonly appliance: Appliance; readonly from: number; readonly to: number };

/**
 * Finds the appliances of `known` in a text; a number belongs to the nearest name. Watts said of nothing known stand alone.
 *
 * @param strange Whether what is used or plugged in under a name that is not known counts as well, without its watts.
 */
export function mentionsIn(counted: Counted, known: readonly Appliance[], strange = false): readonly Mention[] {
  const named = placesIn(counted.pieces, known);
  const all = strange ? [...named, ...strangePlaces(counted.pieces, named)].sort((a, b) => a.from - b.from) : named;
  const places = merged(all);
  const free = new Set(counted.quantities);
  const steps = places.map((place) => (place.appliance.key === 'heating' ? stepOf(counted, place, free) : null));
  const watts = bind(places, all, counted, free, 'watts');
  const plain = places.map((place, i) => watts[i] ?? wattsBehind(counted, place, free));
  const hours = bind(places, all, counted, free, 'hours');
  const onlyHours = counted.quantities.filter((quantity) => quantity.unit === 'hours' && isOfADay(quantity, counted));
  const shared = onlyHours.length === 1 ? (onlyHours[0]?.high ?? null) : wholeNight(counted.pieces);
  const lamp = known.find((each) => each.key === 'lamp');
  const mentions = places.map((place, i): Mention => {
    const count = countOf(counted, place, free) ?? countBehind(counted, place, places, free);
    // Where lamps count one by one, 'three lights' are three lamps.
    const appliance = place.appliance.key === 'lights' && count !== null && lamp !== undefined ? lamp : place.appliance;
    return {
      appliance,
      count: count ?? 1,
      watts: plain[i] ?? null,
      hours: hours[i] ?? (ALWAYS_ON.has(appliance.key) ? null : shared),
      step: steps[i] ?? null,
      off: isOff(counted.pieces, place, places),
      onGas: isOnGas(counted.pieces, place, places),
      from: place.from,
      to: place.to,
    };
  });
  return [...mentions, ...unnamed(counted, free, shared)];
}

function strangePlaces(pieces: readonly Piece[], named: readonly Place[]): readonly Place[] {
  return unknownThings(pieces, named).map(({ name, from, to }) => ({ appliance: ownThing(name, null), from, to }));
}

/** A thing of the hirer's own under a name that is not known. */
function ownThing(name: string, watts: number | null): Appliance {
  return { key: `own-${name}`, name, watts, circuit: null, missed: OWN_MISSED, phrases: [] };
}

type Name = { readonly appliance: Appliance; readonly phrase: readonly string[] };

const names = new WeakMap<readonly Appliance[], ReadonlyMap<string, readonly Name[]>>();

/** The names of what is known, by their first words; in the order of the list. */
function namesByFirstWord(known: readonly Appliance[]): ReadonlyMap<string, readonly Name[]> {
  const found = names.get(known);
  if (found !== undefined) return found;
  const made = new Map<string, Name[]>();
  for (const appliance of known) {
    for (const phrase of appliance.phrases) {
      const [first = ''] = phrase;
      const same = made.get(first);
      if (same === undefined) made.set(first, [{ appliance, phrase }]);
      else same.push({ appliance, phrase });
    }
  }
  names.set(known, made);
  return made;
}

function placesIn(pieces: readonly Piece[], known: readonly Appliance[]): readonly Place[] {
  // Hyphens never part a name: 'hair-dryer', 'air-fryer'.
  const at = pieces.flatMap((piece, i) => (piece.text === '-' ? [] : [{ word: singular(piece.text), i }]));
  const byFirst = namesByFirstWord(known);
  const places: Place[] = [];
  for (let i = 0; i < at.length; ) {
    let best: { appliance: Appliance; length: number } | null = null;
    for (const { appliance, phrase } of byFirst.get(at[i]?.word ?? '') ?? []) {
      if (phrase.length > (best?.length ?? 0) && phrase.every((word, k) => at[i + k]?.word === word))
        best = { appliance, length: phrase.length };
    }
    if (best === null || (best.length === 1 && falseFriend(pieces, at[i]?.i ?? 0))) {
      i++;
      continue;
    }
    const [from, to] = [at[i]?.i ?? 0, (at[i + best.length - 1]?.i ?? 0) + 1];
    const meant = best.length === 1 ? namedBefore(pieces, places, from) : null;
    places.push({ appliance: meant ?? best.appliance, from, to });
    i += best.length;
  }
  return places;
}

/** 'My travel hair dryer ... The dryer is 1,000 W': the thing named before, whose name ends so. */
function namedBefore(pieces: readonly Piece[], places: readonly Place[], at: number): Appliance | null {
  const [before, after] = [pieces[at - 1]?.text ?? '', pieces[at + 1]?.text ?? ''];
  if (!/^(the|that|this|her|his|my|our)$/.test(before) || !/^(is|says|draws|takes|uses|needs|,|\()$/.test(after))
    return null;
  const word = singular(pieces[at]?.text ?? '');
  const named = places.findLast(
    (place) => place.to - place.from > 1 && singular(pieces[place.to - 1]?.text ?? '') === word,
  );
  return named?.appliance ?? null;
}

/** 'Ring the yard', 'tea towel', 'electric hook-up', 'light' as in weight. */
function falseFriend(pieces: readonly Piece[], at: number): boolean {
  const [word, next] = [pieces[at]?.text, pieces[at + 1]?.text ?? ''];
  // 'Till the lights go out' is the end of the battery, not what is drawn from it.
  if (/^(lights?|telly|tv)$/.test(word ?? '')) return /^(go|goes|die|dies|dim|fade|fail|pack|stay)$/.test(next);
  if (word === 'ring') return /^(you|us|the|them|nessa)$/.test(next);
  if ((word === 'tea' || word === 'coffee') && /^(for|our|at)$/.test(pieces[at - 1]?.text ?? '')) return true;
  if (word === 'coffee') return /^(grinder|frother|pot|cup|mug|table|shop|bean|roaster)s?$/.test(next);
  if (word === 'tea') return /^(towel|light|bag|pot|urn)s?$/.test(next);
  // 'Electric' alone is the supply; 'electric 2' and 'electric on 1' are steps of the heating.
  if (word === 'electric')
    return pieces[at + 1]?.kind !== 'number' && !(next === 'on' && pieces[at + 2]?.kind === 'number');
  if (word === 'heat') return /^(the|up|water|some|a)$/.test(next) && next === 'some';
  return false;
}

/** 'Electric heating' twice, 'a brew with the kettle': one thing, named by its first place with both spans of numbers. */
function merged(places: readonly Place[]): readonly Place[] {
  return places.filter((place, i) => places.findIndex((other) => other.appliance.key === place.appliance.key) === i);
}

/** How far off a number may stand from its name, by {@link gapOf}. */
const FARTHEST = { watts: 5, hours: 8 };
/** 'It is 2.2 kW' is said of what was named last, however far back. */
const OF_IT =
  /\b(it is|it's|its|they are|they're|which is|that is|that's|thats|it says|says|rated|rated at|plate says|uses|draws)( about| around| only)?$/;

/** The quantity of a unit that belongs to each place: nearest to any mention of it, each used once. */
function bind(
  places: readonly Place[],
  all: readonly Place[],
  counted: Counted,
  free: Set<Quantity>,
  unit: 'watts' | 'hours',
): readonly (number | null)[] {
  const turns = inTurns(places, all, counted, free, unit);
  if (turns !== null) return turns;
  const result: (number | null)[] = places.map(() => null);
  for (const quantity of counted.quantities) {
    if (quantity.unit !== unit || !free.has(quantity) || (unit === 'hours' && !isOfADay(quantity, counted))) continue;
    let best = -1;
    let bestGap = Number.POSITIVE_INFINITY;
    places.forEach((place, i) => {
      // The background is counted already, whatever its plate says.
      if (result[i] !== null || (unit === 'watts' && isBackground(place.appliance.key))) return;
      const mine = all.filter((other) => other.appliance.key === place.appliance.key);
      const gap = Math.min(...mine.map((other) => gapOf(counted.pieces, other, quantity)));
      if (gap < bestGap) [best, bestGap] = [i, gap];
    });
    if (bestGap > FARTHEST[unit] && !isBracketed(counted, places[best], quantity))
      best = lastNamed(counted, places, result, quantity);
    if (best < 0) continue;
    result[best] = quantity.high;
    free.delete(quantity);
  }
  return result;
}

/**
 * Names and figures that take turns belong together in their order: 'tv 3hrs lights 4hrs'. Null when they do not, or when
 * there are not two of each.
 */
function inTurns(
  places: readonly Place[],
  all: readonly Place[],
  counted: Counted,
  free: Set<Quantity>,
  unit: 'watts' | 'hours',
): readonly number[] | null {
  const mine = counted.quantities.filter(
    (each) => each.unit === unit && free.has(each) && (unit === 'watts' || isOfADay(each, counted)),
  );
  if (places.length < 2 || mine.length !== places.length || all.length !== places.length) return null;
  const first = places.every(
    (place, i) =>
      place.to <= (mine[i]?.from ?? 0) && (places[i + 1]?.from ?? Number.POSITIVE_INFINITY) >= (mine[i]?.to ?? 0),
  );
  const behind = mine.every(
    (each, i) =>
      each.to <= (places[i]?.from ?? 0) && (mine[i + 1]?.from ?? Number.POSITIVE_INFINITY) >= (places[i]?.to ?? 0),
  );
  if (!first && !behind) return null;
  for (const each of mine) free.delete(each);
  return mine.map((each) => each.high);
}

/** 'Air fryer, 1400 W, and ...', 'hair dryer of travel, 1000 W': a figure between stops after the name it belongs to. */
function isBracketed({ pieces, quantities }: Counted, place: Place | undefined, { from, to }: Quantity): boolean {
  if (place === undefined || from - place.to < 1 || from - place.to > 4) return false;
  if (!/^[,(-]$/.test(pieces[from - 1]?.text ?? '')) return false;
  if (quantities.some((other) => other.from >= place.to && other.to < from)) return false;
  return !isNaming(pieces[to]);
}

/**
 * What was named before a figure that stands by itself: the last thing where it says 'it is 2.2 kW', or else the one thing of
 * the hirer's own that has no figure yet ('hair dryer (travel one, 1000w)'). -1 when it cannot be told.
 */
function lastNamed(
  { pieces }: Counted,
  places: readonly Place[],
  result: readonly (number | null)[],
  { from, to }: Quantity,
): number {
  const open = places.flatMap((place, i) => (place.to <= from && result[i] === null ? [i] : []));
  const before = pieces.slice(Math.max(0, from - 4), from).map((piece) => piece.text);
  if (OF_IT.test(before.join(' '))) return open.at(-1) ?? -1;
  const own = open.filter((i) => places[i]?.appliance.circuit === null && places[i]?.appliance.key !== 'heating');
  return own.length === 1 && !isNaming(pieces[to]) ? (own[0] ?? -1) : -1;
}

/** Whether what stands behind a figure names what draws it: 'a 700 W gadget'. */
function isNaming(next: Piece | undefined): boolean {
  return (
    next?.kind === 'word' &&
    !/^(of|on|for|at|in|and|while|whilst|when|if|or|is|to|with|from|we|i|all|each|as|the|plus|draw|load|please|blow|trip|do|work|be|too|go|total|altogether)$/.test(
      next.text,
    )
  );
}

/** Pieces between a name and a number; a number right before its name is nearer than one after; a comma parts. */
function gapOf(pieces: readonly Piece[], place: Place, quantity: Quantity): number {
  const before = quantity.to <= place.from;
  const [start, end] = before ? [quantity.to, place.from] : [place.to, quantity.from];
  if (end < start) return 0;
  const between = pieces.slice(start, end);
  // 'Heater on 1000 w' is said of nothing else.
  if (!before && between.length === 1 && /^(on|at|=|@)$/.test(between[0]?.text ?? '')) return 0;
  const parted = between.filter((piece) => /^(,|;|and|plus|\+|&|with|while|or)$/.test(piece.text)).length;
  return between.length + parted * 4 + (before ? 0 : 0.5);
}

/** From here on a plain number before the heating is its watts. */
const LEAST_STEP_W = 300;

function stepOf(counted: Counted, place: Place, free: Set<Quantity>): Mention['step'] {
  const { pieces } = counted;
  const window = pieces.slice(place.to, place.to + 5);
  for (const quantity of counted.quantities) {
    if (quantity.unit !== 'bare' || quantity.from < place.to || quantity.from > place.to + 4) continue;
    const between = pieces.slice(place.to, quantity.from).map((piece) => piece.text);
    if (between.some((word) => /^(and|plus|,|with|for|have|got|we)$/.test(word))) continue;
    if (
      between.length > 0 &&
      !/^(on|at|to|the|step|number|no|setting|set|level|electric|=|:|kw|-|@)$/.test(between.at(-1) ?? '')
    )
      continue;
    if (quantity.high > 5 && quantity.high < 100) continue;
    free.delete(quantity);
    return quantity.high;
  }
  // 'The 900 heating'.
  const before = counted.quantities.find(
    (quantity) => quantity.unit === 'bare' && quantity.to === place.from && quantity.high >= LEAST_STEP_W,
  );
  if (before !== undefined) {
    free.delete(before);
    return before.high;
  }
  const near = [...pieces.slice(Math.max(0, place.from - 2), place.from), ...window.slice(0, 3)].map(
    (piece) => piece.text,
  );
  if (near.some((word) => /^(full|max|maximum|high|highest|top|flat)$/.test(word))) return 'high';
  if (near.some((word) => /^(low|lowest|min|minimum|lower)$/.test(word))) return 'low';
  if (near.some((word) => /^(medium|middle|half|mid)$/.test(word))) return 'middle';
  return null;
}

/** 'Hairdryer (1000)', 'air fryer at 1400': watts without their unit. */
function wattsBehind({ pieces, quantities }: Counted, place: Place, free: Set<Quantity>): number | null {
  if (place.appliance.key === 'heating' || !/^[(@]$|^at$/.test(pieces[place.to]?.text ?? '')) return null;
  const said = quantities.find((each) => each.unit === 'bare' && free.has(each) && each.from === place.to + 1);
  if (said === undefined || said.high < LEAST_PLATE_W || said.high > MOST_PLATE_W) return null;
  free.delete(said);
  return said.high;
}

/** Between these a plain number behind a thing is its watts. */
const LEAST_PLATE_W = 100;
const MOST_PLATE_W = 3000;

/** How many of a thing were said, or null: 'two laptops'. The heating's numbers are its steps. */
function countOf(counted: Counted, place: Place, free: Set<Quantity>): number | null {
  const before = counted.quantities.find(
    (quantity) => quantity.unit === 'bare' && quantity.to === place.from && free.has(quantity),
  );
  if (before === undefined || place.appliance.key === 'heating') return null;
  free.delete(before);
  return before.high;
}

/** 'An electric blanket on each side, so two of them': the count stands behind, said of what was named last. */
function countBehind(
  { pieces, quantities }: Counted,
  place: Place,
  places: readonly Place[],
  free: Set<Quantity>,
): number | null {
  const next = places.find((other) => other.from >= place.to)?.from ?? pieces.length;
  const said = quantities.find(
    (each) =>
      each.unit === 'bare' &&
      free.has(each) &&
      each.from >= place.to &&
      each.to <= next &&
      // 'Electric blanket x2'.
      ((each.from === place.to + 1 && pieces[place.to]?.text === 'x') ||
        (pieces[each.to]?.text === 'of' && /^(them|those|these)$/.test(pieces[each.to + 1]?.text ?? ''))),
  );
  if (said === undefined || place.appliance.key === 'heating') return null;
  free.delete(said);
  return said.high;
}

function isOff(pieces: readonly Piece[], place: Place, places: readonly Place[]): boolean {
  const before = pieces
    .slice(Math.max(0, place.from - 4), place.from)
    .map((piece) => piece.text)
    .join(' ');
  const limit = places.find((other) => other.from >= place.to)?.from ?? pieces.length;
  const after = pieces
    .slice(place.to, Math.min(limit, place.to + 3))
    .map((piece) => piece.text)
    .join(' ');
  if (/without (turning|switching|having|tripping|blowing)/.test(before)) return false;
  if (
    /\b(without|except|instead of|rather than|not|no|minus|forget|skip|drop)( the| a| any| our| using)?$/.test(before)
  )
    return true;
  if (/\b(turn|switch|switched|turned|leave|take) (off|out)( the| our)?$/.test(before)) return true;
  if (/^(is |are |stays |turned |switched )?off\b(?! (the|a|our|grid|hook|-)(?!\w))/.test(after)) return true;
  return false;
}

function isOnGas(pieces: readonly Piece[], place: Place, places: readonly Place[]): boolean {
  const limit = places.find((other) => other.from >= place.to)?.from ?? pieces.length;
  const after = pieces
    .slice(place.to, Math.min(limit, place.to + 4))
    .map((piece) => piece.text)
    .join(' ');
  const before = pieces[place.from - 1]?.text;
  if (before === 'gas' && pieces[place.from - 2]?.text !== 'and') return true;
  return /^((is |are |running |set |left |to |on )*)(on |to )gas\b(?! (and|\+|plus) (the )?(electric|mains|hook))/.test(
    after,
  );
}

function wholeNight(pieces: readonly Piece[]): number | null {
  const text = pieces.map((piece) => piece.text).join(' ');
  if (
    /\b(24 7|24\/7|round the clock|non stop|nonstop|all the time|constantly|continuously|day and night|all day and (all )?night)\b/.test(
      text,
    )
  )
    return 24;
  if (/\ball day\b/.test(text)) return 12;
  if (/\b(all night|overnight|through the night|while we sleep|whole night)\b/.test(text)) return 8;
  return /\b(all evening|in the evenings?|every evening|each evening|of an evening)\b/.test(text) ? 4 : null;
}

/** Watts that belong to no known name: 'my 700 W gadget'. */
function unnamed(counted: Counted, free: ReadonlySet<Quantity>, hours: number | null): readonly Mention[] {
  return counted.quantities
    .filter((quantity) => quantity.unit === 'watts' && free.has(quantity))
    .map((quantity) => {
      const next = counted.pieces[quantity.to];
      const name = next !== undefined && isNaming(next) ? next.text : 'thing';
      const appliance = ownThing(name, quantity.high);
      return {
        appliance,
        count: 1,
        watts: quantity.high,
        hours,
        step: null,
        off: false,
        onGas: false,
        from: quantity.from,
        to: quantity.to,
      };
    });
}
