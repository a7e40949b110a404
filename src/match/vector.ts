import { features, LETTERS, letterGroups, nameOf, type Sort, VIEWS } from './features.ts';
import type { Seen } from './seen.ts';

/** A text as numbers: the features it has, by their place in the space, and their weights. */
export type Vector = { readonly at: Int32Array; readonly weight: Float32Array };

/** The features that the training lines showed, each with how much it tells: {@link tellingOf}. */
export type Space = {
  readonly places: ReadonlyMap<string, number>;
  readonly names: readonly string[];
  readonly idf: Float32Array;
  /** What a feature counts that no training line showed: in a question's length only. */
  readonly unknownIdf: number;
  /** Letter groups by word, remembered: most words of a question were asked before. */
  readonly letters: (word: string) => Letters;
  /** Adds up the features of one text. */
  readonly sum: Sum;
};

/** A word's letter groups that the space has, and how many it has not. */
type Letters = { readonly places: Int32Array; readonly unknown: number };

/** Lines as they were read, turned into numbers. */
export type Spaced = { readonly space: Space; readonly vectors: readonly Vector[] };

/**
 * How much a feature tells that stands in the wordings of so many classes: the rarer the more. What counts is in how many
 * classes, not in how many lines: where lines of a topic are few, a word that all of them share tells most of all.
 */
function tellingOf(classes: number, ofAll: number): number {
  return Math.log((1 + ofAll) / (1 + classes)) + 1;
}

/**
 * Builds a space from the lines as they were read, and their vectors. Features of fewer than `fewest` lines are left out,
 * as if never seen.
 *
 * @param labels The class of each line, by number.
 */
export function buildSpace(all: readonly Seen[], labels: readonly number[], fewest: number): Spaced {
  const order = classByClass(labels);
  const { draft, names, lines, classes } = drafted(all, labels, order);
  const ofAll = new Set(labels).size;
  const places = new Int32Array(names.length).fill(-1);
  const kept: string[] = [];
  const idf: number[] = [];
  for (let number = 0; number < names.length; number++) {
    const count = lines[number] as number;
    if (count < fewest) continue;
    places[number] = kept.length;
    kept.push(names.at(number));
    idf.push(tellingOf(classes[number] as number, ofAll));
  }
  const space = spaceOf(kept, Float32Array.from(idf), tellingOf(0, ofAll));
  const vectors: Vector[] = new Array(all.length);
  for (const [turn, line] of order.entries()) {
    for (let i = draft.ends[turn] as number; i < (draft.ends[turn + 1] as number); i++) {
      space.sum.add(draft.views[i] as number, places[draft.at[i] as number] as number, draft.counts[i] as number);
    }
    vectors[line] = finished(all[line] as Seen, space);
  }
  return { space, vectors };
}

/**
 * The space with the features that it lacks and `fewest` of some lines have, behind its own.
 *
 * @param labels     The class of each line, by number.
 * @param classCount Of all classes, for how much a new feature tells.
 */
export function widened(
  space: Space,
  seen: readonly Seen[],
  labels: readonly number[],
  fewest: number,
  classCount: number,
): Space {
  const { names, lines, classes } = drafted(seen, labels, classByClass(labels));
  const fresh: string[] = [];
  const idf: number[] = [];
  for (let number = 0; number < names.length; number++) {
    if ((lines[number] as number) < fewest || space.places.has(names.at(number))) continue;
    fresh.push(names.at(number));
    idf.push(tellingOf(classes[number] as number, classCount));
  }
  const wider = new Float32Array(space.idf.length + idf.length);
  wider.set(space.idf);
  wider.set(idf, space.idf.length);
  return spaceOf([...space.names, ...fresh], wider, space.unknownIdf);
}

/** A class's lines one after the other: then a feature's classes are counted as its lines are. */
function classByClass(labels: readonly number[]): readonly number[] {
  return [...labels.keys()].sort((a, b) => (labels[a] as number) - (labels[b] as number) || a - b);
}

/** The features of all lines but for their letter groups, by number; those of the n-th read end where `ends[n + 1]` says. */
type Draft = {
  readonly at: number[];
  readonly views: number[];
  readonly counts: number[];
  readonly ends: number[];
};

/** Numbers the features of all lines in the order first met, and counts in how many lines and classes each stands. */
function drafted(all: readonly Seen[], labels: readonly number[], order: readonly number[]) {
  const names = createNumbering();
  const lines: number[] = [];
  const classes: number[] = [];
  const lastLine: number[] = [];
  const meet = (number: number, line: number): void => {
    const last = lastLine[number];
    if (last === line) return;
    lastLine[number] = line;
    lines[number] = (lines[number] ?? 0) + 1;
    if (last === undefined || labels[last] !== labels[line]) classes[number] = (classes[number] ?? 0) + 1;
  };
  const groups = new Map<string, readonly number[]>();
  const draft: Draft = { at: [], views: [], counts: [], ends: [0] };
  for (const line of order) {
    const one = all[line] as Seen;
    features(one, (view, sort, first, second, count) => {
      const number = names.number(sort, first, second);
      draft.at.push(number);
      draft.views.push(view);
      draft.counts.push(count);
      meet(number, line);
    });
    for (const { text } of one.words) {
      let own = groups.get(text);
      if (own === undefined) {
        own = letterGroups(text).map((group) => names.number('c', group, ''));
        groups.set(text, own);
      }
      for (const number of own) meet(number, line);
    }
    draft.ends.push(draft.at.length);
  }
  return { draft, names, lines, classes };
}

