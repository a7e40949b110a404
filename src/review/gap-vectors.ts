import type { Glossary } from '../language/glossary.ts';
import { type Features, gapFeatures, KINDS_OF_FEATURE } from './gap-features.ts';

/** A text as numbers: its features by their place, with weights whose squares sum to 1. */
export type GapVector = { readonly at: Int32Array; readonly weight: Float32Array };

/** Another text and how like it is, 0 to 1 (the cosine of the two vectors). */
export type Neighbour = { readonly item: number; readonly likeness: number };

/** Texts that can be asked which of them are like another. Items are numbered from 0 as they are added. */
export type Neighbourhood = {
  readonly size: () => number;
  readonly add: (text: string) => number;
  /** Likest first, then the earlier; at most {@link MOST_NEIGHBOURS}, each at least {@link LEAST_LIKE}. */
  readonly near: (item: number) => readonly Neighbour[];
  /** Counts anew how common each feature is, now that there are more texts. */
  readonly reweigh: () => void;
};

export const MOST_NEIGHBOURS = 10;
export const LEAST_LIKE = 0.1;
/** A feature of more than this share of the texts tells none apart, and is looked up in none. */
const COMMON_SHARE = 0.05;
const COMMON_LEAST = 400;

type Postings = { readonly items: number[]; readonly weights: number[] };

/**
 * @param background Texts that tell which words are common, such as the graph's wordings; they are nobody's neighbour.
 */
export function createNeighbourhood(glossary: Glossary, background: readonly string[]): Neighbourhood {
  const places = new Map<string, number>();
  const backgroundLines: number[] = [];
  const texts: Features[] = [];
  let lines: number[] = [];
  let vectors: GapVector[] = [];
  let postings: Postings[] = [];
  let likeness = new Float32Array(256);

  const placeOf = (name: string): number => {
    const place = places.get(name) ?? places.size;
    if (place === places.size) places.set(name, place);
    return place;
  };
  for (const text of background) {
    for (const name of gapFeatures(text, glossary).keys()) {
      const place = placeOf(name);
      backgroundLines[place] = (backgroundLines[place] ?? 0) + 1;
    }
  }
  lines = [...backgroundLines];

  const index = (item: number, vector: GapVector): void => {
    vectors[item] = vector;
    for (let i = 0; i < vector.at.length; i++) {
      const place = vector.at[i] as number;
      const list = postings[place] ?? { items: [], weights: [] };
      postings[place] = list;
      list.items.push(item);
      list.weights.push(vector.weight[i] as number);
    }
  };
  const count = (features: Features): void => {
    for (const name of features.keys()) {
      const place = placeOf(name);
      lines[place] = (lines[place] ?? 0) + 1;
    }
  };
  const total = (): number => background.length + texts.length;

  return {
    size: () => texts.length,
    add: (text) => {
      const features = gapFeatures(text, glossary);
      const item = texts.push(features) - 1;
      count(features);
      index(item, vectorOf(features, placeOf, lines, total()));
      return item;
    },
    reweigh: () => {
      lines = [...backgroundLines];
      vectors = [];
      postings = [];
      for (const features of texts) count(features);
      for (const [item, features] of texts.entries()) index(item, vectorOf(features, placeOf, lines, total()));
    },
    near: (item) => {
      if (likeness.length < texts.length) likeness = new Float32Array(texts.length * 2);
      const { at, weight } = vectors[item] as GapVector;
      const common = Math.max(COMMON_LEAST, COMMON_SHARE * texts.length);
      const met: number[] = [];
      for (let i = 0; i < at.length; i++) {
        const { items, weights } = postings[at[i] as number] as Postings;
        if (items.length > common) continue;
        const own = weight[i] as number;
        for (let p = 0; p < items.length; p++) {
          const other = items[p] as number;
          if (likeness[other] === 0) met.push(other);
          likeness[other] = (likeness[other] as number) + own * (weights[p] as number);
        }
      }
      const found = best(met, item, likeness);
      for (const other of met) likeness[other] = 0;
      return found;
    },
  };
}

function best(met: readonly number[], self: number, likeness: Float32Array): Neighbour[] {
  const found: Neighbour[] = [];
  for (const item of met) {
    const like = likeness[item] as number;
    const last = found[MOST_NEIGHBOURS - 1];
    if (item === self || like < LEAST_LIKE || (last !== undefined && !isBefore(item, like, last))) continue;
    let place = Math.min(found.length, MOST_NEIGHBOURS - 1);
    while (place > 0 && isBefore(item, like, found[place - 1] as Neighbour)) place--;
    found.splice(place, 0, { item, likeness: like });
    if (found.length > MOST_NEIGHBOURS) found.pop();
  }
  return found;
}

function isBefore(item: number, like: number, other: Neighbour): boolean {
  return like > other.likeness || (like === other.likeness && item < other.item);
}

/** (1 + ln tf) x idf; each kind of feature is scaled to its length, and the whole to 1. */
function vectorOf(
  features: Features,
  placeOf: (name: string) => number,
  lines: readonly number[],
  total: number,
): GapVector {
  const at = new Int32Array(features.size);
  const weight = new Float32Array(features.size);
  const kind = new Uint8Array(features.size);
  const squares = KINDS_OF_FEATURE.map(() => 0);
  let i = 0;
  for (const [name, count] of features) {
    const place = placeOf(name);
    const idf = Math.log((1 + total) / (1 + (lines[place] ?? 0))) + 1;
    const value = (count > 1 ? 1 + Math.log(count) : count) * idf;
    const of = KINDS_OF_FEATURE.findIndex(({ prefix }) => name.startsWith(prefix));
    at[i] = place;
    weight[i] = value;
    kind[i] = of;
    squares[of] = (squares[of] as number) + value * value;
    i++;
  }
  const lengths = KINDS_OF_FEATURE.map(({ length }, of) => ((squares[of] as number) > 0 ? length : 0));
  const whole = Math.hypot(...lengths);
  for (let j = 0; j < at.length; j++) {
    const of = kind[j] as number;
    weight[j] = ((weight[j] as number) * (lengths[of] as number)) / (Math.sqrt(squares[of] as number) * whole);
  }
  return { at, weight };
}
