import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.091, 0.37, 0.156, 0.121, -0.115, -0.066, -4.445, 0.917, 0.167],
  among: [-4.368, 0.077, 0.037, 0.424, -0.141, -0.066, -5.151, 1.197, 0.136],
  lacks: [-0.914, 0.024, 0.045, 0.084, 0.8, 0.049, 0.057, 0.376, 0.174],
};

/** For naive Bayes alone, in the seconds before the weights are fitted: its own probabilities, held a little back. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-0.5, 1, 0, 0, 0, 0, -4, 0, 0],
  among: [-0.5, 0, 0, 1, 0, 0, -4, 0, 0],
  lacks: [-0.9, 0, 0, 0, 0.8, 0, 0, 0, 0.2],
};