type Named = Sort | 'c';

/** Numbers features without putting their names together: most are of one line only, and never named. */
function createNumbering() {
  const singles: Readonly<Record<Named, Map<string, number>>> = {
    w: new Map(),
    b: new Map(),
    k: new Map(),
    p: new Map(),
    n: new Map(),
    c: new Map(),
  };
  const pairs = new Map<string, Map<string, number>>();
  const sorts: Named[] = [];
  const firsts: string[] = [];
  const seconds: string[] = [];
  return {
    get length() {
      return sorts.length;
    },
    number: (sort: Named, first: string, second: string): number => {
      let among = second === '' ? singles[sort] : pairs.get(first);
      if (among === undefined) {
        among = new Map();
        pairs.set(first, among);
      }
      const key = second === '' ? first : second;
      let number = among.get(key);
      if (number === undefined) {
        number = sorts.push(sort) - 1;
        firsts.push(first);
        seconds.push(second);
        among.set(key, number);
      }
      return number;
    },
    at: (number: number): string => {
      const [sort, first, second] = [sorts[number] as Named, firsts[number] as string, seconds[number] as string];
      return sort === 'c' ? first : nameOf(sort, first, second);
    },
  };
}

const MOST_REMEMBERED = 20_000;

/** A space put together again from its parts. */
export function spaceOf(names: readonly string[], idf: Float32Array, unknownIdf: number): Space {
  const places = new Map<string, number>();
  for (let i = 0; i < names.length; i++) places.set(names[i] as string, i);
  const remembered = new Map<string, Letters>();
  const letters = (word: string): Letters => {
    let found = remembered.get(word);
    if (found === undefined) {
      const groups = letterGroups(word);
      const known = groups.flatMap((name) => places.get(name) ?? []);
      found = { places: Int32Array.from(known), unknown: groups.length - known.length };
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(word, found);
    }
    return found;
  };
  return { places, names, idf, unknownIdf, letters, sum: createSum(idf, unknownIdf) };
}

/**
 * (1 + ln tf) x what it tells, each view scaled to its length. Features that the space lacks count in the length as the
 * most telling, so that a half-understood question never scores as a whole one.
 */
export function vectorOf(seen: Seen, space: Space): Vector {
  features(seen, (view, sort, first, second, count) =>
    space.sum.add(view, space.places.get(nameOf(sort, first, second)) ?? -1, count),
  );
  return finished(seen, space);
}

/** Adds the letter groups to what was summed and takes the vector. */
function finished({ words }: Seen, { sum, letters }: Space): Vector {
  for (const word of words) {
    const { places, unknown } = letters(word.text);
    for (let i = 0; i < places.length; i++) sum.add(LETTERS, places[i] as number, 1);
    sum.miss(LETTERS, 1, unknown);
  }
  return sum.take();
}

/** Gathers one text at a time in the same arrays, so that no message leaves rubbish behind. */
type Sum = {
  /** @param place -1 for a feature that the space lacks. */
  readonly add: (view: number, place: number, count: number) => void;
  readonly miss: (view: number, count: number, times: number) => void;
  /** The vector; all is as empty as before. */
  readonly take: () => Vector;
};

function createSum(idf: Float32Array, unknownIdf: number): Sum {
  const counts = new Float64Array(idf.length);
  const met: number[][] = VIEWS.map(() => []);
  const squares = new Float64Array(VIEWS.length);
  const miss: Sum['miss'] = (view, count, times) => {
    squares[view] = (squares[view] as number) + times * (count * unknownIdf) ** 2;
  };
  return {
    add: (view, place, count) => {
      if (place < 0) return miss(view, count, 1);
      if (counts[place] === 0) (met[view] as number[]).push(place);
      counts[place] = (counts[place] as number) + count;
    },
    miss,
    take: () => {
      const size = met.reduce((sum, places) => sum + places.length, 0);
      const vector = { at: new Int32Array(size), weight: new Float32Array(size) };
      let from = 0;
      for (const [view, { length }] of VIEWS.entries()) {
        from = takeView(met[view] as number[], squares[view] as number, length, counts, idf, vector, from);
        squares[view] = 0;
      }
      return vector;
    },
  };
}

/** Writes one view into the vector from a place on, scaled, and empties what it took; returns the place behind it. */
function takeView(
  met: number[],
  unknown: number,
  length: number,
  counts: Float64Array,
  idf: Float32Array,
  { at, weight }: Vector,
  from: number,
): number {
  let square = unknown;
  for (let i = 0; i < met.length; i++) {
    const place = met[i] as number;
    const count = counts[place] as number;
    const value = (count > 1 ? 1 + Math.log(count) : count) * (idf[place] as number);
    counts[place] = 0;
    at[from + i] = place;
    weight[from + i] = value;
    square += value * value;
  }
  const end = from + met.length;
  const scale = square > 0 ? length / Math.sqrt(square) : 0;
  for (let i = from; i < end; i++) weight[i] = (weight[i] as number) * scale;
  met.length = 0;
  return end;
}
