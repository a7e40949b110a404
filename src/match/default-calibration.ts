import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [0, 1, 0, 0, 0, 0, 0, 0],
  among: [0, 0, 0, 1, 0, 0, 0, 0],
  lacks: [0, 0, 0, 0, 1, 0, 0, 0],
};

/** For naive Bayes alone, in the seconds before the weights are fitted. */
export const BAYES_CALIBRATION: Calibration = {
  best: [0, 1, 0, 0, 0, 0, 0, 0],
  among: [0, 0, 0, 1, 0, 0, 0, 0],
  lacks: [0, 0, 0, 0, 1, 0, 0, 0],
};
