import { stem } from '../language/stems.ts';
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

const WORDS = 0;
const LETTERS = 1;
const MEANINGS = 2;
const SHORTEST = 3;
const LONGEST = 5;
/** What the glossary makes of a word counts half as much as the hirer's own word. */
const GLOSSED = 0.5;

/** Takes one feature of a view, as often as it stands in the text. */
export type Take = (view: number, name: string, count: number) => void;

/**
 * Names what a reading shows: stems ('w:pump'), neighbouring stems ('b:pump run'), groups of 3 to 5 letters within a
 * word ('c:^pum'), meanings ('k:stuck') and the roles of parts named ('p:water-pump').
 */
export function features({ words, phrases, meanings, mentions }: Seen, take: Take): void {
  for (let i = 0; i < words.length; i++) {
    const { stem: own, text } = words[i] as (typeof words)[number];
    take(WORDS, `w:${own}`, 1);
    if (i > 0) take(WORDS, `b:${words[i - 1]?.stem} ${own}`, 1);
    const whole = `^${text}$`;
    for (let n = SHORTEST; n <= LONGEST; n++) {
      for (let at = 0; at + n <= whole.length; at++) take(LETTERS, `c:${whole.slice(at, at + n)}`, 1);
    }
  }
  for (const phrase of phrases) {
    const stems = phrase.map(stem);
    for (let i = 0; i < stems.length; i++) {
      take(WORDS, `w:${stems[i]}`, GLOSSED);
      if (i > 0) take(WORDS, `b:${stems[i - 1]} ${stems[i]}`, GLOSSED);
    }
  }
  for (const meaning of meanings) take(MEANINGS, `k:${meaning}`, 1);
  for (const { roles } of mentions) for (const role of roles) take(MEANINGS, `p:${role}`, 1 / roles.length);
}
