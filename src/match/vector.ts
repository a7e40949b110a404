import { features, VIEWS } from './features.ts';
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
};

/** Builds a space from the lines' readings. Features of fewer than `fewest` lines are left out, as if never seen. */
export function buildSpace(all: readonly Seen[], fewest: number): Space {
  const lines = new Map<string, number>();
  for (const one of all) {
    const names = new Set<string>();
    features(one, (_, name) => names.add(name));
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

/** A space put together again from its parts. */
export function spaceOf(names: readonly string[], idf: Float32Array, unknownIdf: number): Space {
  return { places: new Map(names.map((name, i) => [name, i])), names, idf, unknownIdf };
}

/**
 * (1 + ln tf) x idf, each view scaled to its length. Features that the space lacks count in the length with the largest
 * idf, so that a half-understood question never scores as a whole one.
 */
export function vectorOf(seen: Seen, space: Space): Vector {
  const counts: Map<number, number>[] = VIEWS.map(() => new Map());
  const squares = VIEWS.map(() => 0);
  features(seen, (view, name, count) => {
    const place = space.places.get(name);
    if (place === undefined) squares[view] = (squares[view] as number) + (count * space.unknownIdf) ** 2;
    else {
      const of = counts[view] as Map<number, number>;
      of.set(place, (of.get(place) ?? 0) + count);
    }
  });
  const size = counts.reduce((sum, of) => sum + of.size, 0);
  const at = new Int32Array(size);
  const weight = new Float32Array(size);
  let next = 0;
  for (const [view, of] of counts.entries()) {
    const from = next;
    let square = squares[view] as number;
    for (const [place, count] of of) {
      const value = (count > 1 ? 1 + Math.log(count) : count) * (space.idf[place] as number);
      at[next] = place;
      weight[next++] = value;
      square += value * value;
    }
    const scale = square > 0 ? (VIEWS[view] as (typeof VIEWS)[number]).length / Math.sqrt(square) : 0;
    for (let i = from; i < next; i++) weight[i] = (weight[i] as number) * scale;
  }
  return { at, weight };
}
