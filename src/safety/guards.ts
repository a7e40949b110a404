import { GUARDS, type Guard } from '../knowledge/safety-schema.ts';
import type { Hit, Hits } from './lexicon.ts';
import type { Word } from './words.ts';

/** How far a guard's words set aside what stands near them. */
const REACH: Readonly<Record<Guard, 'next-words' | 'rest-of-sentence' | 'sentence'>> = {
  negated: 'next-words',
  question: 'rest-of-sentence',
  purpose: 'sentence',
  supposed: 'rest-of-sentence',
  past: 'sentence',
  elsewhere: 'sentence',
};
/** 'no longer any smell of gas': a negation reaches this many words. */
const NEGATION_REACH = 4;

/** For each word of a text, the guards that set it aside. */
export type Guarded = (at: number) => ReadonlySet<Guard>;

const NONE: ReadonlySet<Guard> = new Set();

/**
 * Which words negations, questions, what something is for, suppositions, the past and the elsewhere set aside.
 *
 * @param groups Number of the group that holds a guard's words.
 * @param hidden Words that are part of a saying and guard nothing: 'not sure'.
 */
export function guardedBy(
  groups: ReadonlyMap<Guard, number>,
  words: readonly Word[],
  hits: Hits,
  hidden: ReadonlySet<number>,
): Guarded {
  const found = new Map<number, Set<Guard>>();
  for (const guard of GUARDS) {
    for (const hit of hits.get(groups.get(guard) ?? -1) ?? []) {
      if (hidden.has(hit.from)) continue;
      for (let at = 0; at < words.length; at++) {
        if (!reaches(guard, hit, at, words)) continue;
        const set = found.get(at) ?? new Set<Guard>();
        found.set(at, set.add(guard));
      }
    }
  }
  return (at) => found.get(at) ?? NONE;
}

function reaches(guard: Guard, hit: Hit, at: number, words: readonly Word[]): boolean {
  if (words[at]?.sentence !== words[hit.from]?.sentence) return false;
  switch (REACH[guard]) {
    case 'next-words':
      return at >= hit.to && at < hit.to + NEGATION_REACH && words[at]?.clause === words[hit.to - 1]?.clause;
    case 'rest-of-sentence':
      return at >= hit.to;
    case 'sentence':
      return true;
  }
}
