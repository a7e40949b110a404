import { editDistance } from './edit-distance.ts';

/** The nearest word of the vocabulary, or null when the word is known, protected, or like none. */
export type Speller = (word: string) => string | null;

export type SpellerOptions = {
  /** Words of the vocabulary with how often they stand in it: among equally near words the commoner wins. */
  readonly counts: ReadonlyMap<string, number>;
  /** Right words that are never changed, though the vocabulary lacks them. */
  readonly protectedWords: Pick<ReadonlySet<string>, 'has'>;
  /** Of these words and perhaps more: {@link spellingIndex} of `counts` when left out. */
  readonly index?: SpellingIndex;
};

/** Words by what is left of their beginning when letters are taken out. */
export type SpellingIndex = ReadonlyMap<string, readonly string[]>;

/** Shared beginnings longer than this are not told apart when candidates are looked up. */
const PREFIX = 7;

const indexes = new WeakMap<ReadonlyMap<string, number>, Index>();
type Index = Map<string, string[]>;

/**
 * Indexes words for a speller, once for a map: it takes longer than all that is ever spelt with it. Words taken out of
 * the map afterwards do no harm; none may be put in.
 *
 * @param like A map with most of the words: where it has an index, that one grows by the others and serves both.
 */
export function spellingIndex(counts: ReadonlyMap<string, number>, like = counts): SpellingIndex {
  const found = indexes.get(counts);
  if (found !== undefined) return found;
  const index: Index = indexes.get(like) ?? new Map();
  for (const word of counts.keys()) addTo(index, word);
  indexes.set(counts, index);
  return index;
}

function addTo(index: Index, word: string): void {
  if (word.length < 3 || /\d/.test(word)) return;
  const start = word.slice(0, PREFIX);
  if (index.get(start)?.includes(word)) return;
  for (const form of deletes(start, allowed(word.length + 1))) {
    const list = index.get(form);
    if (list === undefined) index.set(form, [word]);
    else list.push(word);
  }
}

/**
 * Symmetric-delete spelling correction: a slip of one letter in words of 3 to 5, of up to two from 6 letters on.
 * Shorter words and numbers are left alone. Ties go to the same first letter, then to the commoner word.
 */
export function createSpeller({ counts, protectedWords, index = spellingIndex(counts) }: SpellerOptions): Speller {
  return (word) => {
    const most = allowed(word.length);
    if (most === 0 || counts.has(word) || protectedWords.has(word) || /\d/.test(word)) return null;
    let best: string | null = null;
    let bestRank = 0;
    for (const form of deletes(word.slice(0, PREFIX), most)) {
      for (const candidate of index.get(form) ?? []) {
        const count = counts.get(candidate);
        if (count === undefined) continue;
        const distance = editDistance(word, candidate, most);
        if (distance > most) continue;
        // Distance first, then the first letter, then how common it is (a count below 1000 never outweighs the rest).
        const rank = (most + 1 - distance) * 1e7 + (candidate[0] === word[0] ? 1e6 : 0) + Math.min(count, 999_999);
        if (rank > bestRank || (rank === bestRank && best !== null && candidate < best)) {
          best = candidate;
          bestRank = rank;
        }
      }
    }
    return best;
  };
}

function allowed(length: number): number {
  return length < 3 ? 0 : length < 6 ? 1 : 2;
}

/** The word and every form of it with up to `most` letters taken out. */
function deletes(word: string, most: number): ReadonlySet<string> {
  const all = new Set([word]);
  let last = [word];
  for (let round = 0; round < most; round++) {
    const next: string[] = [];
    for (const form of last) {
      for (let i = 0; i < form.length; i++) {
        const shorter = form.slice(0, i) + form.slice(i + 1);
        if (!all.has(shorter)) {
          all.add(shorter);
          next.push(shorter);
        }
      }
    }
    last = next;
  }
  return all;
}
