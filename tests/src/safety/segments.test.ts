import { describe, expect, it } from 'vitest';
import { segmentsOf } from '../../../src/safety/segments.ts';
import { wordsOf } from '../../../src/safety/words.ts';

const segments = (text: string) => {
  const { words } = wordsOf(text, new Map(), 'written-out');
  return segmentsOf(words).map(({ from, to }) =>
    words
      .slice(from, to)
      .map((word) => word.text)
      .join(' '),
  );
};

describe('the stretches of a text that are read by themselves', () => {
  it('is the whole text when it has one sentence', () => {
    expect(segments('one two')).toEqual(['one two']);
  });

  it('is the whole and every run of up to three sentences', () => {
    expect(segments('a. b. c.')).toEqual(['a b c', 'a', 'b', 'c', 'a b', 'b c']);
    expect(segments('a. b. c. d.')).toContain('b c d');
  });

  it('has none for an empty text but the empty whole', () => {
    expect(segments('')).toEqual(['']);
  });
});
