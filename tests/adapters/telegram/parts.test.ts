import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TELEGRAM } from '../../../adapters/telegram/limits.ts';
import { htmlOf, textOf } from '../../../adapters/telegram/marked-text.ts';
import { type Part, partsOf } from '../../../adapters/telegram/parts.ts';
import type { Attachment, Block, Choice } from '../../../src/index.ts';
import { aLine, aReply } from '../../contracts/channel.ts';

const picture: Block = { kind: 'picture', use: { picture: 'locker', touch: null, alt: 'The gas locker' } };
const words = (part: Part | undefined) =>
  part === undefined ? '' : textOf(part.kind === 'text' ? part.text : part.caption);
const html = (part: Part | undefined) => (part?.kind === 'text' ? htmlOf(part.text) : '');

describe('a reply as Telegram messages', () => {
  it('puts steps, facts and cautions into one message with its marks', () => {
    const [part, ...rest] = partsOf(
      aReply([
        aLine('Light it so:'),
        { kind: 'steps', items: ['Open <A>', 'Press & hold'] },
        { kind: 'facts', items: ['Dial: 5'] },
        { kind: 'caution', text: 'Hot' },
      ]),
    );
    expect(rest).toEqual([]);
    expect(html(part)).toBe(
      'Light it so:\n\n<b>1.</b> Open &lt;A&gt;\n<b>2.</b> Press &amp; hold\n\n• Dial: 5\n\n<b>Take care: </b>Hot',
    );
  });

  it('sets the first line of a notice in bold and a person’s name above their words', () => {
    expect(html(partsOf(aReply([aLine('GET OUT NOW'), aLine('Call 999')], { kind: 'notice' }))[0])).toBe(
      '<b>GET OUT NOW</b>\n\nCall 999',
    );
    expect(html(partsOf(aReply([aLine('Hello')], { from: 'Meg & Co' }))[0])).toBe('<b>Meg &amp; Co</b>\nHello');
  });

  it('makes one message of a picture and a short text, two when the text is too long for a caption', () => {
    expect(partsOf(aReply([aLine('here'), picture]))).toMatchObject([{ kind: 'picture' }]);
    const long = 'x'.repeat(TELEGRAM.captionUnits + 1);
    expect(partsOf(aReply([aLine(long), picture])).map((part) => part.kind)).toEqual(['text', 'picture']);
  });

  it('sends the words apart from what can carry none', () => {
    const without: Attachment[] = [
      { kind: 'location', latitude: 1, longitude: 2 },
      { kind: 'contact', name: 'A', phone: '1' },
      { kind: 'video', file: 'tg:video_note:1' },
      { kind: 'file', file: 'tg:sticker:1' },
      { kind: 'file', file: 'tg:copy:1:2' },
    ];
    for (const attachment of without) {
      const parts = partsOf(aReply([aLine('here'), { kind: 'attachment', attachment }]));
      expect(parts.map((part) => part.kind)).toEqual(['text', 'attachment']);
    }
    const voice: Attachment = { kind: 'voice', file: 'tg:voice:1' };
    expect(partsOf(aReply([aLine('here'), { kind: 'attachment', attachment: voice }]))).toHaveLength(1);
  });

  it('keeps the reading order of several pictures and texts', () => {
    const parts = partsOf(aReply([aLine('one'), picture, aLine('two'), picture]));
    expect(parts.map((part) => part.kind)).toEqual(['text', 'picture', 'text', 'picture']);
    expect(words(parts[0])).toBe('one');
    expect(words(parts[2])).toBe('two');
  });

  it('sends the picture of a sum with its words as one message, and apart where they are too long for it', () => {
    const bar: Block = {
      kind: 'bar',
      bar: { title: 'Hook-up', unit: 'W', limit: 1200, segments: [{ label: 'kettle', amount: 600 }] },
    };
    const [one, ...rest] = partsOf(aReply([aLine('It fits.'), bar, { kind: 'caution', text: 'One at a time.' }]));
    expect(one).toMatchObject({ kind: 'bar', bar: { limit: 1200 } });
    expect(words(one)).toBe('It fits.\n\nHook-up: kettle 600 of 1200 W\n\nTake care: One at a time.');
    expect(rest).toEqual([]);
    const long = partsOf(aReply([aLine('word '.repeat(300)), bar]));
    expect(long.map(({ kind }) => kind)).toEqual(['text', 'bar']);
  });

  it('leaves a phone number plain, so that the app makes it one to press', () => {
    expect(html(partsOf(aReply([{ kind: 'call', label: 'The office', number: '01632 960147' }]))[0])).toBe(
      'The office: 01632 960147',
    );
  });

  it('hangs the choices on the last message only', () => {
    const choices: Choice[] = [{ id: 'a', label: 'Yes', tone: 'next' }];
    const parts = partsOf(aReply([aLine('x '.repeat(5000)), picture], { choices }));
    expect(parts.length).toBeGreaterThan(2);
    expect(parts.map((part) => part.keyboard !== null)).toEqual(parts.map((_, i) => i === parts.length - 1));
  });

  it('still offers choices that came without a word', () => {
    expect(partsOf(aReply([], { choices: [{ id: 'a', label: 'Yes', tone: 'next' }] }))).toHaveLength(1);
    expect(partsOf(aReply([]))).toEqual([]);
  });

  const block: fc.Arbitrary<Block> = fc.oneof(
    fc.record({ kind: fc.constant('line' as const), text: fc.string({ unit: 'grapheme', maxLength: 3000 }) }),
    fc.record({
      kind: fc.constant('steps' as const),
      items: fc.array(fc.string({ maxLength: 200 }), { maxLength: 30 }),
    }),
    fc.constant(picture),
  );
  it('keeps every limit of Telegram, whatever the reply', () => {
    const choices = fc.array(
      fc.record({
        id: fc.string({ maxLength: 70 }),
        label: fc.string({ maxLength: 80 }),
        tone: fc.constant('next' as const),
      }),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(fc.array(block, { maxLength: 6 }), choices, (blocks, offered) => {
        for (const part of partsOf(aReply(blocks, { choices: offered }))) {
          expect(words(part).length).toBeLessThanOrEqual(
            part.kind === 'text' ? TELEGRAM.textUnits : TELEGRAM.captionUnits,
          );
          if (part.kind === 'text') expect(words(part).trim()).not.toBe('');
          for (const button of part.keyboard?.inline_keyboard.flat() ?? []) {
            expect(new TextEncoder().encode(button.callback_data).length).toBeLessThanOrEqual(TELEGRAM.choiceBytes);
            expect(button.text.trim()).not.toBe('');
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
