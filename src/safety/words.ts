import { writeOut } from '../language/contractions.ts';
import { foldText } from './fold.ts';

/**
 * One word as the reading sees it. `sentence` grows with each full stop, question or exclamation mark and line, `clause` with
 * each comma as well.
 */
export type Word = { readonly text: string; readonly sentence: number; readonly clause: number };

/** What becomes of apostrophes: English contractions are written out, in other languages the two sides are two words. */
export type Apostrophes = 'written-out' | 'parted';

/** A text cut into words. `asks` has the sentences that end in a question mark. */
export type Words = { readonly words: readonly Word[]; readonly asks: ReadonlySet<number> };

const PIECES = /[\p{L}\p{N}]+(?:'[\p{L}\p{N}]+)*'?|[.!?\n]+|[,;:()]|…|[£€$]|\p{Extended_Pictographic}/gu;
const DIGITS = /\d/;
const LETTERS = /\p{L}/u;
const LEET: Readonly<Record<string, string>> = { '0': 'o', '1': 'l', '3': 'e', '4': 'a', '5': 's', '7': 't' };
/** Three and more of one letter are somebody shouting: 'gaaas'. */
const DRAWN_OUT = /(\p{L})\1{2,}/gu;
/** 'g a s', 's.m.o.k.e': single letters, parted. Hidden from texts such as 'a b' by asking for three. */
const SPELT_OUT = /(?<![\p{L}\p{N}'])\p{L}(?:[ .*_-]\p{L}){2,}(?![\p{L}\p{N}'])/gu;

/**
 * Cuts a text into words after folding it.
 *
 * @param signs What picture signs say; a sign that is not there says nothing.
 */
export function wordsOf(text: string, signs: ReadonlyMap<string, string>, apostrophes: Apostrophes): Words {
  const folded = foldText(text).replace(SPELT_OUT, (spelt) => spelt.replace(/[ .*_-]/g, ''));
  const words: Word[] = [];
  const asks = new Set<number>();
  let sentence = 0;
  let clause = 0;
  for (const [piece] of folded.matchAll(PIECES)) {
    if (LETTERS.test(piece) || DIGITS.test(piece)) {
      const word = plainWord(piece);
      const parts = apostrophes === 'written-out' ? writtenOut(word) : word.split("'");
      for (const part of parts) if (part !== '') words.push({ text: part, sentence, clause });
    } else if (/^[.!?\n…]/.test(piece)) {
      if (piece.includes('?')) asks.add(sentence);
      sentence++;
      clause++;
    } else if (/^[,;:()]$/.test(piece)) {
      clause++;
    } else {
      const said = signs.get(piece);
      if (said !== undefined) words.push({ text: said, sentence, clause });
    }
  }
  return { words, asks };
}

function plainWord(piece: string): string {
  const word = piece.replace(DRAWN_OUT, '$1$1');
  return DIGITS.test(word) && LETTERS.test(word) && /^\p{L}/u.test(word)
    ? word.replace(/\d/g, (digit) => LEET[digit] ?? digit)
    : word;
}

const remembered = new Map<string, readonly string[]>();
const MOST_REMEMBERED = 20_000;

/** Contractions written out. Remembered: hirers use few words, often. */
function writtenOut(word: string): readonly string[] {
  let found = remembered.get(word);
  if (found === undefined) {
    found = writeOut(word);
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    remembered.set(word, found);
  }
  return found;
}
