import type { Scorer } from './scorer.ts';
import type { Vector } from './vector.ts';

/** Keeps a class from being ruled out by one feature it never had. */
const SMOOTHING = 0.1;

/**
 * Multinomial naive Bayes on tf-idf weights with equal priors. Needs no training beyond adding up, so it answers in the
 * seconds while the softmax weights are being fitted. Sparse: the cost grows with the classes that share a feature.
 *
 * @param labels The class of each vector, by number.
 */
export function naiveBayes(
  vectors: readonly Vector[],
  labels: readonly number[],
  classes: number,
  featureCount: number,
): Scorer {
  const sums: Map<number, number>[] = Array.from({ length: featureCount }, () => new Map());
  const totals = new Float64Array(classes);
  for (const [line, vector] of vectors.entries()) {
    const label = labels[line] as number;
    for (let i = 0; i < vector.at.length; i++) {
      const of = sums[vector.at[i] as number] as Map<number, number>;
      const weight = vector.weight[i] as number;
      of.set(label, (of.get(label) ?? 0) + weight);
      totals[label] = (totals[label] as number) + weight;
    }
  }
  const rows = sums.map((of) => ({
    label: Int32Array.from(of.keys()),
    gain: Float32Array.from([...of.values()].map((sum) => Math.log((sum + SMOOTHING) / SMOOTHING))),
  }));
  const offset = Float64Array.from(totals, (total) => Math.log(total + SMOOTHING * featureCount));
  return {
    classes,
    score: (vector, out) => {
      let length = 0;
      out.fill(0);
      for (let i = 0; i < vector.at.length; i++) {
        const weight = vector.weight[i] as number;
        const row = rows[vector.at[i] as number];
        length += weight;
        if (row === undefined) continue;
        for (let j = 0; j < row.label.length; j++) {
          const label = row.label[j] as number;
          out[label] = (out[label] as number) + weight * (row.gain[j] as number);
        }
      }
      for (let label = 0; label < classes; label++)
        out[label] = (out[label] as number) - length * (offset[label] as number);
    },
    weight: (feature, label) => {
      const row = rows[feature];
      const found = row?.label.indexOf(label) ?? -1;
      return (found < 0 ? 0 : (row?.gain[found] ?? 0)) - (offset[label] ?? 0);
    },
  };
}
