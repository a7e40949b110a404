// Builds and runs tests/bench/figures.ts: the figures that a benchmark of one function cannot show.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { learningDefines } from './learning.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const outfile = join(root, 'dist', `figures-${process.pid}.mjs`);
await build({
  absWorkingDir: root,
  entryPoints: [process.argv[2] ?? 'tests/bench/figures.ts'],
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
