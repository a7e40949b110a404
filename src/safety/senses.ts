import { stem } from '../language/stems.ts';
import { type Apostrophes, wordsOf } from './words.ts';

/** Longer phrases than this are not looked for. */
const MOST_WORDS = 4;
const NO_SIGNS: ReadonlyMap<string, string> = new Map();

/** Finds the senses of a text's stems: the classes of meaning that its words and phrases belong to, sorted. */
export type SenseFinder = (stems: readonly string[]) => readonly string[];

/**
 * A thesaurus ready for looking up. Kin among words never seen in an example: what was learnt of one holds for the others.
 *
 * @param senses Words and phrases by the name of their sense, parted by commas.
 */
export function createSenses(senses: Readonly<Record<string, string>>, apostrophes: Apostrophes): SenseFinder {
  const named = new Map<string, readonly string[]>();
  const begun = new Set<string>();
  for (const [name, phrases] of Object.entries(senses)) {
    for (const stems of phrasesOf(phrases, apostrophes)) {
      const key = stems.join(' ');
      for (let to = 1; to < stems.length; to++) begun.add(stems.slice(0, to).join(' '));
      const known = named.get(key) ?? [];
      if (!known.includes(name)) named.set(key, [...known, name]);
    }
  }
  return (stems) => {
    const found = new Set<string>();
    for (let from = 0; from < stems.length; from++) {
      let phrase = '';
      for (let to = from; to < Math.min(stems.length, from + MOST_WORDS); to++) {
        phrase = to === from ? (stems[to] as string) : `${phrase} ${stems[to]}`;
        for (const name of named.get(phrase) ?? []) found.add(name);
        if (!begun.has(phrase)) break;
      }
    }
    return [...found].sort();
  };
}

/** The stems of each phrase. A comma begins a new clause, so that all of a sense are cut in one go. */
function phrasesOf(phrases: string, apostrophes: Apostrophes): readonly (readonly string[])[] {
  const found: string[][] = [];
  let at = -1;
  for (const { text, clause } of wordsOf(phrases, NO_SIGNS, apostrophes).words) {
    if (clause !== at) found.push([]);
    at = clause;
    found.at(-1)?.push(stem(text));
  }
  return found;
}
