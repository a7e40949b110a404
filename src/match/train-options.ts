import type { SoftmaxOptions } from './softmax.ts';

export type TrainOptions = SoftmaxOptions & {
  /** How much of naive Bayes is added to the fitted weights. */
  readonly bayes: number;
  /** How much of the ridge regression is added to the fitted weights, for each line that a topic has on the average. */
  readonly ridge: number;
  /** Features of fewer lines than this are left out: they say nothing that will be heard again. */
  readonly fewestLines: number;
};

/** Set by leaving out one writer at a time; DEVELOPERS.md has the ablation. */
export const TRAIN: TrainOptions = {
  epochs: 6,
  rate: 0.3,
  l2: 1e-4,
  least: 0.001,
  dropped: 0.6,
  bayes: 0.3,
  ridge: 0,
  fewestLines: 2,
};

/**
 * Below this many lines every feature is rare, and one of a single line is worth keeping; and a ridge regression, which
 * takes time by the line, goes better with the fitted weights than naive Bayes does, the better the more lines a topic has.
 * Set by cross-validation on the training parts of the open sets alone.
 */
const FEW_LINES = 3000;
const OF_FEW = { fewestLines: 1, bayes: 0, ridge: 0.45 } as const;
/** Lines read in all; a small graph is read more often over. */
const FEWEST_STEPS = 60_000;
const MOST_EPOCHS = 40;

/** The options for a graph of so many lines. */
export function optionsFor(lines: number, options: TrainOptions): TrainOptions {
  const epochs = Math.max(options.epochs, Math.min(MOST_EPOCHS, Math.ceil(FEWEST_STEPS / Math.max(1, lines))));
  return { ...options, epochs, ...(lines < FEW_LINES ? OF_FEW : {}) };
}
