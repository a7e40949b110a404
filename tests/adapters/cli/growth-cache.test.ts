import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sweepCache } from '../../../adapters/cli/growth-cache.ts';

describe('what trials leave behind', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-cache-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is taken out, the longest unused first; what is not of a trial stays', () => {
    const names = Array.from({ length: 20 }, (_, i) => `${(0xabc00 + i).toString(16)}.model`);
    for (const [i, name] of names.entries()) {
      writeFileSync(join(folder, name), '');
      utimesSync(join(folder, name), 1_000_000 + i, 1_000_000 + i);
    }
    for (const name of ['abc.net', 'read-me.json', 'abc.json.aside']) writeFileSync(join(folder, name), '');
    sweepCache(folder);
    expect(readdirSync(folder).sort()).toEqual([...names.slice(8), 'abc.net', 'read-me.json', 'abc.json.aside'].sort());
  });
});
