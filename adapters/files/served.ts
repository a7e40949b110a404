import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  buildKnowledge,
  type FirmData,
  type Knowledge,
  type RawGraph,
  readGraph,
  type Slip,
  type SlipAt,
} from '../../src/index.ts';
import { digestsOf, type GraphFileOnDisk, hashOf, readGraphFolder } from './graph-files.ts';

export type LoadedGraph = {
  readonly hash: string;
  readonly files: readonly GraphFileOnDisk[];
  /** A short name for the text of each file, by its path. */
  readonly digests: ReadonlyMap<string, string>;
  /** As read, before it was linked; null when it cannot be served. */
  readonly raw: RawGraph | null;
  readonly knowledge: Knowledge | null;
  /** The firm's own file, where that one at least can be read. */
  readonly firm: FirmData | null;
  readonly slips: readonly Slip[];
  readonly slipAt: SlipAt;
};

/** What was read of a folder before: files that are as they were need not be read again. */
export type ReadBefore = { readonly raw: RawGraph; readonly digests: ReadonlyMap<string, string> };

/**
 * Loads a graph folder. What was read before is kept as JSON under the hash of its content in `cacheFolder`, because
 * reading megabytes of YAML takes longer than all the rest of the start.
 *
 * @returns `knowledge` null with the slips when the graph cannot be served.
 */
export function loadGraph(folder: string, cacheFolder: string | null): LoadedGraph {
  const loaded = loadEdited(folder, cacheFolder, null);
  if (cacheFolder !== null) keepLoaded(loaded, cacheFolder);
  return loaded;
}

/** The same, keeping nothing: of an edited folder only the files that changed are read. */
export function loadEdited(folder: string, cacheFolder: string | null, before: ReadBefore | null): LoadedGraph {
  const files = readGraphFolder(folder);
  const digests = digestsOf(files);
  const hash = hashOf(digests);
  const kept = cacheFolder === null ? null : readKept(join(cacheFolder, `${hash}.json`));
  if (kept !== null) {
    const slipAt: SlipAt = (...slip) => readGraph(files).slipAt(...slip);
    const { knowledge, slips } = buildKnowledge(kept, slipAt);
    if (knowledge !== null) return { hash, files, digests, raw: kept, knowledge, firm: kept.firm, slips, slipAt };
  }
  const { raw, firm, slips: readSlips, slipAt } = readGraph(files, before === null ? null : sameAs(before, digests));
  if (raw === null) return { hash, files, digests, raw, knowledge: null, firm, slips: readSlips, slipAt };
  const { knowledge, slips } = buildKnowledge(raw, slipAt);
  return { hash, files, digests, raw: knowledge === null ? null : raw, knowledge, firm, slips, slipAt };
}

function sameAs({ raw, digests }: ReadBefore, now: ReadonlyMap<string, string>) {
  const same = [...now].filter(([path, digest]) => digests.get(path) === digest).map(([path]) => path);
  return { raw, same: new Set(same) };
}

/** Keeps what was read of a graph that can be served, unless it is kept already. */
export function keepLoaded({ raw, hash }: Pick<LoadedGraph, 'raw' | 'hash'>, folder: string): void {
  if (raw !== null && !existsSync(join(folder, `${hash}.json`))) keepRead(raw, folder, hash);
}

function readKept(file: string): RawGraph | null {
  if (!existsSync(file)) return null;
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as RawGraph;
  } catch {
    // Cut short by a crash: it is made anew.
    return null;
  }
}

/** Keeps what was read under the hash of the files' content, so that the next load need not read it. */
export function keepRead(raw: RawGraph, folder: string, hash: string): void {
  mkdirSync(folder, { recursive: true });
  const aside = join(folder, `${hash}.${process.pid}.aside`);
  writeFileSync(aside, JSON.stringify(raw));
  renameSync(aside, join(folder, `${hash}.json`));
}

/** The last graph that could be served, as it was kept; null when there is none, or it cannot be read. */
export function readLastGood(file: string): LoadedGraph | null {
  if (!existsSync(file)) return null;
  try {
    const { hash, raw } = JSON.parse(readFileSync(file, 'utf8')) as { readonly hash: string; readonly raw: RawGraph };
    const slipAt: SlipAt = (path, field, problem, expected) => ({
      file: path,
      line: 1,
      column: 1,
      field: field.join('.'),
      problem,
      expected,
    });
    const { knowledge, slips } = buildKnowledge(raw, slipAt);
    return knowledge === null
      ? null
      : { hash, files: [], digests: new Map(), raw, knowledge, firm: raw.firm, slips, slipAt };
  } catch {
    return null;
  }
}

/** Keeps a graph that is being served, for a start after the folder was broken; what {@link keepRead} kept of it is copied. */
export function writeLastGood(file: string, { hash, raw }: Pick<LoadedGraph, 'hash' | 'raw'>, folder: string): void {
  mkdirSync(dirname(file), { recursive: true });
  const kept = join(folder, `${hash}.json`);
  const body = existsSync(kept) ? readFileSync(kept) : Buffer.from(JSON.stringify(raw));
  writeFileSync(
    `${file}.aside`,
    Buffer.concat([Buffer.from(`{"hash":${JSON.stringify(hash)},"raw":`), body, Buffer.from('}')]),
  );
  renameSync(`${file}.aside`, file);
}
