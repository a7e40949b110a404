import type { SoftmaxOptions } from './softmax.ts';

export type TrainOptions = SoftmaxOptions & {
  /** How much of naive Bayes is added to the fitted weights. */
  readonly bayes: number;
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
  fewestLines: 2,
};
