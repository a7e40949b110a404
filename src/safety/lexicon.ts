import { withEndings } from './endings.ts';
import { foldText } from './fold.ts';
import { createSlipFinder, type WordList } from './spelling.ts';
import type { Word } from './words.ts';

/** Where a group of words was found: words `from` to `to` (left out). */
export type Hit = { readonly from: number; readonly to: number };

/** By number of the group; a group that does not occur has no entry. */
export type Hits = ReadonlyMap<number, readonly Hit[]>;

/** Finds every group of a lexicon in a text. */
export type Lexicon = {
  /** Number of a group by its name. */
  readonly groups: ReadonlyMap<string, number>;
  /** The same words with those parted that were run together: 'gassmell'. */
  readonly parted: (words: readonly Word[]) => readonly Word[];
  readonly find: (words: readonly Word[]) => Hits;
  /** Every word whose slips are mended. */
  readonly mended: readonly string[];
  /** The words of the lexicon that a word may stand for. */
  readonly meant: (word: string) => readonly string[];
};

export type LexiconOptions = {
  /** Phrases by group name. '<name>' stands for the phrases of another group. */
  readonly groups: ReadonlyMap<string, readonly string[]>;
  /** Words that look like a word of the lexicon and are none. */
  readonly right: WordList;
  /** Small words that may stand inside a phrase without being part of it: 'burnt (the) toast'. */
  readonly fillers: ReadonlySet<string>;
};

const MOST_REMEMBERED = 20_000;
/** Word starts such as 'smok*' have at least this many letters. */
const SHORTEST_START = 3;

/** 'a, b c' -> ['a', 'b c'], each in the folded spelling that texts are compared in. */
export function listed(phrases: string | undefined): readonly string[] {
  return (phrases ?? '')
    .split(',')
    .map((phrase) => foldText(phrase).replaceAll("'", ' ').trim())
    .filter((phrase) => phrase !== '');
}

/** Compiles the groups once; finding them takes some microseconds a text. */
export function createLexicon({ groups, right, fillers }: LexiconOptions): Lexicon {
  const numbers = new Map([...groups.keys()].map((name, number) => [name, number] as const));
  const phrases = compile(groups, numbers);
  const meant = createMeant(phrases.vocabulary, right);
  return {
    groups: numbers,
    find: (words) =>
      findIn(
        words.map((word) => word.text),
        phrases,
        meant,
        fillers,
      ),
    parted: (words) =>
      words.flatMap(
        (word) => halves(word.text, meant, right, phrases.vocabulary)?.map((text) => ({ ...word, text })) ?? [word],
      ),
    mended: [...phrases.vocabulary].filter((word) => word.length >= 5),
    meant,
  };
}

/** A phrase of several words, by its first two: the rest, and the group. */
type Longer = { readonly rest: readonly string[]; readonly group: number };

type Phrases = {
  readonly single: ReadonlyMap<string, readonly number[]>;
  readonly longer: ReadonlyMap<string, ReadonlyMap<string, readonly Longer[]>>;
  readonly starts: ReadonlyMap<string, readonly number[]>;
  readonly vocabulary: ReadonlySet<string>;
};

function compile(groups: LexiconOptions['groups'], numbers: ReadonlyMap<string, number>): Phrases {
  const single = new Map<string, number[]>();
  const longer = new Map<string, Map<string, Longer[]>>();
  const starts = new Map<string, number[]>();
  const vocabulary = new Set<string>();
  for (const [name, group] of numbers) {
    for (const entry of flattened(name, groups, [])) {
      if (entry.endsWith('*')) push(starts, entry.slice(0, -1), group);
      else for (const words of spelledOut(entry)) addPhrase(words, group);
    }
  }
  return { single, longer, starts, vocabulary };

  function addPhrase([first, second, ...rest]: readonly string[], group: number): void {
    if (first === undefined) return;
    for (const word of [first, second ?? first, ...rest]) vocabulary.add(word);
    if (second === undefined) {
      push(single, first, group);
      return;
    }
    const bySecond = longer.get(first) ?? new Map<string, Longer[]>();
    longer.set(first, bySecond);
    push(bySecond, second, { rest, group });
  }
}

function push<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

