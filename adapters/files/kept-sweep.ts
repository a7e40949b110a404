import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Of each kind (parsed graphs, weights, nets) the latest used are kept, 10 MB for each graph: an edit taken back or tried
 * again finds its own.
 */
const LATEST = 8;
/** Where a fit ended takes megabytes more, and a change is learnt on from the latest. */
const LATEST_OF: Readonly<Record<string, number>> = { warm: 2, pace: 2 };
/** What was being written for so long never will be. */
const STALE_MS = 3_600_000;
const CLAIM = /^(\d+)\.used$/;

/**
 * Says which files of a folder this process uses, until it says otherwise or ends. They count as the latest, too.
 *
 * @param names Of files, without the folder; they need not be there yet.
 */
export function claimKept(folder: string, names: readonly string[]): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${process.pid}.used`), names.join('\n'));
  const now = new Date();
  for (const name of names) if (existsSync(join(folder, name))) utimesSync(join(folder, name), now, now);
}

/** Takes away what was kept for graphs that nobody uses any more: all but the latest few and what running processes claim. */
export function sweepKept(folder: string): void {
  const files = existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile())
    : [];
  const used = new Set<string>();
  const byKind = new Map<string, { readonly name: string; readonly at: number }[]>();
  const remove = (name: string): void => rmSync(join(folder, name), { force: true });
  for (const { name } of files) {
    const pid = CLAIM.exec(name)?.[1];
    if (pid !== undefined) {
      if (isRunning(Number(pid))) for (const each of claimed(join(folder, name))) used.add(each);
      else remove(name);
      continue;
    }
    const at = statSync(join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? 0;
    const kind = name.slice(name.lastIndexOf('.') + 1);
    if (kind === 'aside') {
      if (Date.now() - at > STALE_MS) remove(name);
      continue;
    }
    byKind.set(kind, [...(byKind.get(kind) ?? []), { name, at }]);
  }
  for (const [kind, list] of byKind) {
    const kept = LATEST_OF[kind] ?? LATEST;
    for (const { name } of list.sort((a, b) => b.at - a.at).slice(kept)) if (!used.has(name)) remove(name);
  }
}

function claimed(file: string): readonly string[] {
  return existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Somebody else's process runs, too.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
