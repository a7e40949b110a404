import Fuse from 'fuse.js';
import type { PartId, TopicId } from '../basics/ids.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';
import { rightWords } from '../language/right-words.ts';
import { stem } from '../language/stems.ts';

type Name = { readonly name: string; readonly part: PartId };

/**
 * Finds the parts that a text names, however they are spelt. `whole`: only parts that go by one of its words alone, since
 * 'test' is half the name of many a button.
 */
export type NameSearch = (text: string, whole?: boolean) => readonly PartId[];

/** How far a name may be from the word: 0 is the same, 1 is anything. */
const FARTHEST = 0.22;
const SHORTEST_WORD = 4;
const MOST_KEPT_WORDS = 2_000;
/** Looked at, and kept, for one word. */
const MOST_FOUND = 12;
const MOST_MEANT = 3;
/** Words that stand in many names and name nothing by themselves. */
const PLAIN_WORDS = new Set([
  'water',
  'light',
  'lights',
  'button',
  'switch',
  'control',
  'white',
  'black',
  'with',
  'from',
  'that',
  'this',
  'what',
  'when',
  'where',
  'there',
  'have',
  'does',
  'inside',
  'outside',
  'front',
  'rear',
  'side',
]);

const searches = new WeakMap<Knowledge, NameSearch>();

/** The search over a graph's names: made once for each graph, remembering what it found for a word. */
export function nameSearchOf(knowledge: Knowledge): NameSearch {
  const found = searches.get(knowledge) ?? createNameSearch(knowledge);
  searches.set(knowledge, found);
  return found;
}

function createNameSearch(knowledge: Knowledge): NameSearch {
  const fuse = new Fuse<Name>(namesOf(knowledge), {
    keys: ['name'],
    threshold: FARTHEST,
    ignoreLocation: true,
    includeScore: true,
    minMatchCharLength: 2,
  });
  const right = rightWords();
  const kept = new Map<string, readonly Name[]>();
  const namesFor = (word: string): readonly Name[] => {
    const before = kept.get(word);
    if (before !== undefined) return before;
    const found = fuse.search(word, { limit: MOST_FOUND }).map(({ item }) => item);
    // What is spelt right means itself: 'bread' is no slip of 'broadband'.
    const meant = (right.has(word) ? found.filter(({ name }) => bears(name, word)) : found).slice(0, MOST_MEANT);
    kept.set(word, meant);
    if (kept.size > MOST_KEPT_WORDS) kept.delete([...kept.keys()][0] ?? '');
    return meant;
  };
  return (text, whole = false) => {
    const words = text.toLowerCase().match(/\p{L}+/gu) ?? [];
    const names = words.filter((word) => word.length >= SHORTEST_WORD && !PLAIN_WORDS.has(word)).flatMap(namesFor);
    return [...new Set(names.filter(({ name }) => !whole || !/\s/.test(name.trim())).map(({ part }) => part))];
  };
}

/** Whether a word, or its stem, is one of a name's. */
function bears(name: string, word: string): boolean {
  return (name.toLowerCase().match(/\p{L}+/gu) ?? []).some((each) => stem(each) === stem(word));
}

/** Names of parts and of their controls, what else they are called, and the glossary's words for them. */
function namesOf({ parts, glossary }: Knowledge): Name[] {
  const own = [...parts.values()].flatMap((part) =>
    [
      part.name,
      ...part.also,
      ...Object.values(part.controls).flatMap((control) => [control.name, ...control.also]),
    ].map((name) => ({ name, part: part.id })),
  );
  const said = glossary.words.flatMap(({ says, part }) => (part === undefined ? [] : [{ name: says, part }]));
  return [...own, ...said];
}

/** Topics of the van about the parts that a text names: the last try before a pass. */
export function topicsNamed(text: string, scope: VanScope, knowledge: Knowledge, most: number): readonly TopicId[] {
  const named = nameSearchOf(knowledge)(text);
  const topics = [...scope.topics].filter((id) => {
    const topic = knowledge.topics.get(id);
    return (
      topic !== undefined &&
      !topic.notice &&
      topic.about.some((part) => named.includes(part) || namesRole(named, part, knowledge))
    );
  });
  return topics.slice(0, most);
}

function namesRole(named: readonly PartId[], role: PartId, knowledge: Knowledge): boolean {
  return named.some((part) => knowledge.parts.get(part)?.is === role);
}

/** A longer message is seldom about one thing that is not there. */
const MOST_WORDS_OF_LACK = 6;

/**
 * A part that a short text names and the van has not, and a topic about it: 'your van has no ...; it has ...'.
 *
 * @param linked Parts that the text was already seen to name.
 */
export function lackNamed(
  text: string,
  linked: readonly PartId[],
  scope: VanScope,
  knowledge: Knowledge,
): { readonly part: PartId; readonly topic: TopicId } | null {
  if ((text.match(/\p{L}+/gu) ?? []).length > MOST_WORDS_OF_LACK) return null;
  for (const part of [...linked, ...nameSearchOf(knowledge)(text, true)]) {
    if (scope.parts.has(part) || scope.data.lacks[part] === undefined) continue;
    const topic = [...knowledge.topics.values()].find(
      (each) => each.about.includes(part) && !scope.topics.has(each.id),
    );
    if (topic !== undefined) return { part, topic: topic.id };
  }
  return null;
}
