import { describe, expect, it } from 'vitest';
import { mended } from '../../../src/calculators/spelling.ts';
import { talk, valuesOf } from './fleet.ts';

describe('a word that a sum goes by', () => {
  it.each([
    ['tosater', 'toaster'],
    ['microwve', 'microwave'],
    ['hetaing', 'heating'],
    ['batery', 'battery'],
    ['poeple', 'people'],
    ['mintues', 'minutes'],
    ['outisde', 'outside'],
    ['gass', 'gas'],
  ])('is read from "%s" as "%s"', (said, meant) => {
    expect(mended(said)).toBe(meant);
  });

  it.each([
    'things',
    'kettle',
    'pitch',
    'Plover',
    'toastie',
    'telly',
    'hoover',
    "it's",
    'doesnt',
    'sept',
    'missus',
    'Friday',
    'offside',
    'bowser',
    'toasty',
    'blower',
  ])('is not made of "%s"', (said) => {
    expect(mended(said.toLowerCase())).toBe(said.toLowerCase());
  });

  it('counts though it is spelt wrong', () => {
    const loads = talk('dunlin', 'mains-can-i-run-together', ['kettel and tosater togther on 10 amps?']);
    // 1,000 + 850 + 250 W: fleet.md, section 8.
    expect(valuesOf(loads)).toMatchObject({ totalW: 2100 });
  });
});
