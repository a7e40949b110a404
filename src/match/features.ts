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

/** Takes one feature of a view, as often as it stands in the text. */
export type Take = (view: number, name: string, count: number) => void;

/** Stems ('w:pump'), neighbouring stems ('b:pump run'), meanings ('k:stuck'), the roles of parts named ('p:water-pump'). */
export function features({ words, phrases, meanings, mentions }: Seen, take: Take): void {
  pairs(
    words.map((word) => word.stem),
    1,
    take,
  );
  for (const phrase of phrases) pairs(phrase.map(stem), GLOSSED, take);
  for (const meaning of meanings) take(MEANINGS, `k:${meaning}`, 1);
  figures(words, take);
  for (const { roles } of mentions) for (const role of roles) take(MEANINGS, `p:${role}`, 1 / roles.length);
}

/** A figure by its unit alone, 'n:A': whether it is 6 amps or 16 is for the sums. */
function figures(words: Seen['words'], take: Take): void {
  for (let i = 0; i < words.length; i++) {
    if (!/^\d/.test(words[i]?.text ?? '')) continue;
    take(MEANINGS, `n:${unitOf(words[i + 1]?.text ?? '') ?? 'bare'}`, 1);
  }
}

function pairs(stems: readonly string[], count: number, take: Take): void {
  for (let i = 0; i < stems.length; i++) {
    take(WORDS, `w:${stems[i]}`, count);
    if (i > 0) take(WORDS, `b:${stems[i - 1]} ${stems[i]}`, count);
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
