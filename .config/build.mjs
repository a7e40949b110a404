// Builds the program into dist/. Unchanged sources and graph: nothing is done, in well under a second.
// Each build has a folder of its own, named by its content, and dist/pitchhand.mjs is swapped in one step to point to it:
// a server that is running keeps the files it started with.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const dist = join(root, 'dist');
const KEPT_BUILDS = 3;

/** Name of the build: the same for the same sources, settings and locked packages. */
function buildName() {
  const hash = createHash('sha256');
  for (const part of [
    'src',
    'adapters',
    '.config/build.mjs',
    '.config/learning.mjs',
    'package-lock.json',
    'package.json',
  ]) {
    for (const file of filesUnder(join(root, part))) hash.update(file).update(readFileSync(file));
  }
  return hash.digest('hex').slice(0, 16);
}

function filesUnder(path) {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/**
 * Writes the program in ASCII, which it is but for the letters in its patterns: V8 keeps a text with a single other letter at
 * two bytes a letter, 4 MB more for as long as the server runs.
 */
const ascii = {
  name: 'ascii',
  setup: ({ onEnd }) => {
    onEnd(({ outputFiles }) => {
      for (const { path, text } of outputFiles ?? []) {
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, text.replace(/[^\0-\x7F]/gu, escaped));
      }
    });
  },
};

/** A pattern with a letter beyond the first plane has the flag u, or it would mean two letters. */
function escaped(letter) {
  const point = letter.codePointAt(0);
  return point > 0xffff ? `\\u{${point.toString(16)}}` : `\\u${point.toString(16).padStart(4, '0')}`;
}

async function bundle(folder) {
  const { build } = await import('esbuild');
  const { learningDefines } = await import('./learning.mjs');
  const common = { bundle: true, logLevel: 'warning', absWorkingDir: root };
  const requireBanner =
    "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);";
  await build({
    ...common,
    entryPoints: {
      main: 'adapters/main.ts',
      'training-worker': 'adapters/training/worker.ts',
      'prepare-graph': 'adapters/prepare-graph.ts',
    },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    platform: 'node',
    format: 'esm',
    target: 'node20',
    define: await learningDefines(),
    // Less text to read at each start; names are kept, so that stacks can be read.
    minifyWhitespace: true,
    minifySyntax: true,
    legalComments: 'none',
    plugins: [ascii],
    write: false,
    external: ['better-sqlite3', 'pg-native', '@resvg/resvg-js'],
    banner: { js: requireBanner },
    jsx: 'automatic',
    jsxImportSource: 'hono/jsx',
    loader: { '.sql': 'text' },
  });
  await build({
    ...common,
    entryPoints: {
      chat: 'adapters/web/page/chat.ts',
      yard: 'adapters/yard/page/yard.ts',
      graph: 'adapters/yard/page/graph-picture.ts',
    },
    outdir: folder,
    platform: 'browser',
    format: 'iife',
    target: 'es2020',
    minify: true,
  });
}

/**
 * The space for new objects stays small: left to grow it takes 30 MB at the start and holds them, for what is gone in
 * milliseconds. It must be said before the program is read.
 */
function launcher(name) {
  return `#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
setFlagsFromString('--semi-space-growth-factor=1');
await import('./${name}/main.mjs');
`;
}

function sweep(current) {
  const builds = readdirSync(dist, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && /^[0-9a-f]{16}$/.test(entry.name) && entry.name !== current)
    .map((entry) => ({ name: entry.name, at: statSync(join(dist, entry.name)).mtimeMs }))
    .sort((a, b) => b.at - a.at);
  for (const { name } of builds.slice(KEPT_BUILDS - 1)) rmSync(join(dist, name), { recursive: true, force: true });
}

const name = buildName();
const folder = join(dist, name);
const program = join(dist, 'pitchhand.mjs');
if (!existsSync(join(folder, 'main.mjs'))) {
  mkdirSync(dist, { recursive: true });
  const aside = join(dist, `${name}.building-${process.pid}`);
  await bundle(aside);
  if (existsSync(folder)) rmSync(aside, { recursive: true, force: true });
  else renameSync(aside, folder);
  sweep(name);
}
if (!existsSync(program) || readFileSync(program, 'utf8') !== launcher(name)) {
  const aside = join(dist, `.pitchhand-${process.pid}.mjs`);
  writeFileSync(aside, launcher(name), { mode: 0o755 });
  renameSync(aside, program);
}
// The shipped graph, parsed, and its trained weights: made once for each content of graph/.
const { prepareGraph } = await import(pathToFileURL(join(folder, 'prepare-graph.mjs')).href);
await prepareGraph(join(root, 'graph'), join(dist, 'graphs'));
