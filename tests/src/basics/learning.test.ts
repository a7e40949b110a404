import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { codeName } from '../../../.config/learning.mjs';
import { codeNameOf } from '../../../src/basics/learning.ts';

const folder = mkdtempSync(join(tmpdir(), 'pitchhand-learning-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const write = (file: string, text: string) => writeFileSync(join(folder, file), text);
const named = () => codeName(['learn.ts'], folder);

describe('the name of the code that learns', () => {
  beforeEach(() => {
    write('learn.ts', "import { half } from './features.ts';\nexport const learn = (x: number) => half(x) + 1;\n");
    write('features.ts', 'export const half = (x: number) => x / 2;\n');
  });

  it('is another when any file it uses does something else', async () => {
    const before = await named();
    write('features.ts', 'export const half = (x: number) => x / 3;\n');
    expect(await named()).not.toBe(before);
  });

  it('stays the same whatever its comments say and however it is laid out', async () => {
    const before = await named();
    write('features.ts', '/** Half of it. */\nexport const half = (x: number): number =>\n  x / 2;\n');
    expect(await named()).toBe(before);
  });

  it('is put into the program, for each that learns', async () => {
    const root = process.cwd();
    expect(codeNameOf('match')).toBe(await codeName(['src/match/calibrate.ts', 'src/match/touch-up.ts'], root));
    expect(codeNameOf('safety')).toBe(await codeName(['src/safety/learn-safety.ts'], root));
  });
});
