import { existsSync, mkdirSync, readFileSync, renameSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { gunzipSync, gzipSync } from 'node:zlib';

/** Changes when the form of what is kept does: a file of another form is not read. */
const FORM = 2;

/** What was kept under a name; null when there is none, or it cannot be read. */
export function readKept<T>(folder: string, name: string): T | null {
  const file = join(folder, name);
  if (!existsSync(file)) return null;
  try {
    markUsed(file);
    const { form, value } = deserialize(gunzipSync(readFileSync(file))) as { readonly form: number; readonly value: T };
    return form === FORM ? value : null;
  } catch {
    // Cut short by a crash: it is made anew.
    return null;
  }
}

/** The age of a file is the time since it was last used: what is oldest is taken out first. */
function markUsed(file: string): void {
  try {
    const now = new Date();
    utimesSync(file, now, now);
  } catch {
    // A folder that may only be read is swept by nobody.
  }
}

/**
 * Keeps a value under a name, in one step.
 *
 * @param level Of packing, 0 to 9: less where somebody waits for it.
 */
export function writeKept<T>(folder: string, name: string, value: T, level = 6): void {
  mkdirSync(folder, { recursive: true });
  const aside = join(folder, `${name}.${process.pid}.aside`);
  writeFileSync(aside, gzipSync(serialize({ form: FORM, value }), { level }));
  renameSync(aside, join(folder, name));
}
