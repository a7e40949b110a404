// Names the code that learns, so that what an older one learnt is never used: the hash of everything that learning runs,
// bundled, its packages and word lists included. Comments and layout do not count.
import { createHash } from 'node:crypto';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const LEARNERS = {
  match: ['src/match/calibrate.ts', 'src/match/touch-up.ts'],
  safety: ['src/safety/learn-safety.ts'],
};

/** A short name, in hex, for the code that these files under `root` learn with. */
export async function codeName(files, root) {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: files,
    outdir: root,
    bundle: true,
    write: false,
    minifyWhitespace: true,
    minifySyntax: true,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['module', 'main'],
    legalComments: 'none',
    logLevel: 'warning',
  });
  const hash = createHash('sha256');
  for (const { text } of outputFiles) hash.update(text);
  return hash.digest('hex').slice(0, 16);
}

/** For `define`: the names as the sources see them (src/basics/learning.ts). */
export async function learningDefines() {
  const root = dirname(dirname(fileURLToPath(import.meta.url)));
  const names = await Promise.all(
    Object.entries(LEARNERS).map(async ([learner, files]) => [learner, await codeName(files, root)]),
  );
  return { LEARNING_CODE: JSON.stringify(Object.fromEntries(names)) };
}
