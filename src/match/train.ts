import { seeded } from '../basics/seeded.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { type Model, packWeights } from './model.ts';
import { prepare } from './prepare.ts';
import { fitSoftmax, type SoftmaxOptions } from './softmax.ts';
import { linesHash, type TrainingLine } from './training-lines.ts';

export type TrainOptions = SoftmaxOptions & { readonly temperature: number };

export const TRAIN: TrainOptions = { epochs: 3, rate: 0.5, l2: 1e-4, least: 0.001, temperature: 1 };

/** Fits in steps, so that a worker can stop in between: `step` does one epoch and says whether there are more. */
export type Training = { readonly step: () => boolean; readonly model: () => Model };

/** Fits the softmax weights on the lines. Deterministic: lines, options and seed give the same model to the bit. */
export function train(
  knowledge: Pick<Knowledge, 'topics' | 'glossary'>,
  lines: readonly TrainingLine[],
  seed: number,
  options: TrainOptions = TRAIN,
): Training {
  const prepared = prepare(knowledge, lines);
  const { vectors, labels, keys, space, vocabulary, groups, groupCount } = prepared;
  const task = { vectors, labels, classes: keys.length, featureCount: space.names.length, groups, groupCount };
  const fit = fitSoftmax(task, options, seeded(seed));
  let done = 0;
  return {
    step: () => {
      if (done < options.epochs) fit.epoch();
      done++;
      return done < options.epochs;
    },
    model: () => ({
      hash: linesHash(lines),
      keys,
      space,
      vocabulary,
      weights: packWeights(fit.weights()),
      temperature: options.temperature,
    }),
  };
}
