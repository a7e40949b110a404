import { withEndings } from './endings.ts';
import { createSlipFinder } from './spelling.ts';
import type { Word } from './words.ts';

/** Where a group of words was found: words `from` to `to` (left out). */
export type Hit = { readonly group: number; readonly from: number; readonly to: number };

type Phrase = { readonly rest: readonly string[]; readonly group: number };

/** Finds every group of a lexicon in a text. */
export type Lexicon = {
  /** Number of a group by its name. */
  readonly groups: ReadonlyMap<string, number>;
  /** The same words with those parted that were run together: 'gassmell'. */
  readonly parted: (words: readonly Word[]) => readonly Word[];
  /** By group; a group that does not occur has no entry. */
  readonly find: (words: readonly Word[]) => ReadonlyMap<number, readonly Hit[]>;
  /** Every word of five letters or more whose slips are mended: for checks and for the list of words that look alike. */
  readonly mended: readonly string[];
  /** The words of the lexicon that a word may stand for. */
  readonly meant: (word: string) => readonly string[];
};

/** Small words that may stand inside a phrase without being part of it: 'burnt (the) toast'. */
const FILLERS = new Set([
  'the',
  'a',
  'an',
  'my',
  'our',
  'his',
  'her',
  'their',
  'your',
  'its',
  'me',
  'this',
  'that',
  'some',
  'these',
  'those',
]);
const MOST_REMEMBERED = 20_000;

/**
 * @param groups  Phrases by group name. '<name>' stands for the phrases of another group.
 * @param right   Words that look like a word of the lexicon and are none.
 * @param textOf  Which face of a word is looked at.
 */
export function createLexicon(
  groups: ReadonlyMap<string, readonly string[]>,
  right: ReadonlySet<string>,
  textOf: (word: Word) => string,
): Lexicon {
  const names = new Map([...groups.keys()].map((name, i) => [name, i] as const));
  const byFirst = new Map<string, Phrase[]>();
  const byStart = new Map<string, number[]>();
  const vocabulary = new Set<string>();
  for (const [name, index] of names) {
    for (const entry of flattened(name, groups, [])) {
      if (entry.endsWith('*')) byStart.set(entry.slice(0, -1), [...(byStart.get(entry.slice(0, -1)) ?? []), index]);
      else for (const words of spelledOut(entry)) addPhrase(words, index, byFirst, vocabulary);
    }
  }
  const slips = createSlipFinder(vocabulary, right);
  const remembered = new Map<string, readonly string[]>();
  const meant = (word: string): readonly string[] => {
    let found = remembered.get(word);
    if (found === undefined) {
      found = readings(word, vocabulary, slips);
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(word, found);
    }
    return found;
  };
  const find = (words: readonly Word[]) => {
    const faces = words.map(textOf);
    const senses = faces.map(meant);
    const hits = new Map<number, Hit[]>();
    const add = (hit: Hit) => {
      const list = hits.get(hit.group);
      if (list === undefined) hits.set(hit.group, [hit]);
      else list.push(hit);
    };
    for (let at = 0; at < faces.length; at++) {
      for (const sense of senses[at] ?? []) addFrom(sense, at, at + 1, faces, senses, byFirst, add);
      const run = joinedWithNext(faces, senses, at, vocabulary);
      if (run !== null) addFrom(run, at, at + 2, faces, senses, byFirst, add);
      addStarts(faces[at] ?? '', at, byStart, add);
    }
    return hits;
  };
  const parted = (words: readonly Word[]) =>
    words.flatMap((word) => {
      const two = halves(textOf(word), meant, right, vocabulary);
      return two === null ? [word] : two.map((half) => ({ ...word, text: half, raw: half }));
    });
  return { groups: names, find, parted, mended: [...vocabulary].filter((word) => word.length >= 5), meant };
}

function flattened(
  name: string,
  groups: ReadonlyMap<string, readonly string[]>,
  above: readonly string[],
): readonly string[] {
  if (above.includes(name)) throw new Error(`the group '${name}' holds itself`);
  return (groups.get(name) ?? []).flatMap((entry) =>
    /^<.+>$/.test(entry) ? flattened(entry.slice(1, -1), groups, [...above, name]) : [entry],
  );
}

/** Every way to write a phrase whose words may have endings. */
function spelledOut(entry: string): readonly (readonly string[])[] {
  let all: (readonly string[])[] = [[]];
  for (const word of entry.split(' ')) all = all.flatMap((start) => withEndings(word).map((form) => [...start, form]));
  return all;
}

function addPhrase(
  words: readonly string[],
  group: number,
  byFirst: Map<string, Phrase[]>,
  vocabulary: Set<string>,
): void {
  const [first, ...rest] = words;
  if (first === undefined) return;
  for (const word of words) vocabulary.add(word);
  const list = byFirst.get(first);
  if (list === undefined) byFirst.set(first, [{ rest, group }]);
  else list.push({ rest, group });
}

/** What a typed word may stand for: itself, itself without drawn-out letters, or the words it is one slip away from. */
function readings(
  word: string,
  vocabulary: ReadonlySet<string>,
  slips: (word: string) => readonly string[],
): readonly string[] {
  if (vocabulary.has(word)) return [word];
  const short = word.replace(/(.)\1+/g, '$1');
  if (short.length >= 3 && word.length >= 4 && short !== word && vocabulary.has(short)) return [short];
  return slips(word);
}

function addFrom(
  first: string,
  at: number,
  next: number,
  faces: readonly string[],
  senses: readonly (readonly string[])[],
  byFirst: ReadonlyMap<string, readonly Phrase[]>,
  add: (hit: Hit) => void,
): void {
  for (const { rest, group } of byFirst.get(first) ?? []) {
    let to = next;
    const fits = rest.every((word) => {
      while (to < faces.length && faces[to] !== word && FILLERS.has(faces[to] ?? '')) to++;
      const here = faces[to] === word || (senses[to]?.includes(word) ?? false);
      to++;
      return here;
    });
    if (fits) add({ group, from: at, to });
  }
}

/** 'smo ke' for 'smoke': two neighbours that are one word of the lexicon, when not both are words of it themselves. */
function joinedWithNext(
  faces: readonly string[],
  senses: readonly (readonly string[])[],
  at: number,
  vocabulary: ReadonlySet<string>,
): string | null {
  const word = (faces[at] ?? '') + (faces[at + 1] ?? '');
  if (word.length < 5 || faces[at + 1] === undefined || !vocabulary.has(word)) return null;
  return senses[at]?.length === 0 || senses[at + 1]?.length === 0 ? word : null;
}

/** 'gassmell': two words of the lexicon that were run together, of three letters or more each. */
function halves(
  word: string,
  meant: (word: string) => readonly string[],
  right: ReadonlySet<string>,
  vocabulary: ReadonlySet<string>,
): readonly [string, string] | null {
  if (word.length < 6 || right.has(word) || meant(word).length > 0) return null;
  for (let at = 3; at <= word.length - 3; at++) {
    const [first, second] = [word.slice(0, at), word.slice(at)];
    if (vocabulary.has(first) && vocabulary.has(second)) return [first, second];
  }
  return null;
}

function addStarts(
  face: string,
  at: number,
  byStart: ReadonlyMap<string, readonly number[]>,
  add: (hit: Hit) => void,
): void {
  for (let length = 3; length <= face.length; length++) {
    for (const group of byStart.get(face.slice(0, length)) ?? []) add({ group, from: at, to: at + 1 });
  }
}
