import { tokens } from './tokens.ts';

/** The words that the graph's own people used. */
export type Vocabulary = {
  /** How often each word was used. */
  readonly counts: ReadonlyMap<string, number>;
  /** Words that were also written as two, each with its halves: 'hookup' -> 'hook', 'up'. */
  readonly split: ReadonlyMap<string, readonly [string, string]>;
};

/** Counts the words of all texts, and finds those written as one and as two. */
export function vocabularyOf(texts: Iterable<string>): Vocabulary {
  const counts = new Map<string, number>();
  const pairs = new Map<string, readonly [string, string]>();
  for (const text of texts) {
    let last: string | null = null;
    for (const token of tokens(text)) {
      counts.set(token.text, (counts.get(token.text) ?? 0) + 1);
      if (last !== null) pairs.set(last + token.text, [last, token.text]);
      last = token.text;
    }
  }
  return { counts, split: new Map([...pairs].filter(([word]) => word.length >= SHORTEST && counts.has(word))) };
}

/** Shorter words are joined or parted by accident more often than not ('to day', 'no w'). */
const SHORTEST = 5;
