import { describe, expect, it } from 'vitest';
import { wordsOf } from '../../../src/safety/words.ts';

const SIGNS = new Map([
  ['🔥', 'flames'],
  ['£', 'pounds'],
]);
const cut = (text: string) => wordsOf(text, SIGNS, 'written-out').words.map((word) => word.text);

describe('cutting a text into words', () => {
  it('writes contractions out', () => {
    expect(cut("it won't stop")).toEqual(['it', 'will', 'not', 'stop']);
  });

  it('parts words at apostrophes in other languages', () => {
    expect(wordsOf("l'alarme", SIGNS, 'parted').words.map((word) => word.text)).toEqual(['l', 'alarme']);
  });

  it('reads picture signs and money signs that mean something, and passes over the rest', () => {
    expect(cut('🔥 in here 🙂 £5')).toEqual(['flames', 'in', 'here', 'pounds', '5']);
  });

  it('reads letters written as numbers, drawn out, or one by one', () => {
    expect(cut('sm0ke')).toEqual(['smoke']);
    expect(cut('gaaaaas')).toEqual(['gaas']);
    expect(cut('s.m.o.k.e')).toEqual(['smoke']);
    expect(cut('f i r e')).toEqual(['fire']);
  });

  it('numbers sentences and clauses', () => {
    const { words } = wordsOf('One, two. Three? four', SIGNS, 'written-out');
    expect(words.map((word) => word.sentence)).toEqual([0, 0, 1, 2]);
    expect(words.map((word) => word.clause)).toEqual([0, 1, 2, 3]);
  });
});
