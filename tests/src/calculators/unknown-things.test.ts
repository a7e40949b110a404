import { describe, expect, it } from 'vitest';
import { countedIn } from '../../../src/calculators/quantities.ts';
import { unknownThings } from '../../../src/calculators/unknown-things.ts';
import { talk, valuesOf } from './fleet.ts';

const TOGETHER = 'mains-can-i-run-together';
const names = (text: string) => unknownThings(countedIn(text).pieces, []).map(({ name }) => name);

describe('a thing to plug in that no list names', () => {
  it('is found by how it is spoken of', () => {
    expect(names('Can I use my coffee grinder with the kettle on 10 amps?')).toEqual(['coffee grinder']);
    expect(names('we want to plug in our sewing box, ok?')).toEqual(['sewing box']);
  });

  it.each([
    'can we use our hook up for the kettle',
    'can my wife use her own shower here',
    'can we run both on a 6 amp post',
    'my husband would like a brew',
  ])('is none in "%s"', (text) => {
    expect(names(text)).toEqual([]);
  });

  it('is asked after, and not left out of the sum', () => {
    const turns = ['Can I use my coffee grinder with the kettle on 10 amps?'];
    expect(talk('plover', TOGETHER, turns)).toMatchObject({ kind: 'asks', asks: 'watts' });
    // 900 + 150 + 40 W: fleet.md, section 8.
    expect(valuesOf(talk('plover', TOGETHER, [...turns, '150 watts']))).toMatchObject({ totalW: 1090 });
    expect(
      valuesOf(talk('plover', TOGETHER, ['can I use my coffee grinder, 150w, with the kettle on 10 amps'])),
    ).toMatchObject({ totalW: 1090 });
  });
});
