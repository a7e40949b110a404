import type { Scorer } from './scorer.ts';
import type { Vector } from './vector.ts';

/** Keeps a class from being ruled out by one feature it never had. */
const SMOOTHING = 0.1;

/** One feature's gain for each class that ever had it. */
type Row = { readonly label: Int32Array; readonly gain: Float32Array };

/**
 * Naive Bayes as sums: a class's score is the gains of the text's features, less the text's length times the class's
 * `offset`. Sparse: the cost of a score grows with the classes that share a feature.
 */
export type NaiveBayes = Scorer & {
  readonly rows: readonly Row[];
  readonly offset: Float64Array;
};

/**
 * Multinomial naive Bayes on tf-idf weights with equal priors. Needs no fitting beyond adding up, so it answers in the
 * seconds while the softmax weights are being fitted.
 *
 * @param labels The class of each vector, by number.
 */
export function naiveBayes(
  vectors: readonly Vector[],
  labels: readonly number[],
  classes: number,
  featureCount: number,
): NaiveBayes {
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
    gain: Float32Array.from(of.values(), (sum) => Math.log((sum + SMOOTHING) / SMOOTHING)),
  }));
  const offset = Float64Array.from(totals, (total) => Math.log(total + SMOOTHING * featureCount));
  return {
    classes,
    rows,
    offset,
    score: (vector, out) => {
      let length = 0;
      out.fill(0);
      for (let i = 0; i < vector.at.length; i++) {
        const weight = vector.weight[i] as number;
        const { label, gain } = rows[vector.at[i] as number] as Row;
        length += weight;
        for (let j = 0; j < label.length; j++) {
          const c = label[j] as number;
          out[c] = (out[c] as number) + weight * (gain[j] as number);
        }
      }
      for (let c = 0; c < classes; c++) out[c] = (out[c] as number) - length * (offset[c] as number);
    },
    weight: (feature, label) => {
      const row = rows[feature] as Row;
      const found = row.label.indexOf(label);
      return (found < 0 ? 0 : (row.gain[found] as number)) - (offset[label] as number);
    },
  };
}

/**
 * Adds a share of naive Bayes to fitted weights, in place: both are sums over features, so the mixture of the two costs
 * no more to score than one of them.
 */
export function mixIn(rows: Float32Array, bayes: NaiveBayes, share: number): void {
  const { classes } = bayes;
  // What all classes lose alike says nothing; taking it off keeps the weights small enough for 8 bits.
  const mean = bayes.offset.reduce((sum, one) => sum + one, 0) / classes;
  const offset = bayes.offset.map((one) => one - mean);
  for (const [feature, { label, gain }] of bayes.rows.entries()) {
    const base = feature * classes;
    for (let c = 0; c < classes; c++) rows[base + c] = (rows[base + c] as number) - share * (offset[c] as number);
    for (let j = 0; j < label.length; j++) {
      const place = base + (label[j] as number);
      rows[place] = (rows[place] as number) + share * (gain[j] as number);
    }
  }
}
