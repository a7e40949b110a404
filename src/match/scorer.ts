import type { Vector } from './vector.ts';

/** Gives every class a score for a text: logits, whose differences alone mean anything. */
export type Scorer = {
  readonly classes: number;
  /** Overwrites `out`, one place for each class. */
  readonly score: (vector: Vector, out: Float64Array) => void;
  /** What one unit of a feature adds to a class, for explanations. */
  readonly weight: (feature: number, label: number) => number;
};
