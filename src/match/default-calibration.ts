import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.227, 0.268, 0.212, 0.155, -0.102, -0.065, -4.529, 0.951, 0.172],
  among: [-4.405, 0.03, 0.066, 0.439, -0.136, -0.05, -5.272, 1.227, 0.085],
  lacks: [-1.139, -0.078, 0.129, 0.109, 0.798, 0.037, -0.028, 0.374, 0.303],
};

/** For naive Bayes alone, in the seconds before the weights are fitted: its own probabilities, held a little back. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-0.5, 1, 0, 0, 0, 0, -4, 0, 0],
  among: [-0.5, 0, 0, 1, 0, 0, -4, 0, 0],
  lacks: [-0.9, 0, 0, 0, 0.8, 0, 0, 0, 0.2],
};
