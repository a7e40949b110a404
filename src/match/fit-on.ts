import { textSeed } from '../basics/seeded.ts';
import { numbered } from './prepare.ts';
import { fitSoftmax, type SoftmaxOptions } from './softmax.ts';
import type { TrainingInput } from './training-input.ts';
import type { TrainingLine } from './training-lines.ts';
import type { Vector } from './vector.ts';
import { stateOf, type Warm } from './warm.ts';

/** A line as numbers. */
export type ReadLine = { readonly line: TrainingLine; readonly vector: Vector };

/** What two fits share, so that their difference is what their lines differ in. */
export type FitOn = {
  readonly warm: Warm;
  /** The features that are fitted, by their place in the whole space. */
  readonly places: readonly number[];
  /** Of all features of the space. */
  readonly names: readonly string[];
  readonly groups: TrainingInput['groups'];
  /** How much a line of each class counts. */
  readonly weightOf: (key: string) => number;
  readonly options: SoftmaxOptions;
  readonly seed: number;
};

/**
 * Fits on from a warm state with some lines.
 *
 * @param keys The classes: the warm state's, and new ones behind them.
 * @returns    For each feature in `places` its weight for each class, groups folded in.
 */
export function fitOn(lines: readonly ReadLine[], keys: readonly string[], on: FitOn): Float32Array {
  const { warm, places, names, options, seed } = on;
  const localOf = new Map(places.map((place, i) => [place, i]));
  const labelOf = new Map(keys.map((key, label) => [key, label]));
  const layout = { classes: keys.length, ...numbered(keys, on.groups) };
  const task = {
    ...layout,
    vectors: lines.map(({ vector: { at, weight } }) => ({
      at: at.map((place) => localOf.get(place) as number),
      weight,
    })),
    labels: lines.map(({ line }) => labelOf.get(line.key) as number),
    lineSeeds: Int32Array.from(lines, ({ line }) => textSeed(`${line.key}\t${line.text}`)),
    featureSeeds: Int32Array.from(places, (place) => textSeed(names[place] as string)),
    lineWeights: lines.map(({ line }) => on.weightOf(line.key)),
    featureCount: places.length,
  };
  const fit = fitSoftmax(task, options, seed, stateOf(warm, places, layout));
  for (let epoch = 0; epoch < options.epochs; epoch++) fit.epoch();
  return fit.weights().rows;
}