function flattened(name: string, groups: LexiconOptions['groups'], above: readonly string[]): readonly string[] {
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

/** What a typed word may stand for: itself, itself without drawn-out letters, or the words it is one slip away from. */
function createMeant(vocabulary: ReadonlySet<string>, right: WordList): (word: string) => readonly string[] {
  const slips = createSlipFinder(vocabulary, right);
  const remembered = new Map<string, readonly string[]>();
  const read = (word: string): readonly string[] => {
    if (vocabulary.has(word)) return [word];
    if (right.has(word)) return [];
    // Half of Britain drops the g.
    if (word.endsWith('in') && vocabulary.has(`${word}g`)) return [`${word}g`];
    const short = word.replace(/(.)\1+/g, '$1');
    if (short !== word && short.length >= 3 && word.length >= 4 && vocabulary.has(short)) return [short];
    return slips(word);
  };
  return (word) => {
    let found = remembered.get(word);
    if (found === undefined) {
      found = read(word);
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(word, found);
    }
    return found;
  };
}

function findIn(
  faces: readonly string[],
  { single, longer, starts, vocabulary }: Phrases,
  meant: (word: string) => readonly string[],
  fillers: ReadonlySet<string>,
): Hits {
  const senses = faces.map(meant);
  const heard = faces.map((face, at) => {
    const sense = senses[at] as readonly string[];
    return sense.includes(face) ? sense : [face, ...sense];
  });
  const hits = new Map<number, Hit[]>();
  const isHere = (at: number, word: string) => heard[at]?.includes(word) ?? false;
  /** Where a phrase ends whose `rest` must follow at `at`, fillers passed over, or -1. */
  const endOf = (rest: readonly string[], at: number): number => {
    for (const word of rest) {
      while (at < faces.length && !isHere(at, word) && fillers.has(faces[at] ?? '')) at++;
      if (!isHere(at, word)) return -1;
      at++;
    }
    return at;
  };
  const addFrom = (first: string, from: number, next: number): void => {
    for (const group of single.get(first) ?? []) push(hits, group, { from, to: next });
    const bySecond = longer.get(first);
    if (bySecond === undefined) return;
    for (let at = next; at < faces.length; at++) {
      for (const second of heard[at] as readonly string[]) {
        for (const { rest, group } of bySecond.get(second) ?? []) {
          const to = endOf(rest, at + 1);
          if (to !== -1) push(hits, group, { from, to });
        }
      }
      if (!fillers.has(faces[at] as string)) break;
    }
  };
  for (let at = 0; at < faces.length; at++) {
    const face = faces[at] ?? '';
    for (const sense of senses[at] ?? []) addFrom(sense, at, at + 1);
    const both = joinedWithNext(face, faces[at + 1], senses[at], senses[at + 1], vocabulary);
    if (both !== null) addFrom(both, at, at + 2);
    if (starts.size > 0) {
      for (let length = SHORTEST_START; length <= face.length; length++) {
        for (const group of starts.get(face.slice(0, length)) ?? []) push(hits, group, { from: at, to: at + 1 });
      }
    }
  }
  return hits;
}

/** 'smo ke' for 'smoke': two neighbours that are one word of the lexicon, when not both are words of it themselves. */
function joinedWithNext(
  first: string,
  second: string | undefined,
  firstMeant: readonly string[] | undefined,
  secondMeant: readonly string[] | undefined,
  vocabulary: ReadonlySet<string>,
): string | null {
  if (second === undefined || (firstMeant?.length !== 0 && secondMeant?.length !== 0)) return null;
  const word = first + second;
  return word.length >= 5 && vocabulary.has(word) ? word : null;
}

/** 'gassmell': two words of the lexicon that were run together, of three letters or more each. */
function halves(
  word: string,
  meant: (word: string) => readonly string[],
  right: WordList,
  vocabulary: ReadonlySet<string>,
): readonly [string, string] | null {
  if (word.length < 6 || right.has(word) || meant(word).length > 0) return null;
  for (let at = 3; at <= word.length - 3; at++) {
    const [first, second] = [word.slice(0, at), word.slice(at)];
    if (vocabulary.has(first) && vocabulary.has(second)) return [first, second];
  }
  return null;
}
