import { type Model, spaceOf, type Warm } from '../../src/index.ts';
import { readKept, writeKept } from './kept-files.ts';

/**
 * How a model was learnt: `model` by the whole training, `quick` on from that of another graph, for a trial and until the
 * whole training has caught up.
 */
export type ModelKind = 'model' | 'quick';

/** A model as it is kept: the map from features to places is put together again from their names. */
type Kept = {
  readonly model: Omit<Model, 'space'>;
  readonly names: readonly string[];
  readonly idf: Float32Array;
  readonly unknownIdf: number;
};

export function readModelNamed(folder: string, hash: string, kind: ModelKind = 'model'): Model | null {
  const kept = readKept<Kept>(folder, `${hash}.${kind}`);
  return kept === null ? null : { ...kept.model, space: spaceOf(kept.names, kept.idf, kept.unknownIdf) };
}

/** Keeps a model under its hash. */
export function writeModel(folder: string, model: Model, kind: ModelKind = 'model'): void {
  const { space, ...rest } = model;
  const { names, idf, unknownIdf } = space;
  writeKept<Kept>(folder, `${model.hash}.${kind}`, { model: rest, names, idf, unknownIdf }, kind === 'quick' ? 0 : 6);
}

/** Where the fit of the model of this name ended; null when that is not kept. */
export function readWarm(folder: string, hash: string): Warm | null {
  return readKept<Warm>(folder, `${hash}.warm`);
}

export function writeWarm(folder: string, warm: Warm): void {
  writeKept<Warm>(folder, `${warm.hash}.warm`, warm, 1);
}
