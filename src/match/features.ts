import type { Reading } from '../language/reader.ts';
import { stem } from '../language/stems.ts';

/** Words and pairs of words, and letter groups: each kind is scaled to length 1 by itself. */
export const VIEWS = ['words', 'letters'] as const;
export type View = (typeof VIEWS)[number];

/** Takes one feature; called again for each time it stands in the text. */
export type Take = (view: number, name: string) => void;

const WORDS = 0;
const LETTERS = 1;
const SHORTEST = 3;
const LONGEST = 5;

/**
 * Names what a reading shows: stems ('w:pump'), neighbouring stems ('b:pump run') and groups of 3 to 5 letters within
 * a word ('c:^pum'), from the hirer's own words and from what the glossary makes of them.
 */
export function features(reading: Reading, take: Take): void {
  wordFeatures(
    reading.words.map((word) => word.stem),
    take,
  );
  for (const word of reading.words) letterFeatures(word.text, take);
  for (const phrase of reading.phrases) {
    wordFeatures(phrase.map(stem), take);
    for (const word of phrase) letterFeatures(word, take);
  }
}

function wordFeatures(stems: readonly string[], take: Take): void {
  for (let i = 0; i < stems.length; i++) {
    take(WORDS, `w:${stems[i]}`);
    if (i > 0) take(WORDS, `b:${stems[i - 1]} ${stems[i]}`);
  }
}

function letterFeatures(word: string, take: Take): void {
  const whole = `^${word}$`;
  for (let n = SHORTEST; n <= LONGEST; n++) {
    for (let at = 0; at + n <= whole.length; at++) take(LETTERS, `c:${whole.slice(at, at + n)}`);
  }
}
