import type { Vocabulary } from '../language/vocabulary.ts';
import type { Scorer } from './scorer.ts';
import type { Weights } from './softmax.ts';
import type { Space } from './vector.ts';

/** Weights in 8 bits: `rows[feature * classes + class] * scale[feature]`. */
export type PackedWeights = {
  readonly classes: number;
  readonly rows: Int8Array;
  readonly scale: Float32Array;
  readonly bias: Float32Array;
};

/** What training leaves behind: all that reading and matching need beside the graph itself. */
export type Model = {
  /** Hash of the training lines it was fitted on ({@link linesHash}); a model is used with those lines only. */
  readonly hash: string;
  readonly keys: readonly string[];
  readonly space: Space;
  readonly vocabulary: Vocabulary;
  readonly weights: PackedWeights;
  /** Scores are divided by this before they become probabilities. */
  readonly temperature: number;
};

/** Rounds weights to 8 bits, a scale for each feature. */
export function packWeights({ rows, bias, classes }: Weights): PackedWeights {
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
  return { classes, rows: packed, scale, bias: Float32Array.from(bias) };
}

/** Scores with 8-bit weights. */
export function packedScorer({ classes, rows, scale, bias }: PackedWeights): Scorer {
  return {
    classes,
    score: (vector, out) => {
      for (let c = 0; c < classes; c++) out[c] = bias[c] as number;
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
