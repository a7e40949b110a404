import { type Model, spaceOf } from '../../src/index.ts';
import { readKept, writeKept } from './kept-files.ts';

/** A model as it is kept: the map from features to places is put together again from their names. */
type Kept = {
  readonly model: Omit<Model, 'space'>;
  readonly names: readonly string[];
  readonly idf: Float32Array;
  readonly unknownIdf: number;
};

export function readModelNamed(folder: string, hash: string): Model | null {
  const kept = readKept<Kept>(folder, `${hash}.model`);
  return kept === null ? null : { ...kept.model, space: spaceOf(kept.names, kept.idf, kept.unknownIdf) };
}

/** Keeps a model under its hash. */
export function writeModel(folder: string, model: Model): void {
  const { space, ...rest } = model;
  const { names, idf, unknownIdf } = space;
  writeKept<Kept>(folder, `${model.hash}.model`, { model: rest, names, idf, unknownIdf });
}
