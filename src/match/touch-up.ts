import { fitOn, type ReadLine } from './fit-on.ts';
import type { Model } from './model.ts';
import { type NaiveBayes, naiveBayes } from './naive-bayes.ts';
import { neighbourhoodOf } from './neighbourhood.ts';
import { classWeights, numbered } from './prepare.ts';
import { roleOf } from './ranking.ts';
import { rewritten } from './rewrite-weights.ts';
import { createSee } from './seen.ts';
import { optionsFor, TRAIN, type TrainOptions } from './train-options.ts';
import type { TrainingInput } from './training-input.ts';
import type { TrainingLine } from './training-lines.ts';
import { type Space, vectorOf, widened } from './vector.ts';
import { vocabularyAfter } from './vocabulary-after.ts';
import type { Warm } from './warm.ts';

/** A trained model, where its fit stood, what it was fitted on, and what is to be learnt now. */
export type TouchUp = {
  readonly model: Model;
  readonly warm: Warm;
  readonly before: TrainingInput;
  readonly after: TrainingInput;
  /** Of `after` ({@link inputHash}). */
  readonly hash: string;
};

/**
 * Learns a small change of the graph from where the whole training ended, in a fraction of its time.
 *
 * The lines that the change bears on are fitted on from there twice, as they were and as they will be, with the same chance;
 * the difference of the two goes into the model's weights. So what the change does not touch stays to the bit, and going on
 * moves nothing by itself. Naive Bayes is counted anew for the topics that were touched. Deterministic.
 *
 * @returns Null where it takes the whole training: a topic went, many lines changed, or the graph is small and soon learnt.
 *          The confidence is the old model's.
 */
export function touchUp(
  { model, warm, before, after, hash }: TouchUp,
  seed: number,
  given: TrainOptions = TRAIN,
): Model | null {
  const options = optionsFor(after.lines.length, given);
  const keys = [...new Set([...model.keys, ...after.lines.map(({ key }) => key)])];
  if (options.ridge > 0 || warm.hash !== model.hash || !keepsClasses(model.keys, before, after)) return null;
  const vocabulary = vocabularyAfter(model.vocabulary, before, after);
  const see = createSee(after, vocabulary);
  const near = neighbourhoodOf(model, before, after, { see, counts: vocabulary.counts });
  if (near === null) return null;
  const now = [...near.stayed, ...near.come].map((line) => ({ line, seen: see(line.text) }));
  const space = widened(
    model.space,
    now.map(({ seen }) => seen),
    now.map(({ line }) => keys.indexOf(line.key)),
    options.fewestLines,
    keys.length,
  );
  const will = now.map(({ line, seen }) => ({ line, vector: vectorOf(seen, space) }));
  const was = [...will.slice(0, near.stayed.length), ...readAsBefore(near.gone, before, model, space)];
  const places = [...new Set([...was, ...will].flatMap(({ vector }) => [...vector.at]))];
  const on = { warm, places, names: space.names, groups: after.groups, weightOf: weightIn(after), options, seed };
  const weights = rewritten(model.weights, {
    warm,
    featureCount: space.names.length,
    places,
    fitted: { before: fitOn(was, model.keys, on), after: fitOn(will, keys, on) },
    bayes: { before: bayesOf(was, keys, space), after: bayesOf(will, keys, space), share: options.bayes },
    touched: new Set([...near.touched].filter((key) => roleOf(key) === 'topic').map((key) => keys.indexOf(key))),
    groups: numbered(keys, after.groups).groups,
  });
  return { hash, keys, space, vocabulary, weights, calibration: model.calibration };
}

/** Whether every class is still there, in its groups. */
function keepsClasses(keys: readonly string[], before: TrainingInput, after: TrainingInput): boolean {
  const present = new Set(after.lines.map(({ key }) => key));
  return keys.every(
    (key) => present.has(key) && JSON.stringify(before.groups[key]) === JSON.stringify(after.groups[key]),
  );
}

function weightIn({ lines }: TrainingInput): (key: string) => number {
  const keys = [...new Set(lines.map(({ key }) => key))];
  const numbers = new Map(keys.map((key, label) => [key, label]));
  const weights = classWeights(
    lines.map(({ key }) => numbers.get(key) as number),
    keys,
  );
  return (key) => weights[numbers.get(key) ?? -1] ?? 1;
}

function readAsBefore(
  lines: readonly TrainingLine[],
  before: TrainingInput,
  { vocabulary }: Model,
  space: Space,
): readonly ReadLine[] {
  if (lines.length === 0) return [];
  const see = createSee(before, vocabulary);
  return lines.map((line) => ({ line, vector: vectorOf(see(line.text), space) }));
}

function bayesOf(lines: readonly ReadLine[], keys: readonly string[], space: Space): NaiveBayes {
  const vectors = lines.map(({ vector }) => vector);
  const labels = lines.map(({ line }) => keys.indexOf(line.key));
  return naiveBayes(vectors, labels, keys.length, space.names.length);
}
