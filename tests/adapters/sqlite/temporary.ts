import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqlite } from '../../../adapters/sqlite/sqlite-store.ts';
import type { Keeper } from '../../contracts/store-fixtures.ts';

/** A folder of its own for one test. */
export function temporaryFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'pitchhand-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

export const sqlite: Keeper = {
  name: 'sqlite',
  open: async () => {
    const folder = temporaryFolder();
    const file = join(folder.path, 'pitchhand.db');
    let kept = await openSqlite(file);
    return {
      ...kept,
      reopen: async () => {
        await kept.store.close();
        kept = await openSqlite(file);
        return kept;
      },
      end: async () => {
        await kept.store.close();
        folder.remove();
      },
    };
  },
};
