import type { Knowledge } from '../knowledge/knowledge.ts';
import { createLanguageReader, type LanguageReader } from '../language/language-of.ts';
import { rightWords } from '../language/right-words.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Calibration } from './calibration.ts';
import { BAYES_CALIBRATION, DEFAULT_CALIBRATION } from './default-calibration.ts';
import { type Model, packedScorer } from './model.ts';
import { naiveBayes } from './naive-bayes.ts';
import { prepare } from './prepare.ts';
import type { Scorer } from './scorer.ts';
import { createSee, type See } from './seen.ts';
import { optionsFor, TRAIN } from './train-options.ts';
import { trainingInput } from './training-input.ts';
import type { Space } from './vector.ts';

/** Brings naive Bayes's scores of length-scaled texts to about the spread of the fitted weights'. */
export const BAYES_TEMPERATURE = 0.5;

/** All that scoring a text needs. */
export type Ready = {
  readonly keys: readonly string[];
  readonly see: See;
  readonly space: Space;
  readonly scorer: Scorer;
  /** Scores are divided by this before they become probabilities. */
  readonly temperature: number;
  readonly calibration: Calibration;
  readonly languageOf: LanguageReader;
};

/** From the graph alone: naive Bayes, at once. */
export function untrained(knowledge: Knowledge): Ready {
  const input = trainingInput(knowledge);
  const { keys, labels, vectors, space, see, vocabulary } = prepare(
    input,
    optionsFor(input.lines.length, TRAIN).fewestLines,
  );
  const scorer = naiveBayes(vectors, labels, keys.length, space.names.length);
  return {
    keys,
    see,
    space,
    scorer,
    temperature: BAYES_TEMPERATURE,
    calibration: BAYES_CALIBRATION,
    languageOf: languageIn(vocabulary),
  };
}

export function trained(knowledge: Knowledge, { keys, space, vocabulary, weights, calibration }: Model): Ready {
  const see = createSee(trainingInput(knowledge), vocabulary);
  const scorer = packedScorer(weights);
  return {
    keys,
    see,
    space,
    scorer,
    temperature: 1,
    calibration: calibration ?? DEFAULT_CALIBRATION,
    languageOf: languageIn(vocabulary),
  };
}

function languageIn({ counts }: Vocabulary): LanguageReader {
  const right = rightWords();
  return createLanguageReader((word) => right.has(word) || counts.has(word));
}
