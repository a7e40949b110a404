import { stemmer } from 'stemmer';

const MOST = 50_000;
const known = new Map<string, string>();

/** Porter's stem of a word in normal form. Remembered: hirers use few words, often. */
export function stem(word: string): string {
  let found = known.get(word);
  if (found === undefined) {
    found = stemmer(word);
    if (known.size >= MOST) known.clear();
    known.set(word, found);
  }
  return found;
}
