import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.157, 0.33, 0.184, 0.104, -0.094, -0.096, -3.279, 0.951, -0.041],
  among: [-4.246, 0.145, 0.028, 0.357, -0.117, -0.072, -4.196, 1.247, -0.095],
  lacks: [-1.158, -0.036, 0.073, 0.11, 0.776, 0.047, -0.188, 0.431, 0.399],
};

/** For naive Bayes alone, in the seconds before the weights are fitted; fitted in the same way. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-4.21, -0.117, 0.447, 0.151, -0.084, -0.056, -6.423, 0.627, 0.203],
  among: [-4.047, -0.263, 0.354, 0.338, -0.104, -0.028, -8.079, 0.831, 0.13],
  lacks: [-0.848, 0.028, 0.001, 0.089, 0.531, 0.062, 0.204, 0.282, 0.008],
};
