import type { Glossary } from './glossary.ts';
import { joined, parted } from './joins.ts';
import { meaningsOf } from './kindred.ts';
import type { Speller } from './speller.ts';
import { stem } from './stems.ts';
import { type Token, tokens } from './tokens.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A word as it was read. `text` differs from `said` where it was written out or its spelling mended. */
export type ReadWord = {
  readonly said: string;
  readonly text: string;
  readonly stem: string;
  readonly start: number;
  readonly end: number;
  /** False for a word that nobody of the graph ever used and that is like none they used. */
  readonly known: boolean;
};

/** A text as it was read. `phrases` says the same in other words, beside the hirer's own, which are all in `words`. */
export type Reading = {
  readonly words: readonly ReadWord[];
  readonly phrases: readonly (readonly string[])[];
  /** What the words come to in plain terms, each once: 'stuck', 'toilet'. */
  readonly meanings: readonly string[];
};

/** @param cut The text's tokens, where they are at hand. */
export type Reader = (text: string, cut?: readonly Token[]) => Reading;

export type ReaderOptions = { readonly vocabulary: Vocabulary; readonly spell: Speller; readonly glossary: Glossary };

/** Reads texts with one vocabulary. The same text gives the same reading. */
export function createReader({ vocabulary, spell, glossary }: ReaderOptions): Reader {
  return (text, cut = tokens(text)) => {
    const words: ReadWord[] = [];
    const phrases: (readonly string[])[] = [];
    for (const token of cut) readToken(token, text, words, phrases, vocabulary, spell);
    for (let i = 0; i + 1 < words.length; i++) {
      const one = joined(words[i]?.text ?? '', words[i + 1]?.text ?? '', vocabulary);
      if (one !== null) phrases.push([one]);
    }
    const stems = words.map((word) => word.stem);
    addGlossary(stems, phrases, glossary);
    return { words, phrases, meanings: meaningsOf(stems) };
  };
}

function readToken(
  token: Token,
  text: string,
  words: ReadWord[],
  phrases: (readonly string[])[],
  vocabulary: Vocabulary,
  spell: Speller,
): void {
  const said = text.slice(token.start, token.end);
  const add = (read: string, known: boolean) =>
    words.push({ said, text: read, stem: stem(read), start: token.start, end: token.end, known });
  const two = parted(token.text, vocabulary);
  if (vocabulary.counts.has(token.text)) {
    add(token.text, true);
    if (two !== null) phrases.push(two);
    return;
  }
  const mended = spell(token.text);
  if (mended !== null) add(mended, true);
  else if (two !== null) for (const half of two) add(half, true);
  else add(token.text, false);
}

function addGlossary(stems: readonly string[], phrases: (readonly string[])[], glossary: Glossary): void {
  for (let at = 0; at < stems.length; ) {
    const meaning = glossary(stems, at);
    phrases.push(...(meaning?.means ?? []));
    at += meaning?.length ?? 1;
  }
}
