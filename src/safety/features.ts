import { mixed, textSeed } from '../basics/seeded.ts';
import { stem } from '../language/stems.ts';
import type { TongueReader, TongueReading } from './tongue.ts';
import type { Word } from './words.ts';

/**
 * Features are places in a table of so many rows, found by hash: no names are kept, no strings are made, and two features that
 * meet in a place by chance seldom matter.
 */
export const PLACES = 2 ** 20;

/** Words further apart than this say nothing as a pair. */
const REACH = 4;
const SHORTEST = 3;
const LONGEST = 4;

/**
 * What the second net looks at in a text, by kind.
 * `words`: stems alone, in pairs and in threes; a stem in the reach of a negation is another than the stem.
 * `apart`: pairs of stems with others between them.
 * `letters`: runs of letters, which tell kin among words never seen.
 * `rules`: the groups of the rules alone and in pairs, what a guard set aside, whether a rule was met. They are the same in every
 * language, so what was learnt from English wordings holds for the others.
 * `senses`: what the thesaurus says of the words, alone and in pairs; the same in every language as well.
 */
export type Kind = 'words' | 'apart' | 'letters' | 'rules' | 'senses';

/** Places by kind, each once. */
export type Features = Readonly<Record<Kind, readonly number[]>>;

/** The places of some kinds, one kind after another. */
export function placesOf(features: Features, kinds: readonly Kind[]): readonly number[] {
  return kinds.flatMap((kind) => features[kind]);
}

/** With the place of every word by itself, in the order of the words, for those that are named in `ask --why`. */
export type WordFeatures = Features & { readonly each: readonly number[] };

/** @param reader Knows the word that a slip of the finger stands for: a slip changes nothing here. */
export function featuresOf(
  words: readonly Word[],
  reading: TongueReading,
  { meant, senses }: Pick<TongueReader, 'meant' | 'senses'>,
): WordFeatures {
  const texts = words.map(({ text }) => meant(text)[0] ?? text);
  const plain = texts.map(stem);
  const stems = plain.map((each, at) => textSeed(reading.negated.has(at) ? `no ${each}` : each));
  return {
    each: plain.map(placeOfStem),
    words: sequences(stems),
    apart: pairsApart(stems),
    letters: lettersOf(texts),
    rules: ruleFeatures(reading),
    senses: [...aloneAndPaired(senses(plain).map((sense) => textSeed(`{${sense}}`)))],
  };
}

/** The place of one stem by itself, whatever stands beside it. */
export function placeOfStem(stem: string): number {
  return placeOf(textSeed(stem));
}

const PAIR = 1;
const APART = 2;
const LETTERS = 3;
const BESIDE = 4;

function placeOf(hash: number): number {
  return mixed(hash) % PLACES;
}

/** A hash that depends on what is joined, on the order and on the way. */
function joined(first: number, second: number, way: number): number {
  return (Math.imul(first, 0x01000193) ^ mixed(second + way)) | 0;
}

function sequences(stems: readonly number[]): readonly number[] {
  const found = new Set<number>();
  for (let at = 0; at < stems.length; at++) {
    const first = stems[at] as number;
    found.add(placeOf(first));
    if (at + 1 >= stems.length) continue;
    const both = joined(first, stems[at + 1] as number, PAIR);
    found.add(placeOf(both));
    if (at + 2 < stems.length) found.add(placeOf(joined(both, stems[at + 2] as number, PAIR)));
  }
  return [...found];
}

function pairsApart(stems: readonly number[]): readonly number[] {
  const found = new Set<number>();
  for (let at = 0; at < stems.length; at++)
    for (let other = at + 2; other < Math.min(stems.length, at + REACH + 1); other++)
      found.add(placeOf(joined(stems[at] as number, stems[other] as number, APART)));
  return [...found];
}

function lettersOf(texts: readonly string[]): readonly number[] {
  const found = new Set<number>();
  for (const text of texts) for (const place of runsOf(text)) found.add(place);
  return [...found];
}

const remembered = new Map<string, readonly number[]>();
const MOST_REMEMBERED = 5_000;

/** The runs of letters of one word. Remembered: hirers use few words, often. */
function runsOf(word: string): readonly number[] {
  const known = remembered.get(word);
  if (known !== undefined) return known;
  const whole = `_${word}_`;
  const runs: number[] = [];
  for (let length = SHORTEST; length <= LONGEST; length++)
    for (let at = 0; at + length <= whole.length; at++)
      runs.push(placeOf(joined(textSeed(whole.slice(at, at + length)), length, LETTERS)));
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(word, runs);
  return runs;
}

function ruleFeatures({ alarms, groups, guarded }: TongueReading): readonly number[] {
  const found = aloneAndPaired(groups.map((group) => textSeed(`<${group}>`)));
  const add = (name: string) => found.add(placeOf(textSeed(name)));
  for (const each of guarded) {
    add(`<${each}>`);
    add(`<${each.slice(0, each.indexOf(' '))}>`);
  }
  for (const alarm of alarms) {
    add(alarm.firm ? '<firm rule>' : '<rule>');
    add(`<rule ${alarm.hazard}>`);
    add(`<rule ${alarm.rule}>`);
  }
  return [...found];
}

function aloneAndPaired(hashes: readonly number[]): Set<number> {
  const found = new Set<number>();
  for (let at = 0; at < hashes.length; at++) {
    found.add(placeOf(hashes[at] as number));
    for (let other = at + 1; other < hashes.length; other++)
      found.add(placeOf(joined(hashes[at] as number, hashes[other] as number, BESIDE)));
  }
  return found;
}
