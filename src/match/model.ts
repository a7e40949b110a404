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
  const scale = new Float32Array(features);
  const packed = new Int8Array(rows.length);
  for (let f = 0; f < features; f++) {
    let largest = 0;
    for (let c = 0; c < classes; c++) largest = Math.max(largest, Math.abs(rows[f * classes + c] as number));
    const step = largest / 127;
    scale[f] = step;
    if (step > 0)
      for (let c = 0; c < classes; c++) packed[f * classes + c] = Math.round((rows[f * classes + c] as number) / step);
  }
  return { classes, rows: packed, scale };
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
