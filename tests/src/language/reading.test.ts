import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeOut } from '../../../src/language/contractions.ts';
import { emojiWords } from '../../../src/language/emoji.ts';
import { createGlossary } from '../../../src/language/glossary.ts';
import { meaningsOf } from '../../../src/language/kindred.ts';
import { normalForm } from '../../../src/language/normal-form.ts';
import { createReader } from '../../../src/language/reader.ts';
import { rightWords } from '../../../src/language/right-words.ts';
import { createSpeller } from '../../../src/language/speller.ts';
import { stem } from '../../../src/language/stems.ts';
import { tokens } from '../../../src/language/tokens.ts';
import { unitOf } from '../../../src/language/units.ts';
import { vocabularyOf } from '../../../src/language/vocabulary.ts';

const words = (text: string) => tokens(text).map((token) => token.text);

describe('normal form', () => {
  it('joins what looks the same on a phone', () => {
    expect(normalForm('Gasﬂasche, CAN’T, Kühlschrank, １６Ａ')).toBe("gasflasche, can't, kuhlschrank, 16a");
  });

  it('changes nothing when applied again', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => normalForm(normalForm(text)) === normalForm(text)));
  });
});

describe('tokens', () => {
  it('writes out contractions, with and without their apostrophe', () => {
    expect(words('It won’t work and dont beep, I’ve checked')).toEqual(
      'it will not work and do not beep i have checked'.split(' '),
    );
    expect(writeOut("shouldn't")).toEqual(['should', 'not']);
  });

  it('parts letters from digits and keeps decimals whole', () => {
    expect(words('16A or 2.5kw, 1,5 m')).toEqual(['16', 'a', 'or', '2.5', 'kw', '1.5', 'm']);
  });

  it('reads picture signs that stand for a word and drops those of mood', () => {
    expect(words('no 🔥 on the hob 😂')).toEqual(['no', 'fire', 'on', 'the', 'hob']);
    expect(emojiWords('👍🏽')).toEqual(['ok']);
    expect(emojiWords('🙃')).toEqual([]);
  });

  it('points at what was typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        for (const { text: read, start, end } of tokens(text)) {
          expect(start).toBeLessThan(end);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(read).not.toBe('');
        }
      }),
    );
  });
});

describe('units', () => {
  it('has one spelling for each', () => {
    expect(['amps', 'A', 'litres', 'ltr', '%', 'furlongs'].map(unitOf)).toEqual(['A', 'A', 'l', 'l', 'percent', null]);
  });
});

describe('the speller', () => {
  const counts = new Map([
    ['toilet', 40],
    ['pump', 30],
    ['pumps', 2],
    ['regulator', 5],
    ['water', 60],
  ]);
  const spell = createSpeller({ counts, protectedWords: new Set(['bump', 'waiter']) });

  it('mends a slip to the nearest word of the graph', () => {
    expect(['toliet', 'tiolet', 'regulater', 'watre', 'punp'].map(spell)).toEqual([
      'toilet',
      'toilet',
      'regulator',
      'water',
      'pump',
    ]);
  });

  it('leaves alone what people type that no word list has', () => {
    const counts = new Map(['fish', 'mph', 'lad'].map((word) => [word, 9]));
    const mend = createSpeller({ counts, protectedWords: rightWords() });
    expect(['ish', 'meh', 'lil', 'fsh'].map(mend)).toEqual([null, null, null, 'fish']);
  });

  it('leaves alone words that are known, protected, short or numbers', () => {
    expect(['toilet', 'bump', 'waiter', 'wat', '2300'].map(spell)).toEqual([null, null, null, null, null]);
  });

  it('takes the commoner of two equally near words', () => {
    expect(spell('pumpz')).toBe('pump');
  });

  it('finds every word that a plain search of the vocabulary finds', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 4, maxLength: 8 });
    fc.assert(
      fc.property(fc.uniqueArray(letters, { minLength: 1, maxLength: 20 }), letters, (list, word) => {
        const small = createSpeller({ counts: new Map(list.map((one) => [one, 1])), protectedWords: new Set() });
        const most = word.length < 6 ? 1 : 2;
        const reachable = !list.includes(word) && list.some((one) => plainDistance(one, word) <= most);
        expect(small(word) !== null).toBe(reachable);
      }),
    );
  });
});

/** Optimal string alignment by its recurrence, with no shortcut. */
function plainDistance(a: string, b: string): number {
  const d = (i: number, j: number): number => {
    if (i === 0 || j === 0) return i + j;
    const swap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? d(i - 2, j - 2) + 1 : Infinity;
    return Math.min(d(i - 1, j) + 1, d(i, j - 1) + 1, d(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1), swap);
  };
  return d(a.length, b.length);
}

describe('reading', () => {
  const vocabulary = vocabularyOf(
    [
      'the hookup is dead',
      'where does the hook up go',
      'gas bottle is empty',
      'the gas bottle is outside',
      'water pump',
      'wattter',
    ].map(tokens),
    ['toilet cassette'],
  );
  const read = createReader({
    vocabulary,
    spell: createSpeller({ counts: vocabulary.counts, protectedWords: new Set() }),
    glossary: createGlossary([
      { says: 'loo', means: 'toilet' },
      { says: 'fuse box', means: 'consumer unit or 12 V fuse box' },
    ]),
  });

  it('keeps the hirer’s own words and adds what the glossary makes of them', () => {
    const { words: own, phrases } = read('Both loos are full');
    expect(own.map((word) => word.text)).toEqual(['both', 'loos', 'are', 'full']);
    expect(phrases).toContainEqual(['toilet']);
  });

  it('offers each alternative of a glossary line by itself', () => {
    expect(read('the fuse box').phrases).toEqual(
      expect.arrayContaining([
        ['consumer', 'unit'],
        ['12', 'v', 'fuse', 'box'],
      ]),
    );
  });

  it('joins and parts words as the graph’s people write them', () => {
    expect(read('hook-up').phrases).toContainEqual(['hookup']);
    expect(read('hookup').phrases).toContainEqual(['hook', 'up']);
    expect(read('gasbottle').words.map((word) => word.text)).toEqual(['gas', 'bottle']);
  });

  it('mends slips and says what was said', () => {
    expect(read('Wtaer pump').words[0]).toMatchObject({ said: 'Wtaer', text: 'water', known: true });
  });

  it('does not learn a word that one writer slipped into', () => {
    expect(vocabulary.counts.has('wattter')).toBe(false);
    expect(vocabulary.counts.has('cassette')).toBe(true);
  });

  it('marks words that nobody of the graph used', () => {
    expect(read('zebra').words[0]).toMatchObject({ text: 'zebra', known: false });
  });
});

describe('plain meanings', () => {
  const meanings = (text: string) => meaningsOf(words(text).map(stem));

  it('are shared by words that strangers use for the same', () => {
    expect(meanings('it reeks in here')).toContain('smell');
    expect(meanings('what a pong')).toContain('smell');
    expect(meanings('the knob will not budge')).toContain('stuck');
  });

  it('are each named once', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('stink', 'pong', 'cold', 'key', 'locked', 'out')), (list) => {
        const found = meaningsOf(list.map(stem));
        expect(new Set(found).size).toBe(found.length);
      }),
    );
  });
});
