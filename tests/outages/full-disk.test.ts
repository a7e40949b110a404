import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';

/*
 * The kernel itself refuses to write on: a process whose files may have 8 KiB at most, which any user can ask for. A disk
 * that is full refuses the same call, in the same place, with another number.
 */

const LIMIT_BLOCKS = 8;
const root = fileURLToPath(new URL('../..', import.meta.url));
const made = mkdtempSync(join(tmpdir(), 'pitchhand-full-'));
const program = join(made, 'child.mjs');
const folder = mkdtempSync(join(made, 'graph-'));
const EDITS = [
  { path: 'talk.yaml', before: 'talk: 1\n', after: 'talk: 2\n' },
  { path: 'glossary.yaml', before: 'words: []\n', after: `words:\n${'  - eskie\n'.repeat(5000)}` },
];
const canLimit = spawnSync('bash', ['-c', `ulimit -f ${LIMIT_BLOCKS}`]).status === 0;

beforeAll(async () => {
  await build({
    entryPoints: [join(root, 'tests/outages/full-disk-child.ts')],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
});
afterAll(() => rmSync(made, { recursive: true, force: true }));

const published = (limit: string) => {
  for (const { path, before } of EDITS) writeFileSync(join(folder, path), before);
  const ended = spawnSync('bash', [
    '-c',
    `${limit} exec "$0" "$@"`,
    process.execPath,
    program,
    folder,
    JSON.stringify(EDITS),
  ]);
  return JSON.parse(ended.stdout.toString()) as unknown;
};
const texts = () => EDITS.map(({ path }) => readFileSync(join(folder, path), 'utf8'));

test('leaves every file as it was when the disk takes no more in the middle of publishing', ({ skip }) => {
  if (!canLimit) skip('there is no bash with ulimit here');
  expect(published(`ulimit -f ${LIMIT_BLOCKS};`)).toEqual({
    kind: 'failed',
    why: 'the disk takes no more; the graph is as it was',
  });
  expect(texts()).toEqual(EDITS.map(({ before }) => before));
  expect(readdirSync(folder).sort()).toEqual(['glossary.yaml', 'talk.yaml']);
});

test('publishes the same where there is room', () => {
  expect(published('')).toEqual({ kind: 'written' });
  expect(texts()).toEqual(EDITS.map(({ after }) => after));
});
