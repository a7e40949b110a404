import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.206, 0.388, 0.142, 0.113, -0.121, -0.071, -4.446, 0.95, 0.175],
  among: [-4.197, 0.123, 0.008, 0.424, -0.143, -0.049, -5.277, 1.166, 0.101],
  lacks: [-1.015, -0.093, 0.108, 0.138, 0.802, 0.036, 0.155, 0.333, 0.202],
};

/** For naive Bayes alone, in the seconds before the weights are fitted: its own probabilities, held a little back. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-0.5, 1, 0, 0, 0, 0, -4, 0, 0],
  among: [-0.5, 0, 0, 1, 0, 0, -4, 0, 0],
  lacks: [-0.9, 0, 0, 0, 0.8, 0, 0, 0, 0.2],
};
