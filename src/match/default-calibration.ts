import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-3.85, 0.422, 0.128, 0.104, -0.094, -0.062, -4.517, 0.89, 0.041],
  among: [-4.166, 0.145, -0.011, 0.42, -0.12, -0.057, -5.314, 1.201, -0.028],
  lacks: [-0.914, -0.026, 0.056, 0.125, 0.808, 0.053, 0.079, 0.36, 0.168],
};

/** For naive Bayes alone, in the seconds before the weights are fitted: its own probabilities, held a little back. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-0.5, 1, 0, 0, 0, 0, -4, 0, 0],
  among: [-0.5, 0, 0, 1, 0, 0, -4, 0, 0],
  lacks: [-0.9, 0, 0, 0, 0.8, 0, 0, 0, 0.2],
};
