import Fuse from 'fuse.js';
import type { PartId } from '../basics/ids.ts';
import type { Topic } from '../knowledge/knowledge.ts';
import type { Naming } from './links.ts';

/** What a topic gains when a word that nobody of the graph knows looks like a part it is about. */
const GAIN = 1.5;
/** fuse.js: 0 is the same text, 1 is nothing alike. */
const ALIKE = 0.4;
const MOST_REMEMBERED = 2000;

/** Parts whose names a word resembles. */
export type LastTry = (word: string) => ReadonlySet<PartId>;

/**
 * Searches the names of parts for something like a word that the speller could not place. It takes a millisecond or
 * more, so it is asked only when a message would otherwise be passed, and what it found is remembered by word.
 */
export function createLastTry(namings: readonly Naming[]): LastTry {
  let fuse: Fuse<Naming> | null = null;
  const remembered = new Map<string, ReadonlySet<PartId>>();
  return (word) => {
    let found = remembered.get(word);
    if (found === undefined) {
      fuse ??= new Fuse([...namings], { keys: ['says'], threshold: ALIKE, ignoreLocation: true });
      const hits = fuse.search(word, { limit: 5 }).map(({ item }) => item);
      found = new Set(hits.flatMap(({ part, role }) => [part, role]));
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(word, found);
    }
    return found;
  };
}

/** What to add to each class's logit for the parts found: classes of topics about one of them gain. */
export function gainsFor(parts: ReadonlySet<PartId>, topics: readonly (Topic | undefined)[]): Float64Array {
  return Float64Array.from(topics, (topic) => (topic?.about.some((part) => parts.has(part)) ? GAIN : 0));
}
