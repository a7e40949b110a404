import Fuse from 'fuse.js';
import type { PartId, TopicId } from '../basics/ids.ts';
import type { Knowledge, VanScope } from '../knowledge/knowledge.ts';

type Name = { readonly name: string; readonly part: PartId };

/** Finds the parts that a text names, however they are spelt. */
export type NameSearch = (text: string) => readonly PartId[];

/** How far a name may be from the word: 0 is the same, 1 is anything. */
const FARTHEST = 0.22;
const SHORTEST_WORD = 4;
const MOST_KEPT_WORDS = 2_000;
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
  const kept = new Map<string, readonly PartId[]>();
  const partsFor = (word: string): readonly PartId[] => {
    const before = kept.get(word);
    if (before !== undefined) return before;
    const parts = [...new Set(fuse.search(word, { limit: 3 }).map(({ item }) => item.part))];
    kept.set(word, parts);
    if (kept.size > MOST_KEPT_WORDS) kept.delete([...kept.keys()][0] ?? '');
    return parts;
  };
  return (text) => {
    const words = text.toLowerCase().match(/\p{L}+/gu) ?? [];
    return [
      ...new Set(words.filter((word) => word.length >= SHORTEST_WORD && !PLAIN_WORDS.has(word)).flatMap(partsFor)),
    ];
  };
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

/** A part that a short text names and the van has not, and a topic about it: 'your van has no ...; it has ...'. */
export function lackNamed(
  text: string,
  scope: VanScope,
  knowledge: Knowledge,
): { readonly part: PartId; readonly topic: TopicId } | null {
  if ((text.match(/\p{L}+/gu) ?? []).length > MOST_WORDS_OF_LACK) return null;
  for (const part of nameSearchOf(knowledge)(text)) {
    if (scope.parts.has(part) || scope.data.lacks[part] === undefined) continue;
    const topic = [...knowledge.topics.values()].find(
      (each) => each.about.includes(part) && !scope.topics.has(each.id),
    );
    if (topic !== undefined) return { part, topic: topic.id };
  }
  return null;
}
