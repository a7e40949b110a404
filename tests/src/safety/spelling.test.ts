import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from '../../../src/language/edit-distance.ts';
import { createSlipFinder } from '../../../src/safety/spelling.ts';

const WORDS = ['smell', 'alarm', 'battery', 'gas', 'smoke', 'carbon'];
const find = createSlipFinder(WORDS, new Set(['alarms', 'smelt']));

describe('slips of the finger', () => {
  it('finds the word that one slip made another of', () => {
    expect(['smel', 'smmell', 'smrll', 'msell', 'batery', 'carobn'].map(find)).toEqual([
      ['smell'],
      ['smell'],
      ['smell'],
      ['smell'],
      ['battery'],
      ['carbon'],
    ]);
  });

  it('leaves right words, short words and two slips alone', () => {
    expect(['smell', 'smelt', 'alarms', 'gat', 'smxxl'].flatMap(find)).toEqual([]);
  });

  it('finds exactly what a look at every word finds', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'smelarbty'), minLength: 4, maxLength: 8 });
    fc.assert(
      fc.property(letters, (word) => {
        const plain = WORDS.filter((each) => each.length >= 5 && word !== each && editDistance(word, each, 1) <= 1);
        const skipped = word === 'smelt' || word === 'alarms';
        expect([...find(word)].sort()).toEqual(skipped ? [] : plain.sort());
      }),
    );
  });
});
