import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, publishFiles } from '../../../adapters/files/publish.ts';
import type { FileEdit } from '../../../src/index.ts';

let folder = '';
const EDITS: readonly FileEdit[] = [
  { path: 'systems/water.yaml', before: 'water: 1\n', after: 'water: 2\n' },
  { path: 'questions.yaml', before: 'questions: 1\n', after: 'questions: 2\n' },
];
const noRecord = async () => {};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pitchhand-publish-'));
  mkdirSync(join(folder, 'systems'));
  for (const { path, before } of EDITS) writeFileSync(join(folder, path), before);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const texts = () => EDITS.map(({ path }) => readFileSync(join(folder, path), 'utf8'));
/** Names that no graph has: what is left of a failed writing. */
const leftOver = () => readdirSync(folder, { recursive: true }).filter((name) => /aside|publishing/.test(String(name)));
const untouched = () => {
  expect(texts()).toEqual(EDITS.map(({ before }) => before));
  expect(leftOver()).toEqual([]);
};
const full = Object.assign(new Error('no space left'), { code: 'ENOSPC' });
const real: Disk = { write: (descriptor, text) => writeFileSync(descriptor, text), rename: renameSync };

/** The real thing, except that one step fails at its nth call. */
function failing(step: 'write' | 'rename', nth: number): Disk {
  let calls = 0;
  return {
    write: (descriptor, text) => {
      if (step === 'write' && ++calls === nth) {
        // What a full disk does: the beginning arrives.
        real.write(descriptor, text.slice(0, 3));
        throw full;
      }
      real.write(descriptor, text);
    },
    rename: (from, to) => {
      if (step === 'rename' && ++calls === nth) throw full;
      real.rename(from, to);
    },
  };
}

describe('publishing', () => {
  it('puts every file in place, keeps its permissions and leaves nothing beside', async () => {
    chmodSync(join(folder, 'questions.yaml'), 0o640);
    expect(await publishFiles(folder, EDITS, noRecord)).toEqual({ kind: 'written' });
    expect(texts()).toEqual(EDITS.map(({ after }) => after));
    expect(statSync(join(folder, 'questions.yaml')).mode & 0o777).toBe(0o640);
    expect(leftOver()).toEqual([]);
  });

  it('writes nothing when a file has changed meanwhile, and gives both sides', async () => {
    writeFileSync(join(folder, 'questions.yaml'), 'questions: mine\n');
    const published = await publishFiles(folder, EDITS, noRecord);
    expect(published).toMatchObject({
      kind: 'conflict',
      ours: { after: 'questions: 2\n' },
      theirs: { before: 'questions: 1\n', after: 'questions: mine\n' },
    });
    expect(texts()).toEqual(['water: 1\n', 'questions: mine\n']);
    expect(leftOver()).toEqual([]);
  });

  it.each([
    ['write', 1],
    ['write', 2],
    ['rename', 1],
    ['rename', 2],
  ] as const)('leaves the graph as it was when the disk is full at %s %i', async (step, nth) => {
    expect(await publishFiles(folder, EDITS, noRecord, failing(step, nth))).toEqual({
      kind: 'failed',
      why: 'the disk is full; the graph is as it was',
    });
    untouched();
  });

  it('takes the files back out when the change cannot be recorded', async () => {
    const failed = await publishFiles(folder, EDITS, () => Promise.reject(new Error('the store is down')));
    expect(failed).toEqual({ kind: 'failed', why: 'the store is down; the graph is as it was' });
    untouched();
  });

  it('says so when a file may not be written to', async () => {
    chmodSync(join(folder, 'questions.yaml'), 0o444);
    expect(await publishFiles(folder, EDITS, noRecord)).toEqual({
      kind: 'failed',
      why: 'graph/questions.yaml may not be written to',
    });
    untouched();
  });

  it('lets one at a time in, and is not shut out by one that died', async () => {
    writeFileSync(join(folder, '.publishing'), '');
    expect(await publishFiles(folder, EDITS, noRecord)).toMatchObject({
      kind: 'failed',
      why: expect.stringContaining('somebody else'),
    });
    expect(readdirSync(folder)).toContain('.publishing');
    const long = Date.now() / 1000 - 120;
    utimesSync(join(folder, '.publishing'), long, long);
    expect(await publishFiles(folder, EDITS, noRecord)).toEqual({ kind: 'written' });
  });
});
