// Builds and runs one TypeScript file under tests/: figures that a benchmark of one function cannot show, or the stand-in for
// Telegram. What stands after the file's name is for it to read.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { learningDefines } from './learning.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const entry = process.argv[2];
if (entry === undefined) throw new Error('expected the name of a TypeScript file');
const outfile = join(root, 'dist', `run-${process.pid}.mjs`);
await build({
  absWorkingDir: root,
  entryPoints: [entry],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  define: await learningDefines(),
  external: ['better-sqlite3', '@resvg/resvg-js'],
  jsx: 'automatic',
  jsxImportSource: 'hono/jsx',
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
});
try {
  await import(pathToFileURL(outfile).href);
} finally {
  rmSync(outfile, { force: true });
}
