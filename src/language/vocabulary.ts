import { kindredWords } from './kindred.ts';
import { rightWords } from './right-words.ts';
import { createSpeller, type SpellingIndex, spellingIndex } from './speller.ts';
import { type Token, tokens } from './tokens.ts';

/** The words that the graph's own people used. */
export type Vocabulary = {
  /** How often each word was used. */
  readonly counts: ReadonlyMap<string, number>;
  /** Words that were also written as two, each with its halves: 'hookup' -> 'hook', 'up'. */
  readonly split: ReadonlyMap<string, readonly [string, string]>;
};

/** Shorter words are joined or parted by accident more often than not ('to day', 'no w'). */
const SHORTEST = 5;
/** A word that stands in no word list and was used no oftener than this may be a slip of a commoner one. */
const RARE = 2;

/**
 * Counts the words of all texts, and finds those written as one and as two.
 *
 * @param texts Cut into tokens, as hirers write: with slips, which are left out, so that they are mended wherever they
 *              turn up.
 * @param terms Written with care: every word of theirs is right.
 */
export function vocabularyOf(texts: Iterable<readonly Token[]>, terms: Iterable<string>): Vocabulary {
  return vocabularyWith({ counts: new Map(), split: new Map() }, texts, terms);
}

/** A vocabulary with some texts and terms more; what it has already is no slip. */
export function vocabularyWith(
  old: Vocabulary,
  texts: Iterable<readonly Token[]>,
  terms: Iterable<string>,
): Vocabulary {
  const counts = new Map(old.counts);
  const pairs = new Map<string, readonly [string, string]>();
  const add = (text: readonly Token[]): void => {
    let last: string | null = null;
    for (const token of text) {
      counts.set(token.text, (counts.get(token.text) ?? 0) + 1);
      if (last !== null) pairs.set(last + token.text, [last, token.text]);
      last = token.text;
    }
  };
  for (const text of texts) add(text);
  const sure = new Set(kindredWords());
  for (const term of terms) {
    const cut = tokens(term);
    add(cut);
    for (const token of cut) sure.add(token.text);
  }
  for (const word of old.counts.keys()) sure.add(word);
  const index = spellingIndex(counts, old.counts);
  for (const slip of slipsIn(counts, sure, index)) counts.delete(slip);
  const split = [...pairs].filter(([word]) => word.length >= SHORTEST && counts.has(word));
  return { counts, split: new Map([...old.split, ...split]) };
}

/** Rare words in no word list that are within a slip of a word that is sure, or commoner. */
function slipsIn(
  counts: ReadonlyMap<string, number>,
  sure: ReadonlySet<string>,
  index: SpellingIndex,
): readonly string[] {
  const right = rightWords();
  const odd = (word: string, count: number) => count <= RARE && !right.has(word) && !sure.has(word) && !/\d/.test(word);
  const doubtful = [...counts].filter(([word, count]) => odd(word, count)).map(([word]) => word);
  if (doubtful.length === 0) return [];
  const even = new Map(counts);
  for (const word of doubtful) even.delete(word);
  const spell = createSpeller({ counts: even, protectedWords: new Set(), index });
  return doubtful.filter((word) => spell(word) !== null);
}
