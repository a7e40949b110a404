import { describe, expect, it } from 'vitest';
import { mainsAppliances } from '../../../src/calculators/lexicon.ts';
import { mentionsIn } from '../../../src/calculators/mentions.ts';
import { monthIn } from '../../../src/calculators/months.ts';
import { peopleIn } from '../../../src/calculators/people.ts';
import { countedIn } from '../../../src/calculators/quantities.ts';
import { temperaturesIn } from '../../../src/calculators/temperatures.ts';
import { inVan } from './fleet.ts';

describe('people in words', () => {
  const people = (text: string) => peopleIn(countedIn(text))?.people ?? null;
  const SAID: readonly (readonly [string, number | null])[] = [
    ['four of us', 4],
    ['two adults 2 kids', 4],
    ['2 adults and three little ones', 5],
    ['me and my wife', 2],
    ['me, my husband and two kids', 4],
    ['just me', 1],
    ['just me and 3 kids', 4],
    ['on my own this time', 1],
    ['both of us', 2],
    ['a couple with a baby', 3],
    ['family of five', 5],
    ["we're six", 6],
    ['there are 3 of us', 3],
    ['cooking for two', 2],
    ['-2 people', -2],
    ['6 people, four of them kids', 6],
    ['how long will it last', null],
    ['for two weeks', null],
    ['kettle and toaster', null],
  ];
  for (const [text, wanted] of SAID) it(`reads '${text}'`, () => expect(people(text)).toBe(wanted));
});

describe('months in words', () => {
  const SAID: readonly (readonly [string, number | null])[] = [
    ['and in december', 12],
    ['in May', 5],
    ['may we run it', null],
    ['can we march off', null],
    ['early june', 6],
    ['in feb', 2],
    ['this winter', 1],
    ['month 13', 13],
    ['does the battery fall below half', null],
  ];
  for (const [text, wanted] of SAID) it(`reads '${text}'`, () => expect(monthIn(countedIn(text))).toBe(wanted));
});

describe('temperatures in words', () => {
  const read = (text: string) =>
    temperaturesIn(countedIn(text), false).map(({ low, where }) => [low, where?.at ?? null]);
  const SAID: readonly (readonly [string, readonly (readonly [number, string | null])[]])[] = [
    ['5 outside', [[5, 'outside']]],
    [
      'from 5 to 20',
      [
        [5, 'outside'],
        [20, 'inside'],
      ],
    ],
    ["it's minus 3 tonight", [[-3, 'outside']]],
    ['8 degrees', [[8, null]]],
    ['want it at 21', [[21, 'inside']]],
    [
      '7 in the van, 2 out',
      [
        [7, 'inside'],
        [2, 'outside'],
      ],
    ],
    ['dropping to 1 degree', [[1, 'outside']]],
    ['four of us', []],
  ];
  for (const [text, wanted] of SAID) it(`reads '${text}'`, () => expect(read(text)).toEqual(wanted));
});

describe('appliances in words', () => {
  const read = (van: string, text: string) => {
    const { figures, constants } = inVan(van);
    return mentionsIn(countedIn(text), mainsAppliances(figures, constants)).map(
      ({ appliance, watts, step, count, off, onGas }) => ({
        key: appliance.key,
        ...(watts === null ? {} : { watts }),
        ...(step === null ? {} : { step }),
        ...(count === 1 ? {} : { count }),
        ...(off ? { off } : {}),
        ...(onGas ? { onGas } : {}),
      }),
    );
  };

  it('binds watts to the nearest name, before or after it', () => {
    expect(read('dunlin', 'a 1.2kw iron and the 900 watt kettle')).toEqual([
      { key: 'iron', watts: 1200 },
      { key: 'kettle', watts: 900 },
    ]);
    expect(read('dunlin', 'kettle (2200w), toaster')).toEqual([{ key: 'kettle', watts: 2200 }, { key: 'toaster' }]);
  });

  it('takes a lone number after the heating as its step', () => {
    expect(read('dunlin', 'heater on 2 and kettle')).toEqual([{ key: 'heating', step: 2 }, { key: 'kettle' }]);
    expect(read('curlew', 'electric 2')).toEqual([{ key: 'heating', step: 2 }]);
    expect(read('wren', 'heater on full')).toEqual([{ key: 'heating', step: 'high' }]);
  });

  it('counts what there are several of', () => {
    expect(read('wren', 'two laptops and 3 phones')).toEqual([
      { key: 'laptop', count: 2 },
      { key: 'phone', count: 3 },
    ]);
  });

  it('sees what is off or burns gas', () => {
    expect(read('dunlin', 'kettle without the toaster')).toEqual([{ key: 'kettle' }, { key: 'toaster', off: true }]);
    expect(read('dunlin', 'heating on gas, kettle on')).toEqual([{ key: 'heating', onGas: true }, { key: 'kettle' }]);
    expect(read('dunlin', 'can I run the kettle without tripping it')).toEqual([{ key: 'kettle' }]);
  });

  it('names a thing that only watts were said of', () => {
    expect(read('godwit', 'a 700 watt gadget')).toEqual([{ key: 'own-gadget', watts: 700 }]);
  });

  it('takes no name from words that only look like one', () => {
    expect(read('dunlin', 'shall I ring you')).toEqual([]);
    expect(read('dunlin', 'the electric is off')).toEqual([]);
    expect(read('dunlin', 'where are the tea towels')).toEqual([]);
  });
});
