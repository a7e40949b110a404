import { readdirSync, rmSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';

/** Of each kind so many are kept: each trial leaves a parsed graph, its weights and its second net, 10 MB together. */
const MOST_KEPT = 12;
const KEPT = /^[0-9a-f]+\.(json|model|net)$/;

/** Takes out what has not been used for longest: reading something counts as using it. */
export function sweepCache(folder: string): void {
  const byKind = new Map<string, { readonly file: string; readonly usedMs: number }[]>();
  for (const name of readdirSync(folder)) {
    if (!KEPT.test(name)) continue;
    const file = join(folder, name);
    const list = byKind.get(extname(name)) ?? [];
    list.push({ file, usedMs: statSync(file).mtimeMs });
    byKind.set(extname(name), list);
  }
  for (const list of byKind.values()) {
    list.sort((a, b) => b.usedMs - a.usedMs);
    for (const { file } of list.slice(MOST_KEPT)) rmSync(file, { force: true });
  }
}
