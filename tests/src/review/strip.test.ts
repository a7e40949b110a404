import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Personal, stripped, withoutBrackets } from '../../../src/review/strip.ts';

const personal: Personal = {
  names: ['The Okonkwo-Hale family', 'Ngozi', 'Will'],
  isOrdinary: (word) => ['will', 'wren', 'gas', 'the'].includes(word),
};

describe('personal details', () => {
  it.each([
    ['ring me on 07700 900412 please', 'ring me on [phone] please'],
    ['ring +44 7700 900412', 'ring [phone]'],
    ['write to ngozi.hale@mail.example', 'write to [mail]'],
    ['photo at https://photos.example/abc?x=1', 'photo at [link]'],
    ['we are BR-2702', 'we are [reference]'],
    ['the car is ab12 cde', 'the car is [plate]'],
    ['the car is P123 ABC', 'the car is [plate]'],
    ['send it to AB1 2CD', 'send it to [postcode]'],
    ['no water, cheers Ngozi', 'no water, cheers [name]'],
    ['my name is Tilda and the tap drips', 'my name is [name] and the tap drips'],
    ["ngozi's bed is wet", "[name]'s bed is wet"],
  ])('are taken out of: %s', (text, plain) => {
    expect(stripped(text, personal)).toBe(plain);
  });

  it.each([
    'the panel shows 12.5 13.2 12.8 over the day',
    'will the fridge run on 12 v',
    'fuse f6 and f12 have gone',
    'it is 16 amp and 230 v',
    'arriving 24/07/2027 with 4 people',
    'E04 on the heater, then 1.4 kW',
  ])('are not seen where there are none: %s', (text) => {
    expect(stripped(text, personal)).toBe(text);
  });

  it('leave nothing more to take out once they are gone', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const once = stripped(text, personal);
        expect(stripped(once, personal)).toBe(once);
      }),
    );
  });

  it('leave a sentence that can stand in the graph', () => {
    expect(withoutBrackets('no water, cheers [name]. Ring [phone] ?')).toBe('no water, cheers. Ring?');
  });
});
