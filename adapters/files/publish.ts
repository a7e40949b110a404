import {
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { FileEdit } from '../../src/index.ts';

/** How writing ended. `conflict`: the file is no longer as it was when the change began; both sides are given. */
export type Published =
  | { readonly kind: 'written' }
  | { readonly kind: 'conflict'; readonly ours: FileEdit; readonly theirs: FileEdit }
  | { readonly kind: 'failed'; readonly why: string };

/** The steps that can fail, for tests that make them fail. */
export type Disk = {
  readonly write: (descriptor: number, text: string) => void;
  readonly rename: (from: string, to: string) => void;
};

const DISK: Disk = { write: (descriptor, text) => writeFileSync(descriptor, text), rename: renameSync };
/** A lock older than this was left by a process that ended in the middle. */
const STALE_MS = 30_000;

/**
 * Writes changed files of a graph: each aside and flushed first, then all looked at once more, then put in place one after
 * the other. What fails before leaves every file as it was; what fails between two renames is put back.
 *
 * @param recorded Called with the lock held, after the files are in place: what it throws takes them back out.
 */
export async function publishFiles(
  folder: string,
  edits: readonly FileEdit[],
  recorded: () => Promise<void>,
  disk: Disk = DISK,
): Promise<Published> {
  const lock = join(folder, '.publishing');
  if (!taken(lock)) return { kind: 'failed', why: 'somebody else is publishing at this moment; try again' };
  const asides: { readonly edit: FileEdit; readonly file: string; readonly aside: string }[] = [];
  const placed: FileEdit[] = [];
  try {
    for (const edit of edits) {
      const file = join(folder, edit.path);
      if ((statSync(file).mode & 0o222) === 0)
        return { kind: 'failed', why: `graph/${edit.path} may not be written to` };
      const aside = join(dirname(file), `.${basename(file)}.${process.pid}.aside`);
      asides.push({ edit, file, aside });
      writeAside(aside, edit.after, statSync(file).mode, disk);
    }
    for (const { edit, file } of asides) {
      const now = readFileSync(file, 'utf8');
      if (now !== edit.before)
        return { kind: 'conflict', ours: edit, theirs: { path: edit.path, before: edit.before, after: now } };
    }
    for (const { edit, file, aside } of asides) {
      disk.rename(aside, file);
      placed.push(edit);
    }
    for (const place of new Set(asides.map(({ file }) => dirname(file)))) flushFolder(place);
    await recorded();
    return { kind: 'written' };
  } catch (error) {
    const back = putBack(folder, placed);
    return { kind: 'failed', why: `${wordsFor(error)}${back}` };
  } finally {
    for (const { aside } of asides) rmSync(aside, { force: true });
    rmSync(lock, { force: true });
  }
}

function taken(lock: string): boolean {
  try {
    closeSync(openSync(lock, 'wx'));
    return true;
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') return true;
    if (Date.now() - statSync(lock).mtimeMs < STALE_MS) return false;
    rmSync(lock, { force: true });
    return taken(lock);
  }
}

function writeAside(aside: string, text: string, mode: number, disk: Disk): void {
  const descriptor = openSync(aside, 'w');
  try {
    fchmodSync(descriptor, mode);
    disk.write(descriptor, text);
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

function flushFolder(folder: string): void {
  const descriptor = openSync(folder, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/** Files that were placed before a later one failed. Their old text is written as safely as the new one was. */
function putBack(folder: string, placed: readonly FileEdit[]): string {
  try {
    for (const { path, before } of placed) {
      const file = join(folder, path);
      const aside = join(dirname(file), `.${basename(file)}.${process.pid}.aside`);
      writeAside(aside, before, statSync(file).mode, DISK);
      renameSync(aside, file);
    }
    return '; the graph is as it was';
  } catch {
    return `; ${placed.map(({ path }) => `graph/${path}`).join(', ')} could not be put back: undo it by hand`;
  }
}

function wordsFor(error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOSPC':
    case 'EDQUOT':
      return 'the disk is full';
    case 'EFBIG':
      return 'the disk takes no more';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return 'the graph folder may not be written to';
    default:
      return error instanceof Error ? error.message : String(error);
  }
}

function codeOf(error: unknown): string | null {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;
}
