import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bold, htmlOf, type MarkedText, plain, splitMarked, textOf } from '../../../adapters/telegram/marked-text.ts';
import { parseHtml } from '../../helpers/telegram-html.ts';

const anyText = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.string({
    unit: fc.constantFrom('<', '>', '&', '&amp;', '<b>', '. ', '! ', '\n', '\n\n', ' ', 'word', '👨‍👩‍👧', 'é'),
    maxLength: 40,
  }),
);
const marked: fc.Arbitrary<MarkedText> = fc.array(fc.record({ text: anyText, bold: fc.boolean() }), { maxLength: 12 });
const seen = (text: string) => text.replace(/\s+/g, '');

describe('splitting a marked text', () => {
  it('loses nothing but blank pieces, whatever the text and the limit', () => {
    fc.assert(
      fc.property(marked, fc.integer({ min: 1, max: 80 }), (text, most) => {
        expect(seen(splitMarked(text, most).map(textOf).join(''))).toBe(seen(textOf(text)));
      }),
    );
  });

  it('never makes a piece longer than the limit, counted as Telegram counts', () => {
    fc.assert(
      fc.property(marked, fc.integer({ min: 1, max: 80 }), (text, most) => {
        for (const piece of splitMarked(text, most))
          expect(parseHtml(htmlOf(piece)).text.length).toBeLessThanOrEqual(most);
      }),
    );
  });

  it('makes HTML that the server reads back as the same words and bold stretches, piece by piece', () => {
    fc.assert(
      fc.property(marked, fc.integer({ min: 1, max: 80 }), (text, most) => {
        for (const piece of splitMarked(text, most)) {
          const read = parseHtml(htmlOf(piece));
          expect(read.text).toBe(textOf(piece));
          const boldUnits = piece.filter((run) => run.bold).reduce((sum, run) => sum + run.text.length, 0);
          expect(read.entities.reduce((sum, entity) => sum + entity.length, 0)).toBe(boldUnits);
        }
      }),
    );
  });

  it('never cuts a sign in two that fits into a piece', () => {
    const family = '👨‍👩‍👧‍👦';
    for (let most = family.length; most < 40; most++)
      for (const piece of splitMarked([plain(family.repeat(9))], most))
        expect(textOf(piece).length % family.length).toBe(0);
  });

  it('cuts after sentences', () => {
    const text = 'Open the locker. Turn the red valve! Is it lit? Then wait.';
    expect(splitMarked([plain(text)], 30).map((piece) => textOf(piece).trim())).toEqual([
      'Open the locker.',
      'Turn the red valve! Is it lit?',
      'Then wait.',
    ]);
  });

  it('cuts between words where no sentence ends, and between signs where no word does', () => {
    expect(splitMarked([plain('one two three four')], 9).map((piece) => textOf(piece).trim())).toEqual([
      'one two',
      'three',
      'four',
    ]);
    expect(splitMarked([plain('abcdefgh')], 3).map(textOf)).toEqual(['abc', 'def', 'gh']);
  });

  it('cuts at a paragraph before it cuts at a sentence', () => {
    const text = `${'a'.repeat(20)}.\n\nShort one. Another that goes on`;
    expect(splitMarked([plain(text)], 36).map((piece) => textOf(piece).trim())[0]).toBe(`${'a'.repeat(20)}.`);
  });

  it('keeps bold on both sides of a cut', () => {
    const pieces = splitMarked([plain('see '), bold('this and that')], 9);
    expect(pieces.map(htmlOf)).toEqual(['see <b>this</b>', '<b>and that</b>']);
  });
});
