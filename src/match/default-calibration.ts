import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.227, 0.268, 0.212, 0.155, -0.102, -0.065, -4.529, 0.951, 0.172],
  among: [-4.405, 0.03, 0.066, 0.439, -0.136, -0.05, -5.272, 1.227, 0.085],
  lacks: [-1.139, -0.078, 0.129, 0.109, 0.798, 0.037, -0.028, 0.374, 0.303],
};

/** For naive Bayes alone, in the seconds before the weights are fitted; fitted in the same way. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-4.21, -0.117, 0.447, 0.151, -0.084, -0.056, -6.423, 0.627, 0.203],
  among: [-4.047, -0.263, 0.354, 0.338, -0.104, -0.028, -8.079, 0.831, 0.13],
  lacks: [-0.848, 0.028, 0.001, 0.089, 0.531, 0.062, 0.204, 0.282, 0.008],
};
