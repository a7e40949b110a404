import type { Glossary } from '../language/glossary.ts';
import { meaningsOf } from '../language/kindred.ts';
import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';

/** What a text shows, each feature with its count: the same words in another order, or misspelt, share most of them. */
export type Features = ReadonlyMap<string, number>;

/** The kinds of feature; each is scaled to a length of its own. */
export const KINDS_OF_FEATURE = [
  { prefix: 'w', length: 1 },
  { prefix: 'c', length: 0.7 },
  { prefix: 'k', length: 0.5 },
] as const;

const SHORTEST = 3;
const LONGEST = 5;
/** What the glossary makes of a word counts half as much as the hirer's own word. */
const GLOSSED = 0.5;

/**
 * Features of one gap's words: stems and neighbouring stems ('w:pump', 'w:pump run'), groups of letters within a word
 * ('c:^pum'), plain meanings ('k:stuck'). No vocabulary: a gap is often about a word that the graph has never seen.
 */
export function gapFeatures(text: string, glossary: Glossary): Features {
  const found = new Map<string, number>();
  const take = (name: string, count: number): void => {
    found.set(name, (found.get(name) ?? 0) + count);
  };
  const words = tokens(text).map((token) => token.text);
  const stems = words.map(stem);
  for (const [i, own] of stems.entries()) {
    take(`w:${own}`, 1);
    if (i > 0) take(`w:${stems[i - 1]} ${own}`, 1);
    const whole = `^${words[i]}$`;
    for (let n = SHORTEST; n <= LONGEST; n++) {
      for (let at = 0; at + n <= whole.length; at++) take(`c:${whole.slice(at, at + n)}`, 1);
    }
  }
  for (let at = 0; at < stems.length; ) {
    const meaning = glossary(stems, at);
    for (const word of meaning?.means.flat() ?? []) take(`w:${stem(word)}`, GLOSSED);
    at += meaning?.length ?? 1;
  }
  for (const meaning of meaningsOf(stems)) take(`k:${meaning}`, 1);
  return found;
}
