import { GUARDS, type Guard } from '../knowledge/safety-schema.ts';
import type { Hit, Hits } from './lexicon.ts';
import type { Word } from './words.ts';

/** How far a guard's words set aside what stands near them. */
const REACH: Readonly<Record<Guard, 'next-words' | 'asked' | 'rest-of-sentence' | 'sentence'>> = {
  negated: 'next-words',
  question: 'asked',
  purpose: 'sentence',
  supposed: 'rest-of-sentence',
  past: 'sentence',
  elsewhere: 'sentence',
};
/** 'no longer any smell of gas': a negation reaches this many words. */
const NEGATION_REACH = 4;

/** For each word of a text, the guards that set it aside. */
export type Guarded = (at: number) => ReadonlySet<Guard>;

/** Numbers of the groups that hold the guards' words, the words that turn to something else, and those that begin what is so. */
export type GuardGroups = {
  readonly guards: ReadonlyMap<Guard, number>;
  readonly turn: number;
  readonly start: number;
};

const NONE: ReadonlySet<Guard> = new Set();
/** 'where is the tap | the van smells of gas': what is so begins up to two words before its verb. */
const SUBJECT = 2;

/**
 * Which words negations, questions, what something is for, suppositions, the past and the elsewhere set aside.
 *
 * @param hidden Words that are part of a saying and guard nothing: 'not sure'.
 */
export function guardedBy(
  { guards, turn, start }: GuardGroups,
  words: readonly Word[],
  hits: Hits,
  hidden: ReadonlySet<number>,
): Guarded {
  const found = new Map<number, Set<Guard>>();
  const turns = hits.get(turn) ?? [];
  const starts = hits.get(start) ?? [];
  for (const guard of GUARDS) {
    for (const hit of hits.get(guards.get(guard) ?? -1) ?? []) {
      if (hidden.has(hit.from)) continue;
      const { from, to } = reach(guard, hit, words, turns, starts);
      for (let at = from; at < to; at++) {
        const set = found.get(at) ?? new Set<Guard>();
        found.set(at, set.add(guard));
      }
    }
  }
  return (at) => found.get(at) ?? NONE;
}

/** The words from `from` to `to` (left out) that a guard sets aside. */
function reach(
  guard: Guard,
  hit: Hit,
  words: readonly Word[],
  turns: readonly Hit[],
  starts: readonly Hit[],
): { readonly from: number; readonly to: number } {
  const sentence = words[hit.from]?.sentence;
  let to = hit.to;
  while (to < words.length && words[to]?.sentence === sentence) to++;
  for (const turn of turns) if (turn.from >= hit.to && turn.from < to) to = turn.from;
  switch (REACH[guard]) {
    case 'next-words':
      return { from: hit.to, to: Math.min(to, hit.to + NEGATION_REACH, endOfClause(hit.to - 1, words)) };
    case 'asked': {
      for (const { from } of starts) {
        if (from >= hit.to + SUBJECT && from < to) to = Math.max(hit.to, from - SUBJECT);
      }
      return { from: hit.to, to: Math.min(to, endOfClause(hit.to - 1, words)) };
    }
    case 'rest-of-sentence':
      return { from: hit.to, to };
    case 'sentence': {
      let from = hit.from;
      while (from > 0 && words[from - 1]?.sentence === sentence) from--;
      for (const turn of turns) if (turn.to <= hit.from && turn.to > from) from = turn.to;
      return { from, to };
    }
  }
}

function endOfClause(at: number, words: readonly Word[]): number {
  const clause = words[at]?.clause;
  let to = at + 1;
  while (to < words.length && words[to]?.clause === clause) to++;
  return to;
}
