import type { ScopedCause } from '../knowledge/knowledge.ts';
import { stem } from '../language/stems.ts';
import { refusedAt } from './states.ts';
import { contentOf, wordsOf } from './words.ts';

/** Stems that mean something is wrong beyond the fault itself: each of them in a stop condition is enough. */
const ALARMS = new Set(
  'smell smoke smoki spark tingl shock hiss buzz burn burnt scorch melt melted hot heat soot bulg crack crackl bang flame smoulder fume'.split(
    ' ',
  ),
);
/** Stop conditions that only say that the fix did not help: what follows from that is for the arithmetic. */
const NOT_HELPED =
  /^(?:no (?:change|better)|at once|no better next day|same|still \w+|nothing|none found|not cold.*|no rise.*|no heat.*|full and still.*)$/i;

/** Whether the hirer says the cause's stop condition: any of its alarms, or else the whole of what it says. */
export function saysStop(words: readonly string[], { stop }: ScopedCause): boolean {
  if (stop === undefined || NOT_HELPED.test(stop)) return false;
  const wanted = contentOf(wordsOf(stop.replace(AGAIN, '')));
  if (wanted.size === 0) return false;
  const found = new Set<string>();
  words.forEach((word, at) => {
    if (!refusedAt(words, at)) found.add(stem(word));
  });
  if (/straight back/i.test(stop) && FELL_BACK.test(words.join(' '))) return true;
  const alarms = [...wanted].filter((each) => ALARMS.has(each));
  if (alarms.length > 0) return alarms.some((each) => found.has(each));
  return [...wanted].every((each) => found.has(each) || (PAST[each] ?? []).some((past) => found.has(past)));
}

/** 'The fuse blows again': what blows need not be said. */
const AGAIN = /^the \w+ (?=(?:blows|drops|trips|falls) again$)/i;

/** A switch that does not stay up, as hirers tell it. */
const FELL_BACK =
  /\b(?:went|goes|fell|falls|dropped|drops|popped|pops|tripped|trips|flipped)(?: (?:straight|right))? (?:back|down again|off again|out again)\b/;

/** What happened is told in the past: 'it blew again', 'it came back'. */
const PAST: Readonly<Record<string, readonly string[]>> = {
  blow: ['blew', 'blown'],
  come: ['came'],
  fall: ['fell', 'fallen'],
  go: ['went', 'gone'],
  hold: ['held'],
};
