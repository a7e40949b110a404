import { createGlossary, type GlossaryLine } from '../language/glossary.ts';
import { createReader, type Reading } from '../language/reader.ts';
import { rightWords } from '../language/right-words.ts';
import { createSpeller } from '../language/speller.ts';
import type { Token } from '../language/tokens.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import { createLinker, type Mention, type Naming } from './links.ts';

/** A text as it was read, with the parts of a van that it names. */
export type Seen = Reading & { readonly mentions: readonly Mention[] };

/** @param cut The text's tokens, where they are at hand. */
export type See = (text: string, cut?: readonly Token[]) => Seen;

/** Reads texts for one graph: its words, its glossary, the names of its parts. */
export function createSee(
  { glossary, namings }: { readonly glossary: readonly GlossaryLine[]; readonly namings: readonly Naming[] },
  vocabulary: Vocabulary,
): See {
  const spell = createSpeller({ counts: vocabulary.counts, protectedWords: rightWords() });
  const read = createReader({ vocabulary, spell, glossary: createGlossary(glossary) });
  const link = createLinker(namings);
  return (text, cut) => {
    const reading = read(text, cut);
    return { ...reading, mentions: link(reading.words.map((word) => word.stem)) };
  };
}
