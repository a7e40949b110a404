import { existsSync, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { seeded, shuffled } from '../../../src/basics/seeded.ts';

/** Where the open data sets lie, beside the project; their origin and licences are told in its README. */
export const DATA = '../shared/data';

export type Example = { readonly text: string; readonly label: string };
/** `label` null in the test: no topic covers it. */
export type DataSet = {
  readonly name: string;
  readonly train: readonly Example[];
  readonly test: readonly { readonly text: string; readonly label: string | null }[];
};

export const dataThere = (): boolean => existsSync(DATA);

/** The sets of the lab's protocol: ten random lines a topic for the two large ones, all lines for the real messages. */
export function dataSets(): readonly DataSet[] {
  const bank = banking();
  return [clinc(), bank, lackingAQuarter(bank), ...['curekart', 'sofmattress', 'powerplay11'].map(hint3)];
}

/** Every training line of all sets, for measuring growth. */
export function allLines(): readonly Example[] {
  const full = JSON.parse(readFileSync(`${DATA}/clinc150/data_full.json`, 'utf8')) as { train: [string, string][] };
  const clincLines = full.train.map(([text, label]) => ({ text, label: `clinc-${label}` }));
  return [...clincLines, ...csv(`${DATA}/banking77/train.csv`, 'text', 'category')];
}

function clinc(): DataSet {
  const full = JSON.parse(readFileSync(`${DATA}/clinc150/data_full.json`, 'utf8')) as Record<
    string,
    [string, string][]
  >;
  const pairs = (name: string) => (full[name] ?? []).map(([text, label]) => ({ text, label }));
  const test = [...pairs('test'), ...pairs('oos_test').map(({ text }) => ({ text, label: null }))];
  return { name: 'CLINC-r', train: tenOfEach(pairs('train')), test };
}

function banking(): DataSet {
  const train = csv(`${DATA}/banking77/train.csv`, 'text', 'category');
  return { name: 'BANK', train: firstTen(train), test: csv(`${DATA}/banking77/test.csv`, 'text', 'category') };
}

/** Every fourth topic in alphabetical order is taken out; its questions are then covered by none. */
function lackingAQuarter({ train, test }: DataSet): DataSet {
  const labels = [...new Set(train.map(({ label }) => label))].sort();
  const out = new Set(labels.filter((_, i) => i % 4 === 0));
  return {
    name: 'BANK-oos',
    train: train.filter(({ label }) => !out.has(label)),
    test: test.map(({ text, label }) => ({ text, label: label === null || out.has(label) ? null : label })),
  };
}

function hint3(bot: string): DataSet {
  const read = (part: string) => csv(`${DATA}/hint3/v1_${bot}_${part}.csv`, 'sentence', 'label');
  const test = read('test').map(({ text, label }) => ({ text, label: label === 'NO_NODES_DETECTED' ? null : label }));
  return { name: bot.replace('11', ''), train: read('train'), test };
}

function csv(file: string, text: string, label: string): readonly Example[] {
  const { data } = Papa.parse<Record<string, string>>(readFileSync(file, 'utf8'), {
    header: true,
    skipEmptyLines: true,
  });
  return data.map((row) => ({ text: row[text] ?? '', label: row[label] ?? '' }));
}

function tenOfEach(all: readonly Example[]): readonly Example[] {
  return firstTen(shuffled(all, seeded(1)));
}

function firstTen(all: readonly Example[]): readonly Example[] {
  const seen = new Map<string, number>();
  return all.filter(({ label }) => {
    const count = seen.get(label) ?? 0;
    seen.set(label, count + 1);
    return count < 10;
  });
}

/**
 * Harsher than real typing: each word of two letters or more is hit with probability 0.3; one edit, for five letters and
 * more one or two; a letter put in, left out, changed, or two swapped.
 */
export function withTypos(text: string, random: () => number): string {
  return text
    .split(' ')
    .map((word) => {
      if (word.length < 2 || random() >= 0.3) return word;
      const edits = word.length >= 5 && random() < 0.5 ? 2 : 1;
      let hit = word;
      for (let i = 0; i < edits; i++) hit = edited(hit, random);
      return hit;
    })
    .join(' ');
}

function edited(word: string, random: () => number): string {
  const at = Math.floor(random() * word.length);
  const letter = String.fromCharCode(97 + Math.floor(random() * 26));
  switch (Math.floor(random() * 4)) {
    case 0:
      return word.slice(0, at) + letter + word.slice(at);
    case 1:
      return word.slice(0, at) + word.slice(at + 1);
    case 2:
      return word.slice(0, at) + letter + word.slice(at + 1);
    default:
      return at + 1 < word.length ? word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2) : word;
  }
}
