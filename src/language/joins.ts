import type { Vocabulary } from './vocabulary.ts';

/** Halves of a word nobody wrote as two must have this many letters. */
const SHORTEST_HALF = 3;

/** One word for two that stand side by side, if the vocabulary has it: 'hook', 'up' -> 'hookup'. */
export function joined(first: string, second: string, vocabulary: Vocabulary): string | null {
  const word = first + second;
  return vocabulary.split.has(word) || (word.length >= 6 && vocabulary.counts.has(word)) ? word : null;
}

/**
 * Two words for one that was run together: as the graph's people wrote it ('hookup' -> 'hook', 'up'), or for a word
 * they never wrote, two that they did ('gasbottle'). The parting whose rarer half is commonest wins.
 */
export function parted(word: string, vocabulary: Vocabulary): readonly [string, string] | null {
  const written = vocabulary.split.get(word);
  if (written !== undefined || vocabulary.counts.has(word)) return written ?? null;
  let best: readonly [string, string] | null = null;
  let bestCount = 1;
  for (let at = SHORTEST_HALF; at <= word.length - SHORTEST_HALF; at++) {
    const first = word.slice(0, at);
    const second = word.slice(at);
    const count = Math.min(vocabulary.counts.get(first) ?? 0, vocabulary.counts.get(second) ?? 0);
    if (count > bestCount) {
      best = [first, second];
      bestCount = count;
    }
  }
  return best;
}
