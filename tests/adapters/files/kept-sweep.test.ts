import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { claimKept, sweepKept } from '../../../adapters/files/kept-sweep.ts';

describe('what is kept of graphs', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-kept-'));
    for (let i = 0; i < 11; i++) {
      for (const kind of ['json', 'model', 'net']) {
        const file = join(folder, `g${i}.${kind}`);
        writeFileSync(file, '');
        utimesSync(file, 1_000_000 + i, 1_000_000 + i);
      }
    }
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const left = (kind: string) =>
    readdirSync(folder)
      .filter((name) => name.endsWith(kind))
      .sort();

  it('is the latest eight of each kind', () => {
    sweepKept(folder);
    for (const kind of ['json', 'model', 'net']) {
      expect(left(kind)).toEqual([3, 4, 5, 6, 7, 8, 9, 10].map((i) => `g${i}.${kind}`).sort());
    }
  });

  it('is what this process says that it uses, however old, until it uses another', () => {
    claimKept(folder, ['g0.json', 'g0.model']);
    utimesSync(join(folder, 'g0.json'), 1, 1);
    utimesSync(join(folder, 'g0.model'), 1, 1);
    sweepKept(folder);
    expect(left('json')).toContain('g0.json');
    expect(left('model')).toContain('g0.model');
    claimKept(folder, ['g10.json', 'g10.model']);
    sweepKept(folder);
    expect(left('json')).not.toContain('g0.json');
  });

  it('is what another running process uses, and no longer once it has ended', async () => {
    const other = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
    writeFileSync(join(folder, `${other.pid}.used`), 'g1.model');
    sweepKept(folder);
    expect(left('model')).toContain('g1.model');
    other.kill();
    await once(other, 'exit');
    sweepKept(folder);
    expect(left('model')).not.toContain('g1.model');
    expect(left('used')).toEqual([]);
  });

  it('is not touched while it is being written, and goes when it never was finished', () => {
    writeFileSync(join(folder, 'g9.model.1.aside'), '');
    sweepKept(folder);
    expect(left('aside')).toHaveLength(1);
    utimesSync(join(folder, 'g9.model.1.aside'), 1_000_000, 1_000_000);
    sweepKept(folder);
    expect(left('aside')).toEqual([]);
  });

  it('may be nothing', () => {
    expect(() => sweepKept(join(folder, 'not-there'))).not.toThrow();
  });
});
