import { type Model, type PackedWeights, packRow } from './model.ts';
import { createSee } from './seen.ts';
import type { TrainingInput } from './training-input.ts';
import { identities, identityOf } from './training-lines.ts';
import { type Vector, vectorOf, widened } from './vector.ts';
import { vocabularyAfter } from './vocabulary-after.ts';

/** A trained model, what the graph said that it serves, and what the graph says now. */
export type TakeOver = {
  readonly model: Model;
  readonly before: TrainingInput;
  readonly after: TrainingInput;
  /** Of `after` ({@link inputHash}). */
  readonly hash: string;
};

/** More new lines than this are another graph. */
const MOST_NEW = 200;
/** How likely a new line's topic must come out, in log-odds: 12 to 1. */
const ODDS = 2.5;
/** So little lacking is rounding. */
const NEAR = 1e-3;
/** Times that the new lines are gone over; most stand where they should after a few. */
const MOST_ROUNDS = 20;

/**
 * Takes a model over to a changed graph at once: it serves until the change has been learnt properly. Each new line moves the
 * weights of its own features, by no more than makes its topic likely (in the manner of Crammer, Dekel, Keshet, Shalev-Shwartz
 * and Singer, 2006: passive-aggressive); what shares no feature with a new line scores as before, to the bit.
 * Lines that went still speak for their topic; a topic that went stays as a rival that no van has. Deterministic.
 *
 * @returns Null where too much is new. The confidence is the old model's.
 */
export function takeOver({ model, before, after, hash }: TakeOver): Model | null {
  const old = identities(before.lines);
  const lines = after.lines.filter((line) => !old.has(identityOf(line)));
  if (lines.length > MOST_NEW) return null;
  const keys = [...new Set([...model.keys, ...lines.map(({ key }) => key)])];
  const vocabulary = vocabularyAfter(model.vocabulary, before, after);
  if (lines.length === 0) return { ...model, hash, vocabulary };
  const see = createSee(after, vocabulary);
  const seen = lines.map(({ text }) => see(text));
  const labels = lines.map(({ key }) => keys.indexOf(key));
  const space = widened(model.space, seen, labels, 1, keys.length);
  const weights = roomier(model.weights, space.names.length, keys.length);
  moveLines(
    seen.map((one) => vectorOf(one, space)),
    labels,
    weights,
  );
  return { ...model, hash, keys, space, vocabulary, weights };
}

/** A copy with room for more features, which weigh nothing yet, and classes, which begin as most do that lack a feature. */
function roomier({ classes: had, rows, scale }: PackedWeights, features: number, classes: number): PackedWeights {
  const wider: PackedWeights = {
    classes,
    rows: new Int8Array(features * classes),
    scale: new Float32Array(features),
  };
  wider.scale.set(scale);
  if (classes === had) wider.rows.set(rows);
  else {
    for (let f = 0; f < scale.length; f++) {
      const row = rows.subarray(f * had, (f + 1) * had);
      wider.rows.set(row, f * classes);
      wider.rows.fill(middleOf(row), f * classes + had, (f + 1) * classes);
    }
  }
  return wider;
}

const counts = new Uint16Array(256);

/** The median: most topics lack a feature, and weigh it alike. */
function middleOf(row: Int8Array): number {
  counts.fill(0);
  for (let c = 0; c < row.length; c++)
    counts[(row[c] as number) + 128] = (counts[(row[c] as number) + 128] as number) + 1;
  let step = 0;
  for (let below = counts[0] as number; 2 * below < row.length; below += counts[step] as number) step++;
  return step - 128;
}

/** Moves the weights in place until every line's class is as likely as it should be. */
function moveLines(lines: readonly Vector[], labels: readonly number[], weights: PackedWeights): void {
  const { classes, rows, scale } = weights;
  const loose = new Map<number, Float32Array>();
  for (const feature of lines.flatMap(({ at }) => [...at])) {
    if (loose.has(feature)) continue;
    const row = Float32Array.from(rows.subarray(feature * classes, (feature + 1) * classes));
    loose.set(
      feature,
      row.map((step) => step * (scale[feature] as number)),
    );
  }
  for (let round = 0, moved = true; moved && round < MOST_ROUNDS; round++) {
    moved = false;
    for (const [i, line] of lines.entries()) if (moveLine(line, labels[i] as number, loose, classes)) moved = true;
  }
  for (const [feature, row] of loose) packRow(row, feature, weights);
}

/** False when the line's class is as likely as it should be. */
function moveLine(
  { at, weight }: Vector,
  label: number,
  loose: ReadonlyMap<number, Float32Array>,
  classes: number,
): boolean {
  const scores = new Float64Array(classes);
  let square = 0;
  for (let i = 0; i < at.length; i++) {
    const row = loose.get(at[i] as number) as Float32Array;
    const x = weight[i] as number;
    square += x * x;
    for (let c = 0; c < classes; c++) scores[c] = (scores[c] as number) + x * (row[c] as number);
  }
  const own = scores[label] as number;
  scores[label] = -Infinity;
  const highest = Math.max(...scores);
  const raised = scores.map((score) => Math.exp(score - highest));
  const sum = raised.reduce((all, one) => all + one, 0);
  const lacking = ODDS - (own - highest - Math.log(sum));
  if (square === 0 || lacking <= NEAR) return false;
  // The others lose by their share, so that the likeliest rivals lose most.
  const shares = raised.map((one) => one / sum);
  const step = lacking / (square * shares.reduce((all, share) => all + share * share, 1));
  for (let i = 0; i < at.length; i++) {
    const row = loose.get(at[i] as number) as Float32Array;
    const move = step * (weight[i] as number);
    for (let c = 0; c < classes; c++) row[c] = (row[c] as number) - move * (shares[c] as number);
    row[label] = (row[label] as number) + move;
  }
  return true;
}
