import { tokens } from '../language/tokens.ts';
import { type Vocabulary, vocabularyWith } from '../language/vocabulary.ts';
import type { TrainingInput } from './training-input.ts';

/** A model's words with those of the lines and terms that are new in a changed graph. */
export function vocabularyAfter(known: Vocabulary, before: TrainingInput, after: TrainingInput): Vocabulary {
  const texts = new Set(before.lines.map(({ text }) => text));
  const terms = (input: TrainingInput) => input.glossary.flatMap(({ says, means }) => [says, means]);
  const old = new Set(terms(before));
  return vocabularyWith(
    known,
    after.lines.filter(({ text }) => !texts.has(text)).map(({ text }) => tokens(text)),
    terms(after).filter((term) => !old.has(term)),
  );
}
