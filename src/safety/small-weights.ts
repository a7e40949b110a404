/** Long texts weigh no more than short ones: what the sum over a text's features is multiplied by. */
export function shareOf(features: number): number {
  return 1 / Math.sqrt(features + 1);
}

const MOST_STEPS = 127;

/** A weight in whole steps of so many to one log-odd, as 8 bits hold it: finer says nothing. */
export function toSteps(weight: number, stepsToOne: number): number {
  return Math.min(Math.max(Math.round(weight * stepsToOne), -MOST_STEPS), MOST_STEPS);
}
