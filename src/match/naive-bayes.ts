import type { Scorer } from './scorer.ts';
import type { Vector } from './vector.ts';

/** Keeps a class from being ruled out by one feature it never had. */
const SMOOTHING = 0.1;

/**
 * Naive Bayes as sums: a class's score is the gains of the text's features, less the text's length times the class's
 * `offset`. Sparse: the cost of a score grows with the classes that share a feature.
 */
export type NaiveBayes = Scorer & {
  /** Feature f's entries in `labels` and `gains` stand from `starts[f]` up to `starts[f + 1]`. */
  readonly starts: Int32Array;
  readonly labels: Int32Array;
  readonly gains: Float32Array;
  readonly offset: Float64Array;
};

/**
 * Multinomial naive Bayes on tf-idf weights with equal priors. Needs no fitting beyond adding up, so it answers in the
 * seconds while the softmax weights are being fitted.
 *
 * @param labelOf The class of each vector, by number.
 */
export function naiveBayes(
  vectors: readonly Vector[],
  labelOf: readonly number[],
  classes: number,
  featureCount: number,
): NaiveBayes {
  const totals = new Float64Array(classes);
  const starts = new Int32Array(featureCount + 1);
  const sum = summer(featureCount);
  const columns = byLabel(labelOf, classes).map((lines, label) => {
    const column = sum(lines, vectors);
    for (let i = 0; i < column.at.length; i++) {
      const next = (column.at[i] as number) + 1;
      starts[next] = (starts[next] as number) + 1;
      totals[label] = (totals[label] as number) + (column.sum[i] as number);
    }
    return column;
  });
  for (let f = 0; f < featureCount; f++) starts[f + 1] = (starts[f + 1] as number) + (starts[f] as number);
  const labels = new Int32Array(starts[featureCount] as number);
  const gains = new Float32Array(labels.length);
  const next = starts.slice();
  for (const [label, column] of columns.entries()) {
    for (let i = 0; i < column.at.length; i++) {
      const feature = column.at[i] as number;
      const place = next[feature] as number;
      labels[place] = label;
      gains[place] = Math.log(((column.sum[i] as number) + SMOOTHING) / SMOOTHING);
      next[feature] = place + 1;
    }
  }
  const offset = Float64Array.from(totals, (total) => Math.log(total + SMOOTHING * featureCount));
  return {
    classes,
    starts,
    labels,
    gains,
    offset,
    score: (vector, out) => {
      let length = 0;
      out.fill(0);
      for (let i = 0; i < vector.at.length; i++) {
        const weight = vector.weight[i] as number;
        const feature = vector.at[i] as number;
        length += weight;
        for (let j = starts[feature] as number; j < (starts[feature + 1] as number); j++) {
          const c = labels[j] as number;
          out[c] = (out[c] as number) + weight * (gains[j] as number);
        }
      }
      for (let c = 0; c < classes; c++) out[c] = (out[c] as number) - length * (offset[c] as number);
    },
    weight: (feature, label) => {
      const found = labels.subarray(starts[feature], starts[feature + 1]).indexOf(label);
      return (found < 0 ? 0 : (gains[(starts[feature] as number) + found] as number)) - (offset[label] as number);
    },
  };
}

function byLabel(labels: readonly number[], classes: number): readonly (readonly number[])[] {
  const lines: number[][] = Array.from({ length: classes }, () => []);
  for (const [line, label] of labels.entries()) (lines[label] as number[]).push(line);
  return lines;
}

/** Sums some vectors: the features they have and their weights. */
function summer(featureCount: number) {
  const sums = new Float64Array(featureCount);
  const met = new Int32Array(featureCount);
  return (lines: readonly number[], vectors: readonly Vector[]) => {
    let count = 0;
    for (const line of lines) {
      const { at, weight } = vectors[line] as Vector;
      for (let i = 0; i < at.length; i++) {
        const feature = at[i] as number;
        if (sums[feature] === 0) met[count++] = feature;
        sums[feature] = (sums[feature] as number) + (weight[i] as number);
      }
    }
    const at = met.slice(0, count);
    const sum = Float32Array.from(at, (feature) => sums[feature] as number);
    for (const feature of at) sums[feature] = 0;
    return { at, sum };
  };
}

/** The offsets without what all classes lose alike, which says nothing: the weights stay small enough for 8 bits. */
export function aroundZero({ offset }: Pick<NaiveBayes, 'offset'>): Float64Array {
  const mean = meanOf(offset);
  return offset.map((one) => one - mean);
}

export function meanOf(offset: Float64Array): number {
  return offset.reduce((sum, one) => sum + one, 0) / offset.length;
}

/**
 * Adds a share of naive Bayes to fitted weights, in place: both are sums over features, so the mixture of the two costs
 * no more to score than one of them.
 */
export function mixIn(rows: Float32Array, bayes: NaiveBayes, share: number): void {
  const { classes, starts, labels, gains } = bayes;
  const offset = aroundZero(bayes);
  for (let feature = 0; feature + 1 < starts.length; feature++) {
    const base = feature * classes;
    for (let c = 0; c < classes; c++) rows[base + c] = (rows[base + c] as number) - share * (offset[c] as number);
    for (let j = starts[feature] as number; j < (starts[feature + 1] as number); j++) {
      const place = base + (labels[j] as number);
      rows[place] = (rows[place] as number) + share * (gains[j] as number);
    }
  }
}
