import type { Constants, Figures } from '../knowledge/schema.ts';
import type { Piece } from '../language/numbers.ts';
import { singular, words } from './lexicon.ts';
import { type PeopleSaid, peopleIn } from './people.ts';
import type { Counted, Quantity } from './quantities.ts';

/** Something to carry: 'bike' twice is 28 kg. */
export type Thing = { readonly key: string; readonly name: string; readonly count: number; readonly kg: number };

type Known = {
  readonly key: string;
  readonly name: string;
  readonly kg: number;
  readonly phrases: readonly (readonly string[])[];
};

/** Things that are people; they weigh only where they ride in the van. */
const PEOPLE_KEYS = new Set(['adult', 'child', 'adult-kit', 'child-kit', 'food-for-two', 'water-litre']);
const ALSO: Readonly<Record<string, readonly string[]>> = {
  bike: ['bike', 'bicycle', 'cycle', 'push bike', 'mountain bike', 'kids bike'],
  chair: [
    'chair',
    'camp chair',
    'camping chair',
    'deck chair',
    'deckchair',
    'garden chair',
    'folding chair',
    'outdoor chair',
  ],
  'camp-table': ['camp table', 'camping table', 'folding table', 'picnic table', 'outdoor table'],
  'spare-cylinder': [
    'spare gas',
    'extra gas',
    'gas bottle',
    'gas cylinder',
    'spare cylinder',
    'extra cylinder',
    'second cylinder',
    'cylinder',
  ],
};

/** Stand for everybody's clothes and food until it is known how many there are. */
const KIT_EACH = 'kit-each';
const FOOD_EACH = 'food-each';

/** Whether some of the things go by the head and the heads are not yet counted. */
export function goByHead(things: readonly Thing[]): boolean {
  return things.some(({ key }) => key === KIT_EACH || key === FOOD_EACH);
}

/** The things with clothes and food counted for `people`, of whom `children` are children. */
export function spread(
  things: readonly Thing[],
  people: number,
  children: number,
  constants: Constants,
): readonly Thing[] {
  return things.flatMap((thing) => {
    if (thing.key === KIT_EACH) return kitOf(people, children, constants);
    return thing.key === FOOD_EACH ? [foodOf(people, constants)] : [thing];
  });
}

function kitOf(people: number, children: number, constants: Constants): readonly Thing[] {
  const each = (key: string, name: string, count: number): Thing[] =>
    count > 0 ? [{ key, name, count, kg: constants.things[key]?.kg ?? 0 }] : [];
  return [
    ...each('adult-kit', "adult's clothes and kit", people - children),
    ...each('child-kit', "child's clothes and kit", children),
  ];
}

function foodOf(people: number, constants: Constants): Thing {
  return { key: 'food', name: 'food for one', count: people, kg: (constants.things['food-for-two']?.kg ?? 0) / 2 };
}

/** What a text wants to load. Weights said ('a 20 kg tent') count as said; people's kit and food by the head. */
export function thingsIn(
  counted: Counted,
  figures: Figures,
  constants: Constants,
  booked: PeopleSaid | null,
): readonly Thing[] {
  const weighedThings = new Set<Quantity>();
  const others = [...named(counted, figures, constants, weighedThings), ...water(counted, figures, constants)];
  const found = [...others, ...kit(counted, figures, constants, booked, others.length > 0)];
  return [...found, ...weighed(counted, weighedThings)];
}

function known(figures: Figures, constants: Constants): readonly Known[] {
  const list: Known[] = Object.entries(constants.things).flatMap(([key, thing]) =>
    thing.kg === undefined || PEOPLE_KEYS.has(key)
      ? []
      : [
          {
            key,
            name: thing.name,
            kg: thing.kg,
            phrases: [thing.name, ...thing.also, ...(ALSO[key] ?? [])].map(words),
          },
        ],
  );
  if (figures.awningKg !== undefined) {
    list.push({
      key: 'awning',
      name: 'awning',
      kg: figures.awningKg,
      phrases: ['awning', 'air awning', 'porch awning', 'porch'].map(words),
    });
  }
  return list;
}

