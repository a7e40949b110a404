import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.123, 0.365, 0.152, 0.108, -0.113, -0.077, -2.911, 0.959, 0.015],
  among: [-4.354, 0.169, 0.02, 0.348, -0.137, -0.068, -3.852, 1.276, -0.048],
  lacks: [-1.069, -0.068, 0.079, 0.133, 0.771, 0.05, 0.233, 0.371, 0.395],
};

/** For naive Bayes alone, in the seconds before the weights are fitted; fitted in the same way. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-4.21, -0.117, 0.447, 0.151, -0.084, -0.056, -6.423, 0.627, 0.203],
  among: [-4.047, -0.263, 0.354, 0.338, -0.104, -0.028, -8.079, 0.831, 0.13],
  lacks: [-0.848, 0.028, 0.001, 0.089, 0.531, 0.062, 0.204, 0.282, 0.008],
};
