import { describe, expect, it } from 'vitest';
import { createLexicon, listed } from '../../../src/safety/lexicon.ts';
import { wordsOf } from '../../../src/safety/words.ts';

const lexicon = createLexicon({
  groups: new Map([
    ['smoke', listed('smoke~, burnt toast')],
    ['alarm', listed('alarm, smoke alarm')],
    ['loud', listed('<alarm>, going off, bubbl*')],
  ]),
  right: new Set(['alarms', 'smocks']),
  fillers: new Set(['the', 'my']),
});

function found(text: string): Record<string, [number, number][]> {
  const words = lexicon.parted(wordsOf(text, new Map(), 'written-out').words);
  const names = new Map([...lexicon.groups].map(([name, group]) => [group, name] as const));
  return Object.fromEntries(
    [...lexicon.find(words)].map(([group, hits]) => [names.get(group), hits.map(({ from, to }) => [from, to])]),
  );
}

describe('finding groups of words', () => {
  it('finds words, phrases and the groups that hold others', () => {
    expect(found('smoke alarm going off')).toEqual({
      smoke: [[0, 1]],
      alarm: [
        [0, 2],
        [1, 2],
      ],
      loud: [
        [0, 2],
        [1, 2],
        [2, 4],
      ],
    });
  });

  it('passes over small words inside a phrase', () => {
    expect(found('burnt the toast')).toEqual({ smoke: [[0, 3]] });
  });

  it('finds words by their start', () => {
    expect(found('bubbles')).toEqual({ loud: [[0, 1]] });
  });

  it('mends one slip, but never a right word', () => {
    expect(found('smoek')).toEqual({ smoke: [[0, 1]] });
    expect(found('alarms smocks')).toEqual({});
    expect(found('smokin')).toEqual({ smoke: [[0, 1]] });
  });

  it('parts what was run together and joins what was torn apart', () => {
    expect(found('smokealarm').alarm).toEqual([
      [0, 2],
      [1, 2],
    ]);
    expect(found('smo ke')).toEqual({ smoke: [[0, 2]] });
  });

  it('refuses a group that holds itself', () => {
    const holdsItself = () =>
      createLexicon({ groups: new Map([['a', ['<a>']]]), right: new Set(), fillers: new Set() });
    expect(holdsItself).toThrow("the group 'a' holds itself");
  });
});
