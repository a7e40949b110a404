import type { Vocabulary } from '../language/vocabulary.ts';
import type { Calibration } from './calibration.ts';
import type { Scorer } from './scorer.ts';
import type { Weights } from './softmax.ts';
import type { Space } from './vector.ts';

/** Weights in 8 bits: `rows[feature * classes + class] * scale[feature]`. */
export type PackedWeights = {
  readonly classes: number;
  readonly rows: Int8Array;
  readonly scale: Float32Array;
};

/** What training leaves behind: all that reading and matching need beside the graph itself. */
export type Model = {
  /** Hash of what it was fitted on ({@link inputHash}); a model is used with that graph only. */
  readonly hash: string;
  readonly keys: readonly string[];
  readonly space: Space;
  readonly vocabulary: Vocabulary;
  readonly weights: PackedWeights;
  /** Null until it has been fitted: the shipped graph's then serves. */
  readonly calibration: Calibration | null;
};

/** Rounds weights to 8 bits, a scale for each feature. */
export function packWeights({ rows, classes }: Weights): PackedWeights {
  const features = rows.length / classes;
  const packed: PackedWeights = { classes, rows: new Int8Array(rows.length), scale: new Float32Array(features) };
  for (let f = 0; f < features; f++) packRow(rows.subarray(f * classes, (f + 1) * classes), f, packed);
  return packed;
}

/** Rounds the weights of one feature into their place. */
export function packRow(row: Float32Array, feature: number, { classes, rows, scale }: PackedWeights): void {
  let largest = 0;
  for (let c = 0; c < classes; c++) largest = Math.max(largest, Math.abs(row[c] as number));
  const step = largest / 127;
  scale[feature] = step;
  for (let c = 0; c < classes; c++) rows[feature * classes + c] = step > 0 ? Math.round((row[c] as number) / step) : 0;
}

/** Scores with 8-bit weights. */
export function packedScorer({ classes, rows, scale }: PackedWeights): Scorer {
  return {
    classes,
    score: (vector, out) => {
      out.fill(0);
      for (let i = 0; i < vector.at.length; i++) {
        const feature = vector.at[i] as number;
        const x = (vector.weight[i] as number) * (scale[feature] as number);
        const base = feature * classes;
        for (let c = 0; c < classes; c++) out[c] = (out[c] as number) + x * (rows[base + c] as number);
      }
    },
    weight: (feature, label) => (rows[feature * classes + label] ?? 0) * (scale[feature] ?? 0),
  };
}
