import { writeOut } from './contractions.ts';
import { emojiWords } from './emoji.ts';
import { normalForm } from './normal-form.ts';

/**
 * One word as it is compared, and where it stands in what was typed: `text.slice(start, end)` is what was said.
 * A contraction gives several tokens with the same place.
 */
export type Token = { readonly text: string; readonly start: number; readonly end: number };

const PIECES =
  /\p{L}[\p{L}\p{M}]*(?:['\u2018\u2019\u201b\u02bc\u00b4`\u2032][\p{L}\p{M}]+)*['\u2018\u2019\u201b\u02bc\u00b4`\u2032]?|\p{Nd}+(?:[.,]\p{Nd}+)*|\p{Extended_Pictographic}/gu;

/**
 * Cuts a text into words, numbers and picture signs, written out and in normal form.
 * Letters and digits part from each other: '16a' is '16' and 'a'. Punctuation gives nothing.
 */
export function tokens(text: string): readonly Token[] {
  const found: Token[] = [];
  for (const match of text.matchAll(PIECES)) {
    const said = match[0];
    const start = match.index;
    const end = start + said.length;
    for (const word of wordsOf(said)) found.push({ text: word, start, end });
  }
  return found;
}

const MOST = 50_000;
const known = new Map<string, readonly string[]>();

/** What one typed piece is written out to. Remembered: writing out takes most of the time, and hirers use few words. */
function wordsOf(said: string): readonly string[] {
  let found = known.get(said);
  if (found === undefined) {
    found = writtenOut(said);
    if (known.size >= MOST) known.clear();
    known.set(said, found);
  }
  return found;
}

function writtenOut(said: string): readonly string[] {
  const form = normalForm(said);
  if (/^\p{Nd}/u.test(form)) return [form.replaceAll(',', '.')];
  if (/^\p{L}/u.test(form)) return writeOut(form).filter((word) => word !== '');
  return emojiWords(said);
}
