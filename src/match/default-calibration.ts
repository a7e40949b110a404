import type { Calibration } from './calibration.ts';

/** As fitted on the shipped graph; serves a graph until its own is fitted in the background. */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-5.106, 0.198, 0.213, 0.193, -0.085, -0.091, -3.556, 1.264, -0.094],
  among: [-5.295, -0.074, 0.131, 0.46, -0.103, -0.084, -4.423, 1.511, -0.15],
  lacks: [-4.676, 0.482, -0.327, -0.004, 0.766, -0.087, -4.747, 1.81, -0.15],
};

/** For naive Bayes alone, in the seconds before the weights are fitted; fitted in the same way. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-4.21, -0.117, 0.447, 0.151, -0.084, -0.056, -6.423, 0.627, 0.203],
  among: [-4.047, -0.263, 0.354, 0.338, -0.104, -0.028, -8.079, 0.831, 0.13],
  lacks: [-0.848, 0.028, 0.001, 0.089, 0.531, 0.062, 0.204, 0.282, 0.008],
};
