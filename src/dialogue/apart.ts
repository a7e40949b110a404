import { type Apart, type Entry, tellApart } from '../faults/tell-apart.ts';
import type { Ranked } from '../match/types.ts';
import type { Situation } from './draft.ts';
import { passMinutes } from './walk.ts';

/**
 * What is best for words that fit several symptoms ('fridge not working'): to ask which it is, or to begin on the
 * likeliest where asking costs more minutes than it saves.
 *
 * @returns Null when not all of the topics are symptoms with causes to look for, or there is one alone: then they are
 *          offered as any other topics.
 */
export function symptomsApart(topics: readonly Ranked[], situation: Situation): Apart | null {
  const { scope } = situation;
  if (scope === null) return null;
  const entries = topics.map(
    ({ topic, probability }): Entry => ({ symptom: topic, probability, causes: scope.causes(topic) }),
  );
  const [first, second, ...rest] = entries;
  if (first === undefined || second === undefined || entries.some(({ causes }) => causes.length === 0)) return null;
  return tellApart([first, second, ...rest], { passMinutes: passMinutes(situation) });
}
