import { tokens } from '../language/tokens.ts';
import { type Vocabulary, vocabularyOf } from '../language/vocabulary.ts';
import { roleOf } from './ranking.ts';
import { createSee, type See } from './seen.ts';
import type { TrainingInput } from './training-input.ts';
import { buildSpace, type Space, type Vector } from './vector.ts';

/** The lines as numbers. */
export type Prepared = {
  readonly keys: readonly string[];
  readonly labels: readonly number[];
  readonly vectors: readonly Vector[];
  readonly lineWeights: readonly number[];
  readonly space: Space;
  readonly vocabulary: Vocabulary;
  readonly see: See;
  readonly groups: readonly (readonly number[])[];
  readonly groupCount: number;
};

/** Reads every line and turns it into a vector. */
export function prepare(input: TrainingInput, fewestLines: number): Prepared {
  const { lines, glossary, groups } = input;
  const glossaryTexts = glossary.flatMap((word) => [word.says, word.means]);
  const cut = lines.map((line) => tokens(line.text));
  const vocabulary = vocabularyOf(cut, glossaryTexts);
  const see = createSee(input, vocabulary);
  const seen = lines.map((line, i) => see(line.text, cut[i]));
  const keys = [...new Set(lines.map((line) => line.key))];
  const numbers = new Map(keys.map((key, i) => [key, i]));
  const labels = lines.map((line) => numbers.get(line.key) as number);
  const { space, vectors } = buildSpace(seen, labels, fewestLines);
  const weights = classWeights(labels, keys);
  const lineWeights = labels.map((label) => weights[label] as number);
  return { keys, labels, vectors, lineWeights, space, vocabulary, see, ...numbered(keys, groups) };
}

/** How many times a topic's weight what is no topic may have: asking for a person must not be missed. */
const MOST_WEIGHT = { person: 3, background: 1.5, chat: 1.5 } as const;

/**
 * How much a line of each class counts. A class of many more lines than a topic has would swallow every question it faintly
 * resembles: the lines of what is no topic together count little more than a topic's.
 */
export function classWeights(labels: readonly number[], keys: readonly string[]): readonly number[] {
  const counts = new Array<number>(keys.length).fill(0);
  for (const label of labels) counts[label] = (counts[label] as number) + 1;
  const usual = [...counts].sort((a, b) => a - b)[Math.floor(keys.length / 2)] as number;
  return keys.map((key, label) => {
    const role = roleOf(key);
    return role === 'topic' ? 1 : Math.min(1, (MOST_WEIGHT[role] * usual) / (counts[label] as number));
  });
}

/** The groups of each class by number, in the order of the classes. */
export function numbered(keys: readonly string[], names: TrainingInput['groups']) {
  const numbers = new Map<string, number>();
  const groups = keys.map((key) =>
    (names[key] ?? []).map((name) => {
      const number = numbers.get(name) ?? numbers.size;
      numbers.set(name, number);
      return number;
    }),
  );
  return { groups, groupCount: numbers.size };
}
