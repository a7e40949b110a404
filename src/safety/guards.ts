import { GUARDS, type Guard, type TongueData } from '../knowledge/safety-schema.ts';
import type { Hit } from './lexicon.ts';
import { createLexicon } from './lexicon.ts';
import type { Word } from './words.ts';

/** How a guard's words set aside what stands near them. */
const REACH: Readonly<Record<Guard, 'next-words' | 'rest-of-sentence' | 'sentence'>> = {
  negated: 'next-words',
  question: 'rest-of-sentence',
  supposed: 'rest-of-sentence',
  past: 'sentence',
  elsewhere: 'sentence',
};
/** 'no longer any smell of gas': a negation reaches this many words. */
const NEGATION_REACH = 4;

/** For each word of a text, the guards that set it aside. */
export type Guarded = (at: number) => ReadonlySet<Guard>;
export type GuardReader = (words: readonly Word[], hidden: ReadonlySet<number>) => Guarded;

const NONE: ReadonlySet<Guard> = new Set();

/**
 * Reads negation, questions, suppositions, the past and the elsewhere.
 *
 * @param tongue Whose guards; `hidden` words are part of an idiom and guard nothing.
 */
export function createGuardReader(tongue: TongueData, textOf: (word: Word) => string): GuardReader {
  const groups = new Map<string, readonly string[]>(GUARDS.map((guard) => [guard, tongue.guards[guard] ?? []]));
  const lexicon = createLexicon(groups, new Set(), textOf);
  const guards = GUARDS.map((guard) => [guard, lexicon.groups.get(guard) ?? -1] as const);
  return (words, hidden) => {
    const found = lexicon.find(words);
    if (found.size === 0) return () => NONE;
    const set: Set<Guard>[] = words.map(() => new Set());
    for (const [guard, group] of guards) {
      for (const hit of found.get(group) ?? []) {
        if (hidden.has(hit.from)) continue;
        for (const at of reached(guard, hit, words)) set[at]?.add(guard);
      }
    }
    return (at) => set[at] ?? NONE;
  };
}

function reached(guard: Guard, hit: Hit, words: readonly Word[]): readonly number[] {
  const sentence = words[hit.from]?.sentence;
  const clause = words[hit.to - 1]?.clause;
  const all = words.map((_, at) => at).filter((at) => words[at]?.sentence === sentence);
  switch (REACH[guard]) {
    case 'next-words':
      return all.filter((at) => at >= hit.to && at < hit.to + NEGATION_REACH && words[at]?.clause === clause);
    case 'rest-of-sentence':
      return all.filter((at) => at >= hit.to);
    case 'sentence':
      return all;
  }
}
