import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Reading order is import order: a folder imports only from itself and from those above it. */
const ORDER = [
  'basics',
  'language',
  'message',
  'knowledge',
  'safety',
  'match',
  'faults',
  'calculators',
  'hours',
  'thread',
  'dialogue',
  'reply',
  'relay',
  'check',
  'review',
  'ports',
  'turn.ts',
  'index.ts',
];
/** What every adapter may use beside src/index.ts. */
const SHARED_ROOMS = ['http', 'pages', 'pictures'];
/** The wiring: it joins adapters, so it may import any of them. */
const WIRING = [
  'main.ts',
  'config.ts',
  'shell.ts',
  'delivery.ts',
  'wakeable.ts',
  'world.ts',
  'live-graph.ts',
  'duty-rounds.ts',
  'follow-ups.ts',
  'prepare-graph.ts',
  'cli',
];

type Import = { readonly file: string; readonly from: string };

function sources(folder: string): { file: string; text: string }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => ({ file, text: readFileSync(file, 'utf8') }));
}

function importsOf({ file, text }: { file: string; text: string }): Import[] {
  const named = [...text.matchAll(/(?:\bfrom\s+|\bimport\s*\(?\s*)['"]([^'"]+)['"]/g)].map((found) => found[1] ?? '');
  return named.map((from) => ({ file, from: from.startsWith('.') ? normalize(join(dirname(file), from)) : from }));
}

const room = (path: string): string => path.split('/')[1] ?? '';

function wrongArrowsInSrc(files: readonly { file: string; text: string }[]): string[] {
  return files.flatMap(importsOf).flatMap(({ file, from }) => {
    if (!from.startsWith('src/')) return from.startsWith('adapters/') ? [`${file} imports ${from}`] : [];
    const [here, there] = [ORDER.indexOf(room(file)), ORDER.indexOf(room(from))];
    return here < 0 || there < 0 || there > here ? [`${file} imports ${from}`] : [];
  });
}

function impurities(files: readonly { file: string; text: string }[]): string[] {
  const rules: [RegExp, string][] = [
    [/\bawait\b|\basync\b/, 'await'],
    [/\bDate\.now\b|\bperformance\.now\b|\bsetTimeout\b|\bsetInterval\b/, 'a clock'],
    [/\bMath\.random\b|\bcrypto\b/, 'randomness'],
    [/\bnew Date\(\s*\)/, 'new Date() without argument'],
    [/\.get(?:UTC)?(?:FullYear|Month|Date|Day|Hours|Minutes|Seconds|Milliseconds|TimezoneOffset)\(/, 'a Date getter'],
    [/['"]node:|\bprocess\./, 'node'],
  ];
  return files.flatMap(({ file, text }) => {
    const code = text
      .replace(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, '')
      .replace(/'(?:[^'\\\n]|\\.)*'/g, (literal) => (/^'node:/.test(literal) ? literal : "''"));
    return rules.filter(([pattern]) => pattern.test(code)).map(([, what]) => `${file}: ${what}`);
  });
}

function wrongArrowsInAdapters(files: readonly { file: string; text: string }[]): string[] {
  return files.flatMap(importsOf).flatMap(({ file, from }) => {
    if (from.startsWith('src/')) return from === 'src/index.ts' ? [] : [`${file} imports ${from}`];
    if (!from.startsWith('adapters/')) return [];
    const [here, there] = [room(file), room(from)];
    const allowed = here === there || WIRING.includes(here) || SHARED_ROOMS.includes(there);
    return allowed ? [] : [`${file} imports ${from}`];
  });
}

function inCycles(files: readonly { file: string; text: string }[]): string[] {
  const next = new Map(files.map((file) => [file.file, importsOf(file).map((each) => each.from)] as const));
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (file: string, path: readonly string[]): void => {
    if (path.includes(file)) found.push([...path.slice(path.indexOf(file)), file].join(' -> '));
    if (path.includes(file) || done.has(file)) return;
    for (const other of next.get(file) ?? []) if (next.has(other)) visit(other, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) visit(file, []);
  return found;
}

describe('the arrows', () => {
  const src = sources('src');
  const adapters = sources('adapters');

  it('point upwards in src/', () => {
    expect(wrongArrowsInSrc(src)).toEqual([]);
  });

  it('make no circle in src/ or adapters/', () => {
    expect(inCycles([...src, ...adapters])).toEqual([]);
  });

  it('leave src/ pure', () => {
    expect(impurities(src)).toEqual([]);
  });

  it('enter src/ by its one door, and join adapters only in the wiring', () => {
    expect(wrongArrowsInAdapters(adapters)).toEqual([]);
  });
});

describe('the arrow rules themselves', () => {
  it.each([
    [
      'a lower folder importing a higher one',
      wrongArrowsInSrc([{ file: 'src/match/a.ts', text: "import { b } from '../reply/b.ts';" }]),
    ],
    [
      'src/ importing an adapter',
      wrongArrowsInSrc([{ file: 'src/match/a.ts', text: "import { b } from '../../adapters/b.ts';" }]),
    ],
    [
      'a new room that has no place in the order',
      wrongArrowsInSrc([{ file: 'src/match/a.ts', text: "import { b } from '../attic/b.ts';" }]),
    ],
    [
      'an adapter reaching past the door',
      wrongArrowsInAdapters([{ file: 'adapters/web/a.ts', text: "import { b } from '../../src/turn.ts';" }]),
    ],
    [
      'one channel importing another',
      wrongArrowsInAdapters([{ file: 'adapters/web/a.ts', text: "import { b } from '../telegram/b.ts';" }]),
    ],
    ['waiting in src/', impurities([{ file: 'src/a.ts', text: 'export const a = async () => { await b(); };' }])],
    ['a clock in src/', impurities([{ file: 'src/a.ts', text: 'export const a = Date.now();' }])],
    ['chance in src/', impurities([{ file: 'src/a.ts', text: 'export const a = Math.random();' }])],
    ['today in src/', impurities([{ file: 'src/a.ts', text: 'export const a = new Date();' }])],
    ['the local zone in src/', impurities([{ file: 'src/a.ts', text: 'export const a = d.getHours();' }])],
    ['a node module in src/', impurities([{ file: 'src/a.ts', text: "import { b } from 'node:fs';" }])],
    [
      'a circle',
      inCycles([
        { file: 'src/a.ts', text: "import './b.ts';" },
        { file: 'src/b.ts', text: "import './a.ts';" },
      ]),
    ],
  ])('refuse %s', (_, found) => {
    expect(found).toHaveLength(1);
  });
});
