import type { Calibration } from './calibration.ts';

/**
 * As fitted on the shipped graph (tests/bench/understanding/fit-defaults.ts prints it); serves a graph until its own is
 * fitted in the background.
 */
export const DEFAULT_CALIBRATION: Calibration = {
  best: [-4.864, 0.239, 0.19, 0.14, -0.083, -0.117, -4.165, 1.126, -0.093],
  among: [-5.229, -0.068, 0.122, 0.409, -0.111, -0.125, -4.711, 1.388, -0.167],
  lacks: [-4.762, 0.526, -0.333, -0.07, 0.755, -0.145, -4.362, 1.723, -0.071],
};

/** For naive Bayes alone, in the seconds before the weights are fitted; fitted in the same way. */
export const BAYES_CALIBRATION: Calibration = {
  best: [-4.683, -0.026, 0.309, 0.181, -0.074, -0.033, -6.114, 0.821, -0.174],
  among: [-4.57, -0.15, 0.232, 0.309, -0.086, -0.033, -7.152, 1.03, -0.225],
  lacks: [-5.083, 0.038, -0.023, 0.113, 0.462, -0.081, -5.074, 1.475, -0.647],
};
