import { isOfAmount } from './amounts.ts';
import { SHAPES } from './question-shapes.ts';
import { refusedAt } from './states.ts';
import type { Finding, Verdict } from './types.ts';

const TABLE = SHAPES.map(([asks, yes, no]) => ({
  asks,
  yes: wholeWords(yes),
  no: wholeWords(no),
  vocabulary: new Set(`${yes} ${no}`.match(/[a-z]{2,}/g) ?? []),
}));

function wholeWords(alternatives: string): RegExp | null {
  return alternatives === '' ? null : new RegExp(`(?<![\\w-])(?:${alternatives})(?![\\w-])`);
}

/** What a reply says to a question of one of the shapes of question-shapes.ts; null where none fits. */
export function byShape(words: readonly string[], ask: string): Finding | null {
  for (const { asks, yes, no, vocabulary } of TABLE) {
    if (!asks.test(ask)) continue;
    const denied = find(words, no);
    const agreed = find(words, yes);
    const decides = denied?.refused === false ? denied : (agreed ?? denied);
    if (decides === null) continue;
    const verdict: Verdict = (decides === denied) === decides.refused ? 'yes' : 'no';
    return { verdict, rests: new Set([...vocabulary, ...decides.words, ...words.filter(isOfAmount)]) };
  }
  return null;
}

/** The words of the pattern as they are said, and whether a 'not' stands before them. */
function find(
  words: readonly string[],
  pattern: RegExp | null,
): { readonly words: readonly string[]; readonly refused: boolean } | null {
  const said = words.join(' ');
  const match = pattern?.exec(said) ?? null;
  if (match === null) return null;
  const at = said.slice(0, match.index).split(' ').length - 1;
  return { words: match[0].split(' '), refused: refusedAt(words, at) };
}

/** Questions whether something is there at all. */
const THERE = /^(?:is|are|was|were) (?:there|anything|something)\b|^can you see\b|^has there been\b/i;
const THERE_SAID =
  /^there (?:is|are|was|were) (?!not|no\b).* (?:on|in|over|under|behind|against) (?:it|them|there|the)\b/;
const NOT_THERE = /\b(?:no|not|none|nothing|never|neither|clean|clear|fine|good|ok|dry|shut|closed|empty|free|only)\b/;
const MOST_WORDS = 5;

/** 'A twig' to 'Is there a leaf in the track?', 'there was a duvet on it' to 'Are bags over it?': something is there. */
export function byThere(words: readonly string[], ask: string): Finding | null {
  const said = words.join(' ');
  if (THERE.test(ask) && words.length <= MOST_WORDS && /^(?:there is )?nothing\b/.test(said)) {
    return { verdict: 'no', rests: new Set(words) };
  }
  if (words.length > 8 || NOT_THERE.test(said)) return null;
  const there: Finding = { verdict: 'yes', rests: new Set(words) };
  if (THERE_SAID.test(said)) return there;
  const names = THERE.test(ask) && words.length <= MOST_WORDS && words.some((word) => word.length > 2);
  return names ? there : null;
}
