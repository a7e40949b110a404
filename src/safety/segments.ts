import type { Word } from './words.ts';

/** A stretch of whole sentences: words `from` to `to` (left out). */
export type Segment = { readonly from: number; readonly to: number };

/** Longer stretches than this say no more than their parts. */
const MOST_SENTENCES = 3;

/**
 * The stretches of a text that are read by themselves: the whole, and every run of one to three sentences. So a danger is read
 * the same whatever chat stands around it. A text of one sentence is one segment.
 */
export function segmentsOf(words: readonly Word[]): readonly Segment[] {
  const whole = { from: 0, to: words.length };
  const starts = words.flatMap((word, at) => (at === 0 || word.sentence !== words[at - 1]?.sentence ? [at] : []));
  if (starts.length <= 1) return [whole];
  const ends = [...starts.slice(1), words.length];
  const runs: Segment[] = [whole];
  for (let length = 1; length <= Math.min(MOST_SENTENCES, starts.length - 1); length++) {
    for (let at = 0; at + length <= starts.length; at++)
      runs.push({ from: starts[at] ?? 0, to: ends[at + length - 1] ?? words.length });
  }
  return runs;
}
