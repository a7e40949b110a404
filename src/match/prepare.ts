import type { Knowledge } from '../knowledge/knowledge.ts';
import { createGlossary } from '../language/glossary.ts';
import { createReader, type Reader } from '../language/reader.ts';
import { createSpeller } from '../language/speller.ts';
import { type Vocabulary, vocabularyOf } from '../language/vocabulary.ts';
import type { TrainingLine } from './training-lines.ts';
import { buildSpace, type Space, type Vector, vectorOf } from './vector.ts';

/** Features of fewer lines than this say nothing that will ever be heard again. */
const FEWEST_LINES = 2;

/** The lines as numbers. */
export type Prepared = {
  readonly keys: readonly string[];
  readonly labels: readonly number[];
  readonly vectors: readonly Vector[];
  readonly space: Space;
  readonly vocabulary: Vocabulary;
  readonly read: Reader;
  readonly groups: readonly (readonly number[])[];
  readonly groupCount: number;
};

/** The reader for one graph: its words, its glossary. */
export function readerFor(knowledge: Pick<Knowledge, 'glossary'>, vocabulary: Vocabulary): Reader {
  const spell = createSpeller({ counts: vocabulary.counts, protectedWords: new Set() });
  return createReader({ vocabulary, spell, glossary: createGlossary(knowledge.glossary.words) });
}

/** Reads every line and turns it into a vector. */
export function prepare(knowledge: Pick<Knowledge, 'topics' | 'glossary'>, lines: readonly TrainingLine[]): Prepared {
  const glossaryTexts = knowledge.glossary.words.flatMap((word) => [word.says, word.means]);
  const vocabulary = vocabularyOf([...lines.map((line) => line.text), ...glossaryTexts]);
  const read = readerFor(knowledge, vocabulary);
  const readings = lines.map((line) => read(line.text));
  const space = buildSpace(readings, FEWEST_LINES);
  const keys = [...new Set(lines.map((line) => line.key))];
  const numbers = new Map(keys.map((key, i) => [key, i]));
  const labels = lines.map((line) => numbers.get(line.key) as number);
  const vectors = readings.map((reading) => vectorOf(reading, space));
  return { keys, labels, vectors, space, vocabulary, read, ...sharing(knowledge, keys) };
}

/** The groups each class shares weights with: its system, its kind, the parts it is about. */
function sharing(knowledge: Pick<Knowledge, 'topics'>, keys: readonly string[]) {
  const topics = new Map([...knowledge.topics.values()].map((topic) => [`topic/${topic.id}`, topic]));
  const numbers = new Map<string, number>();
  const groups = keys.map((key) => {
    const topic = topics.get(key);
    if (topic === undefined) return [];
    return [`system/${topic.system}`, `kind/${topic.kind}`].map((name) => {
      const number = numbers.get(name) ?? numbers.size;
      numbers.set(name, number);
      return number;
    });
  });
  return { groups, groupCount: numbers.size };
}
