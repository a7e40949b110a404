import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { gunzipSync, gzipSync } from 'node:zlib';
import { inputHash, type Knowledge, type Model, spaceOf, trainingInput } from '../../src/index.ts';

/** Changes when the form of the files does: a file of another form is not read. */
const FORM = 1;

type Kept = {
  readonly form: number;
  readonly model: Omit<Model, 'space'>;
  readonly names: readonly string[];
  readonly idf: Float32Array;
  readonly unknownIdf: number;
};

/** The model kept for exactly this graph's wordings; null when there is none, or it cannot be read. */
export function readModel(folder: string, knowledge: Knowledge): Model | null {
  return readModelNamed(folder, inputHash(trainingInput(knowledge)));
}

export function readModelNamed(folder: string, hash: string): Model | null {
  const file = fileOf(folder, hash);
  if (!existsSync(file)) return null;
  try {
    const { form, model, names, idf, unknownIdf } = deserialize(gunzipSync(readFileSync(file))) as Kept;
    return form === FORM && model.hash === hash ? { ...model, space: spaceOf(names, idf, unknownIdf) } : null;
  } catch {
    // Cut short by a crash: it is trained anew.
    return null;
  }
}

/** Keeps a model under its hash, in one step. */
export function writeModel(folder: string, model: Model): void {
  mkdirSync(folder, { recursive: true });
  const { space, ...rest } = model;
  const kept: Kept = { form: FORM, model: rest, names: space.names, idf: space.idf, unknownIdf: space.unknownIdf };
  const aside = `${fileOf(folder, model.hash)}.${process.pid}.aside`;
  writeFileSync(aside, gzipSync(serialize(kept), { level: 6 }));
  renameSync(aside, fileOf(folder, model.hash));
}

function fileOf(folder: string, hash: string): string {
  return join(folder, `${hash}.model`);
}
