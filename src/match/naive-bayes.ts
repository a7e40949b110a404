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
  const totals = new Float64Array(classes);
  const columns: { readonly label: number; readonly at: Int32Array; readonly sum: Float32Array }[] = [];
  const counts = new Int32Array(featureCount);
  for (const [label, lines] of byLabel(labels, classes).entries()) {
    const { at, sum } = summed(lines, vectors);
    for (let i = 0; i < at.length; i++) {
      counts[at[i] as number] = (counts[at[i] as number] as number) + 1;
      totals[label] = (totals[label] as number) + (sum[i] as number);
    }
    columns.push({ label, at, sum });
  }
  const rows: Row[] = Array.from(counts, (count) => ({ label: new Int32Array(count), gain: new Float32Array(count) }));
  counts.fill(0);
  for (const { label, at, sum } of columns) {
    for (let i = 0; i < at.length; i++) {
      const feature = at[i] as number;
      const row = rows[feature] as Row;
      const next = counts[feature] as number;
      row.label[next] = label;
      row.gain[next] = Math.log(((sum[i] as number) + SMOOTHING) / SMOOTHING);
      counts[feature] = next + 1;
    }
  }
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

function byLabel(labels: readonly number[], classes: number): readonly (readonly number[])[] {
  const lines: number[][] = Array.from({ length: classes }, () => []);
  for (const [line, label] of labels.entries()) (lines[label] as number[]).push(line);
  return lines;
}

/** The sum of some vectors, as the features they have and their weights. */
function summed(lines: readonly number[], vectors: readonly Vector[]) {
  const size = lines.reduce((most, line) => most + (vectors[line] as Vector).at.length, 0);
  const at = new Int32Array(size);
  const weight = new Float32Array(size);
  const place = new Map<number, number>();
  let count = 0;
  for (const line of lines) {
    const vector = vectors[line] as Vector;
    for (let i = 0; i < vector.at.length; i++) {
      const feature = vector.at[i] as number;
      let found = place.get(feature);
      if (found === undefined) {
        found = count++;
        place.set(feature, found);
        at[found] = feature;
      }
      weight[found] = (weight[found] as number) + (vector.weight[i] as number);
    }
  }
  return { at: at.subarray(0, count), sum: weight.subarray(0, count) };
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
