import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildKnowledge, type Knowledge, type RawGraph, readGraph, type Slip, type SlipAt } from '../../src/index.ts';
import { type GraphFileOnDisk, graphHash, readGraphFolder } from './graph-files.ts';

export type LoadedGraph = {
  readonly hash: string;
  readonly files: readonly GraphFileOnDisk[];
  readonly knowledge: Knowledge | null;
  readonly slips: readonly Slip[];
  readonly slipAt: SlipAt;
};

/**
 * Loads a graph folder. What was read before is kept as JSON under the hash of its content in `cacheFolder`, because
 * reading a megabyte of YAML takes longer than all the rest of the start.
 *
 * @returns `knowledge` null with the slips when the graph cannot be served.
 */
export function loadGraph(folder: string, cacheFolder: string | null): LoadedGraph {
  const files = readGraphFolder(folder);
  const hash = graphHash(files);
  const kept = cacheFolder === null ? null : readKept(join(cacheFolder, `${hash}.json`));
  if (kept !== null) {
    const slipAt: SlipAt = (...slip) => readGraph(files).slipAt(...slip);
    const { knowledge, slips } = buildKnowledge(kept, slipAt);
    if (knowledge !== null) return { hash, files, knowledge, slips, slipAt };
  }
  const { raw, slips: readSlips, slipAt } = readGraph(files);
  if (raw === null) return { hash, files, knowledge: null, slips: readSlips, slipAt };
  const { knowledge, slips } = buildKnowledge(raw, slipAt);
  if (knowledge !== null && cacheFolder !== null) keep(raw, cacheFolder, hash);
  return { hash, files, knowledge, slips, slipAt };
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

function keep(raw: RawGraph, folder: string, hash: string): void {
  mkdirSync(folder, { recursive: true });
  const aside = join(folder, `${hash}.${process.pid}.aside`);
  writeFileSync(aside, JSON.stringify(raw));
  renameSync(aside, join(folder, `${hash}.json`));
}