/** Things by name. The weights said of them go into `weights`. */
function named(counted: Counted, figures: Figures, constants: Constants, weights: Set<Quantity>): readonly Thing[] {
  const at = counted.pieces.flatMap((piece, i) => (piece.text === '-' ? [] : [{ word: singular(piece.text), i }]));
  const things: Thing[] = [];
  const list = known(figures, constants);
  for (let i = 0; i < at.length; i++) {
    let best: { thing: Known; length: number } | null = null;
    for (const thing of list) {
      for (const phrase of thing.phrases) {
        if (phrase.length > (best?.length ?? 0) && phrase.every((word, k) => at[i + k]?.word === word))
          best = { thing, length: phrase.length };
      }
    }
    if (best === null) continue;
    const { thing } = best;
    const start = at[i]?.i ?? 0;
    const end = (at[i + best.length - 1]?.i ?? 0) + 1;
    // 'Two bikes', 'two big bikes', 'two of the bikes'.
    const from = /^of (the|our|my)$/.test(wordsBefore(counted, start, 2)) ? start - 2 : start;
    const before = counted.quantities.find(
      (quantity) =>
        quantity.to <= from && quantity.to >= from - 1 && quantity.unit !== 'nights' && quantity.unit !== 'hours',
    );
    const weight = before?.unit === 'kg' ? before : weightAfter(counted, end);
    if (weight !== null) weights.add(weight);
    const kgSaid = weight?.high ?? null;
    const count = before?.unit === 'bare' || before?.unit === 'bottles' ? before.high : pairBefore(counted, start, end);
    if (!(kgSaid === null && (without(counted, start) || isAsked(counted, start))))
      things.push({ key: thing.key, name: thing.name, count, kg: kgSaid ?? thing.kg });
    i += best.length - 1;
  }
  return things;
}

