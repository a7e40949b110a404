import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

export type GraphFileOnDisk = { readonly path: string; readonly text: string };

/** All files of a graph folder, by their path in it; hidden ones and those of editors are left out. */
export function readGraphFolder(folder: string): GraphFileOnDisk[] {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile() && /^[^.].*\.(yaml|svg)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((file) => ({ path: relative(folder, file).split(sep).join('/'), text: readFileSync(file, 'utf8') }));
}

/** The same for the same files, whatever folder they are in. */
export function graphHash(files: readonly GraphFileOnDisk[]): string {
  return hashOf(digestsOf(files));
}

/** The same from the names of the files' texts. */
export function hashOf(digests: ReadonlyMap<string, string>): string {
  const hash = createHash('sha256');
  for (const [path, digest] of digests) hash.update(`${path}\0${digest}\0`);
  return hash.digest('hex');
}

/** A short name for the text of each file, by its path. */
export function digestsOf(files: readonly GraphFileOnDisk[]): ReadonlyMap<string, string> {
  return new Map(files.map(({ path, text }) => [path, createHash('sha256').update(text).digest('base64')]));
}
