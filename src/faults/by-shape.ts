import { SHAPES } from './question-shapes.ts';
import { refusedAt } from './states.ts';
import type { Verdict } from './types.ts';

const TABLE = SHAPES.map(([asks, yes, no]) => ({ asks, yes: wholeWords(yes), no: wholeWords(no) }));

function wholeWords(alternatives: string): RegExp | null {
  return alternatives === '' ? null : new RegExp(`(?<![\\w-])(?:${alternatives})(?![\\w-])`);
}

/** What a reply says to a question of one of the shapes of question-shapes.ts; null where none fits. */
export function byShape(words: readonly string[], ask: string): Verdict | null {
  if (/\bOFF\b/.test(ask) && /\b(?:switched|turned|put) on$/.test(words.join(' '))) return 'no';
  for (const { asks, yes, no } of TABLE) {
    if (!asks.test(ask)) continue;
    const denied = found(words, no);
    if (denied === true) return 'no';
    const agreed = found(words, yes);
    if (agreed !== null) return agreed ? 'yes' : 'no';
    if (denied === false) return 'yes';
  }
  return null;
}

/** Whether the words are said (true), refused by a 'not' before them (false), or neither. */
function found(words: readonly string[], pattern: RegExp | null): boolean | null {
  const said = words.join(' ');
  const match = pattern?.exec(said);
  if (match === null || match === undefined) return null;
  return !refusedAt(words, said.slice(0, match.index).split(' ').length - 1);
}

/** Questions whether something is there at all. */
const THERE = /^(?:is|are|was|were) (?:there|anything|something)\b|^can you see\b|^has there been\b/i;
const THERE_SAID =
  /^there (?:is|are|was|were) (?!not|no\b).* (?:on|in|over|under|behind|against) (?:it|them|there|the)\b/;
const NOT_THERE = /\b(?:no|not|none|nothing|never|neither|clean|clear|fine|good|ok|dry|shut|closed|empty|free|only)\b/;
const MOST_WORDS = 5;

/** 'A twig' to 'Is there a leaf in the track?', 'there was a duvet on it' to 'Are bags over it?': something is there. */
export function byThere(words: readonly string[], ask: string): Verdict | null {
  const said = words.join(' ');
  if (words.length > 8 || NOT_THERE.test(said)) return null;
  if (THERE_SAID.test(said)) return 'yes';
  const names = THERE.test(ask) && words.length <= MOST_WORDS && words.some((word) => word.length > 2);
  return names ? 'yes' : null;
}