/** 'Bikes weighing 18 kg each', 'an awning (25 kg)'. */
function weightAfter(counted: Counted, end: number): Quantity | null {
  const after = counted.quantities.find(
    (quantity) => quantity.unit === 'kg' && quantity.from >= end && quantity.from <= end + 4,
  );
  if (after === undefined) return null;
  const between = counted.pieces.slice(end, after.from).map((piece) => piece.text);
  return between.every((word) =>
    /^(weighing|weighs|weigh|at|of|is|are|about|around|roughly|\(|that|which|,|-|=)$/.test(word),
  )
    ? after
    : null;
}

/** 'A third bike' makes three of them. */
const ORDINALS = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** 'A pair of chairs', 'bikes x2', 'a third bike'. */
function pairBefore(counted: Counted, start: number, end: number): number {
  const words = counted.pieces.slice(Math.max(0, start - 3), start).map((piece) => piece.text);
  const after = counted.quantities.find(
    (each) =>
      each.unit === 'bare' && counted.pieces[each.from - 1]?.text === 'x' && each.from >= start && each.from <= end + 1,
  );
  if (after !== undefined) return after.high;
  const nth = ORDINALS.indexOf(words.at(-1) ?? '');
  if (nth > 0) return nth;
  return words.includes('couple') || words.includes('pair') ? 2 : 1;
}

function wordsBefore({ pieces }: Counted, start: number, most: number): string {
  return pieces
    .slice(Math.max(0, start - most), start)
    .map((piece) => piece.text)
    .join(' ');
}

/** 'How many bikes can we take?' names none yet. */
function isAsked({ pieces }: Counted, start: number): boolean {
  return pieces[start - 1]?.text === 'many' && pieces[start - 2]?.text === 'how';
}

function without(counted: Counted, start: number): boolean {
  return /\b(no|without|not|leaving|leave|aren't|arent)( bringing| taking| bring| take| having| loading| counting| behind)?( the| a| any| our)?$/.test(
    wordsBefore(counted, start, 3),
  );
}

function water(counted: Counted, figures: Figures, constants: Constants): readonly Thing[] {
  const kg = constants.things['water-litre']?.kg ?? 1;
  const litres = counted.quantities.find((quantity) => quantity.unit === 'litres');
  if (litres !== undefined) return [{ key: 'water', name: 'litre of water', count: litres.high, kg }];
  const text = counted.pieces.map((piece) => piece.text).join(' ');
  if (/\bempty (water )?(tank|barrel)|\b(tank|barrel|water) (is )?(empty|drained)\b/.test(text)) return [];
  if (/\bhalf( a)?( full)? (of )?(tank|barrel)|\b(tank|barrel) half full\b/.test(text))
    return [{ key: 'water', name: 'litre of water', count: figures.water.freshL / 2, kg }];
  const full =
    /\bfull (fresh |water )?(tank|barrel)|\b(tank|barrel|water) (is |was )?full\b|\b(tank|barrel) of water\b|\bfull of water\b|\bwater tank filled\b|\bfull water\b/.test(
      text,
    );
  return full ? [{ key: 'water', name: 'litre of water', count: figures.water.freshL, kg }] : [];
}

/** Belongings that nobody names: beside named things the clothes and kit of everybody, alone nothing to go by. */
export const STUFF =
  /\b(our|everyone's|everybody's|the kids|lots? of|loads of|so much|too much|all this|all the) (stuff|gear|things|belongings|bits)\b/;

function kit(
  counted: Counted,
  figures: Figures,
  constants: Constants,
  booked: PeopleSaid | null,
  beside: boolean,
): readonly Thing[] {
  const text = counted.pieces.map((piece) => piece.text).join(' ');
  const said = peopleIn(counted);
  const who = said?.people !== null && said !== null ? said : booked;
  const asking = /\bhow much (luggage|kit|stuff|clothes|gear|clothing|food)\b/.test(text);
  const foods = /(?<!\b(dog|cat|pet|baby|fish) )\b(food|shopping|groceries|provisions|supplies)\b/;
  const clothes =
    !asking &&
    (/\b(clothes|clothing|kit|luggage|bags|suitcases?|usual (stuff|gear|things|belongings|bits))\b/.test(text) ||
      (STUFF.test(text) && (beside || foods.test(text))));
  const food = !asking && foods.test(text);
  // Where people ride in the van naming them is about themselves; where they do not, about what they bring.
  const counts = said?.people !== null && said !== null && !figures.peopleCount;
  const things: Thing[] = [];
  if (who === null || who.people === null) {
    // By the head, when the heads are known: see `spread`.
    if (clothes) things.push({ key: KIT_EACH, name: "everybody's clothes and kit", count: 1, kg: 0 });
    if (food) things.push({ key: FOOD_EACH, name: 'food for everybody', count: 1, kg: 0 });
    return things;
  }
  const children = who.children ?? 0;
  // '20 kg of clothes' is weighed, not counted by heads.
  const weighedClothes = counted.quantities.some(
    (quantity) =>
      quantity.unit === 'kg' &&
      /^(of|clothes|luggage|kit|bags|gear|stuff|suitcase)$/.test(counted.pieces[quantity.to]?.text ?? ''),
  );
  if ((counts || clothes) && !weighedClothes) things.push(...kitOf(who.people, children, constants));
  if (food && !/\bno food\b/.test(text)) things.push(foodOf(who.people, constants));
  return things;
}

/** Weights that belong to nothing known: '30 kg of luggage', 'a 25 kilo tent'. */
function weighed(counted: Counted, said: ReadonlySet<Quantity>): readonly Thing[] {
  return counted.quantities.flatMap((quantity): Thing[] => {
    if (quantity.unit !== 'kg' || said.has(quantity)) return [];
    const counting = countingBefore(counted, quantity);
    const at = counted.pieces[quantity.to]?.text === 'of' ? quantity.to + 1 : quantity.to;
    const next = counted.pieces[at];
    const name = counting?.name ?? nameBeside(counted, quantity, next);
    return [{ key: `own-${name}`, name, count: counting?.count ?? 1, kg: quantity.high }];
  });
}

/** 'A 25 kg tent', 'dog 20 kg'. */
function nameBeside(counted: Counted, weight: Quantity, next: Piece | undefined): string {
  if (next?.kind === 'word' && !/^(each|and|with|for|in|on|is|ok|too|total)$/.test(next.text)) return next.text;
  const before = counted.pieces[weight.from - 1];
  return before?.kind === 'word' && !/^(of|a|about|weighs|is|at|with|and|only|around)$/.test(before.text)
    ? before.text
    : 'things';
}

/** 'Three suitcases of 20 kg', '2 x 15 kg': how many of them, and what. */
function countingBefore(counted: Counted, weight: Quantity): { readonly count: number; readonly name: string } | null {
  const times = counted.quantities.find(
    (other) => other.unit === 'bare' && other.to < weight.from && other.to >= weight.from - 3,
  );
  const right = counted.quantities.find((other) => other.unit === 'bare' && other.to === weight.from);
  const after = counted.pieces[weight.to];
  // 'Two 40 kg kayaks': two of them, each so heavy.
  if (right !== undefined && after?.kind === 'word' && after.text.endsWith('s'))
    return { count: right.high, name: after.text };
  if (times === undefined) return eachBefore(counted, weight);
  const between = counted.pieces.slice(times.to, weight.from).map((piece) => piece.text);
  if (between.join(' ') === 'x') return { count: times.high, name: 'things' };
  const [noun, link] = between;
  if (noun !== undefined && /^(of|at|weighing|@)$/.test(link ?? '')) return { count: times.high, name: noun };
  return eachBefore(counted, weight);
}

/** 'Five boxes of books 15 kg each': the last plain number before it in its part of the sentence. */
function eachBefore(
  { pieces, quantities }: Counted,
  weight: Quantity,
): { readonly count: number; readonly name: string } | null {
  if (!/^(each|apiece|ea)$/.test(pieces[weight.to]?.text ?? '')) return null;
  const times = quantities.findLast((other) => other.unit === 'bare' && other.to <= weight.from);
  if (times === undefined) return null;
  const between = pieces.slice(times.to, weight.from).map((piece) => piece.text);
  return between.some((word) => /^(,|;|\.|and|plus|&)$/.test(word))
    ? null
    : { count: times.high, name: between[0] ?? 'things' };
}
