import { stem } from '../language/stems.ts';
import { unitOf } from '../language/units.ts';
import type { Seen } from './seen.ts';

/**
 * Words with pairs of words, letter groups, and plain meanings. Each view is scaled to a length of its own; letters
 * count less, because a text has many more of them.
 */
export const VIEWS = [
  { name: 'words', length: 1 },
  { name: 'letters', length: 0.7 },
  { name: 'meanings', length: 1 },
] as const;

export const WORDS = 0;
export const LETTERS = 1;
export const MEANINGS = 2;

const SHORTEST = 3;
const LONGEST = 5;
/** What the glossary makes of a word counts half as much as the hirer's own word. */
const GLOSSED = 0.5;

/** What a feature is: a stem, two neighbouring stems, a meaning, a part's role, a figure's unit. */
export type Sort = 'w' | 'b' | 'k' | 'p' | 'n';

/** Takes one feature of a view, as often as it stands in the text. `second` is empty but for a pair. */
export type Take = (view: number, sort: Sort, first: string, second: string, count: number) => void;

/** A feature as text: 'w:pump', 'b:pump run', 'k:stuck', 'p:water-pump', 'n:A'. */
export function nameOf(sort: Sort, first: string, second: string): string {
  return second === '' ? `${sort}:${first}` : `${sort}:${first} ${second}`;
}

/** Stems, neighbouring stems, meanings, figures by their unit, the roles of parts named. */
export function features({ words, phrases, meanings, mentions }: Seen, take: Take): void {
  pairs(
    words.map((word) => word.stem),
    1,
    take,
  );
  for (const phrase of phrases) pairs(phrase.map(stem), GLOSSED, take);
  for (const meaning of meanings) take(MEANINGS, 'k', meaning, '', 1);
  figures(words, take);
  for (const { roles } of mentions) for (const role of roles) take(MEANINGS, 'p', role, '', 1 / roles.length);
}

/** A figure by its unit alone: whether it is 6 amps or 16 is for the sums. */
function figures(words: Seen['words'], take: Take): void {
  for (let i = 0; i < words.length; i++) {
    if (!/^\d/.test(words[i]?.text ?? '')) continue;
    take(MEANINGS, 'n', unitOf(words[i + 1]?.text ?? '') ?? 'bare', '', 1);
  }
}

function pairs(stems: readonly string[], count: number, take: Take): void {
  for (let i = 0; i < stems.length; i++) {
    take(WORDS, 'w', stems[i] as string, '', count);
    if (i > 0) take(WORDS, 'b', stems[i - 1] as string, stems[i] as string, count);
  }
}

/** The groups of 3 to 5 letters within a word, its two ends marked: 'c:^pu', 'c:ump$' ... */
export function letterGroups(word: string): readonly string[] {
  const whole = `^${word}$`;
  const groups: string[] = [];
  for (let n = SHORTEST; n <= LONGEST; n++) {
    for (let at = 0; at + n <= whole.length; at++) groups.push(`c:${whole.slice(at, at + n)}`);
  }
  return groups;
}
