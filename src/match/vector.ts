import { features, LETTERS, letterGroups, VIEWS } from './features.ts';
import type { Seen } from './seen.ts';

/** A text as numbers: the features it has, by their place in the space, and their weights. */
export type Vector = { readonly at: Int32Array; readonly weight: Float32Array };

/** The features that the training lines showed, each with its inverse document frequency. */
export type Space = {
  readonly places: ReadonlyMap<string, number>;
  readonly names: readonly string[];
  readonly idf: Float32Array;
  /** What a feature counts that no training line showed: in a question's length only. */
  readonly unknownIdf: number;
  /** Letter groups by word, remembered: most words of a question were asked before. */
  readonly letters: (word: string) => Letters;
};

/** A word's letter groups that the space has, and how many it has not. */
type Letters = { readonly places: Int32Array; readonly unknown: number };

/** Builds a space from the lines as they were read. Features of fewer than `fewest` lines are left out, as if never seen. */
export function buildSpace(all: readonly Seen[], fewest: number): Space {
  const lines = new Map<string, number>();
  const groups = new Map<string, readonly string[]>();
  const groupsOf = (word: string): readonly string[] => {
    const found = groups.get(word) ?? letterGroups(word);
    groups.set(word, found);
    return found;
  };
  for (const one of all) {
    const names = new Set<string>();
    features(one, (_, name) => names.add(name));
    for (const word of one.words) for (const name of groupsOf(word.text)) names.add(name);
    for (const name of names) lines.set(name, (lines.get(name) ?? 0) + 1);
  }
  const names: string[] = [];
  const idf: number[] = [];
  for (const [name, count] of lines) {
    if (count < fewest) continue;
    names.push(name);
    idf.push(Math.log((1 + all.length) / (1 + count)) + 1);
  }
  return spaceOf(names, Float32Array.from(idf), Math.log(1 + all.length) + 1);
}

const MOST_REMEMBERED = 20_000;

/** A space put together again from its parts. */
export function spaceOf(names: readonly string[], idf: Float32Array, unknownIdf: number): Space {
  const places = new Map(names.map((name, i) => [name, i]));
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
  return { places, names, idf, unknownIdf, letters };
}

/**
 * (1 + ln tf) x idf, each view scaled to its length. Features that the space lacks count in the length with the largest
 * idf, so that a half-understood question never scores as a whole one.
 */
export function vectorOf(seen: Seen, space: Space): Vector {
  const counts: Map<number, number>[] = VIEWS.map(() => new Map());
  const squares = VIEWS.map(() => 0);
  const add = (view: number, place: number, count: number): void => {
    const of = counts[view] as Map<number, number>;
    of.set(place, (of.get(place) ?? 0) + count);
  };
  const miss = (view: number, count: number, times: number): void => {
    squares[view] = (squares[view] as number) + times * (count * space.unknownIdf) ** 2;
  };
  features(seen, (view, name, count) => {
    const place = space.places.get(name);
    if (place === undefined) miss(view, count, 1);
    else add(view, place, count);
  });
  for (const word of seen.words) {
    const { places, unknown } = space.letters(word.text);
    for (const place of places) add(LETTERS, place, 1);
    miss(LETTERS, 1, unknown);
  }
  return scaled(counts, squares, space.idf);
}

/** @param squares What the features that are not in the space add to each view's squared length. */
function scaled(counts: readonly Map<number, number>[], squares: readonly number[], idf: Float32Array): Vector {
  const size = counts.reduce((sum, of) => sum + of.size, 0);
  const at = new Int32Array(size);
  const weight = new Float32Array(size);
  let next = 0;
  for (const [view, of] of counts.entries()) {
    const from = next;
    let square = squares[view] as number;
    for (const [place, count] of of) {
      const value = (count > 1 ? 1 + Math.log(count) : count) * (idf[place] as number);
      at[next] = place;
      weight[next++] = value;
      square += value * value;
    }
    const scale = square > 0 ? (VIEWS[view] as (typeof VIEWS)[number]).length / Math.sqrt(square) : 0;
    for (let i = from; i < next; i++) weight[i] = (weight[i] as number) * scale;
  }
  return { at, weight };
}
