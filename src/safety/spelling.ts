import { editDistance } from '../language/edit-distance.ts';

/** The other words of a vocabulary that a typed word may be a slip of: none when it is right as it stands. */
export type SlipFinder = (word: string) => readonly string[];

/** Words that one may be asked about. */
export type WordList = Pick<ReadonlySet<string>, 'has'>;

/** Shorter words are too often other words with one letter changed. */
const SHORTEST = 5;

/**
 * One slip of the finger (a letter left out, added, changed, or two swapped) in words of five letters or more.
 *
 * @param vocabulary The words looked for.
 * @param right      Words that are meant as they are, though they are near a word of the vocabulary.
 */
export function createSlipFinder(vocabulary: Iterable<string>, right: WordList): SlipFinder {
  const index = new Map<string, string[]>();
  for (const word of vocabulary) {
    if (word.length < SHORTEST) continue;
    for (const form of withOneLetterOut(word)) {
      const list = index.get(form);
      if (list === undefined) index.set(form, [word]);
      else list.push(word);
    }
  }
  return (word) => {
    if (word.length < SHORTEST - 1 || right.has(word)) return [];
    const found = new Set<string>();
    for (const form of withOneLetterOut(word)) {
      for (const candidate of index.get(form) ?? [])
        if (candidate !== word && editDistance(word, candidate, 1) <= 1) found.add(candidate);
    }
    return [...found];
  };
}

/** The word itself and the word with each letter left out in turn: two words within one edit share one of these. */
function withOneLetterOut(word: string): ReadonlySet<string> {
  const forms = new Set([word]);
  for (let i = 0; i < word.length; i++) forms.add(word.slice(0, i) + word.slice(i + 1));
  return forms;
}
