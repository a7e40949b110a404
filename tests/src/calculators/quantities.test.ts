import fc from 'fast-check';
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { countedIn, type Unit } from '../../../src/calculators/quantities.ts';
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from '../../../src/calculators/units.ts';

/** Unit and value (or both ends of a range) of everything a text counts. */
const read = (text: string) =>
  countedIn(text).quantities.map(({ unit, low, high }) =>
    low === high ? [unit, +low.toFixed(4)] : [unit, +low.toFixed(4), +high.toFixed(4)],
  );

const SAID: readonly (readonly [string, ...(readonly [Unit, number, number?])[]])[] = [
  ['ten amp', ['amps', 10]],
  ['10A', ['amps', 10]],
  ['16 A post', ['amps', 16]],
  ['a 16-amp hook-up', ['amps', 16]],
  ['six amps', ['amps', 6]],
  ['1.8kw', ['watts', 1800]],
  ['1,8 kW', ['watts', 1800]],
  ['1800 watts', ['watts', 1800]],
  ['1,800W', ['watts', 1800]],
  ['two kilowatts', ['watts', 2000]],
  ['one point eight kilowatts', ['watts', 1800]],
  ['half a kilowatt', ['watts', 500]],
  ['a kilowatt and a half', ['watts', 1500]],
  ['100ah', ['ampHours', 100]],
  ['30 amp hours', ['ampHours', 30]],
  ['12.4 volts', ['volts', 12.4]],
  ['for a week', ['nights', 7]],
  ['a couple of nights', ['nights', 2]],
  ['three more nights', ['nights', 3]],
  ['ten days', ['nights', 10]],
  ['a fortnight', ['nights', 14]],
  ['half an hour', ['hours', 0.5]],
  ['an hour and a half', ['hours', 1.5]],
  ['45 minutes', ['hours', 0.75]],
  ['two and a half hours', ['hours', 2.5]],
  ['half a bottle', ['bottles', 0.5]],
  ['three quarters of a cylinder', ['bottles', 0.75]],
  ['two gas bottles', ['bottles', 2]],
  ['minus 3', ['bare', -3]],
  ['minus three degrees', ['degrees', -3]],
  ['-3c', ['celsius', -3]],
  ['\u22123 \u00b0C', ['celsius', -3]],
  ['5 below', ['celsius', -5]],
  ['two degrees below freezing', ['celsius', -2]],
  ['41F', ['celsius', 5]],
  ['2-4 degrees', ['degrees', 2, 4]],
  ['between 3 and 5 degrees', ['degrees', 3, 5]],
  ['2 or 3 nights', ['nights', 2, 3]],
  ['60%', ['percent', 60]],
  ['sixty per cent', ['percent', 60]],
  ['1.6 tonnes', ['kg', 1600]],
  ['twenty kilos', ['kg', 20]],
  ['11 stone', ['kg', 69.8532]],
  ['forty litres', ['litres', 40]],
  ['6 cm', ['mm', 60]],
  ['two inches', ['mm', 50.8]],
  ['twenty-one', ['bare', 21]],
  ['a hundred and twenty', ['bare', 120]],
  ['two thousand watts', ['watts', 2000]],
  ['seventeen hundred kg', ['kg', 1700]],
  ['1 1/2 kw', ['watts', 1500]],
  ['1½ degrees', ['degrees', 1.5]],
  ['2 x 6kg', ['bare', 2], ['kg', 6]],
];

describe('quantities in words', () => {
  for (const [text, ...wanted] of SAID) {
    it(`reads '${text}'`, () => expect(read(text)).toEqual(wanted.map((each) => [...each])));
  }

  it("does not take 'a' for amps where it means each", () => {
    expect(read('10 a day').some(([unit]) => unit === 'amps')).toBe(false);
    expect(read('2 a night').some(([unit]) => unit === 'amps')).toBe(false);
    expect(read('on 10 a')).toEqual([['amps', 10]]);
  });

  it('leaves clock times and round-the-clock alone', () => {
    expect(read('from 7pm')).toEqual([]);
    expect(read('at 19:30')).toEqual([]);
  });

  it('never throws and never counts something that is not a number', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), mixed), (text) => {
        for (const { low, high, from, to } of countedIn(text).quantities) {
          expect(Number.isFinite(low) && Number.isFinite(high)).toBe(true);
          expect(from).toBeLessThan(to);
        }
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('reads back any number of watts however it is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (watts) => {
        for (const text of [
          `${watts}w`,
          `${watts} watts`,
          `${watts.toLocaleString('en-GB')} W`,
          `${watts / 1000}kw`,
          `${watts / 1000} kilowatts`,
        ]) {
          expect(read(text)).toEqual([['watts', watts]]);
        }
      }),
      { seed: 12 },
    );
  });

  it('gives back a temperature after a way to Fahrenheit, which mathjs goes, and to kelvin', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 60, noNaN: true }), (celsius) => {
        expect(celsiusFromFahrenheit(unit(celsius, 'celsius').toNumber('fahrenheit'))).toBeCloseTo(celsius, 9);
        expect(celsiusFromKelvin(kelvinFromCelsius(celsius))).toBeCloseTo(celsius, 9);
      }),
      { seed: 13 },
    );
  });
});

/** Words and signs that sums are made of, in any order. */
const mixed = fc
  .array(
    fc.constantFrom(
      'ten',
      'a',
      'half',
      'and',
      'two',
      'hundred',
      'thousand',
      'point',
      '1/2',
      '3/0',
      '-',
      'minus',
      'amps',
      'kw',
      '1.8',
      '1,8',
      'of',
      'below',
      'degrees',
      'c',
      '½',
      '%',
      'k',
      'quarters',
      'couple',
      '7pm',
      '99999999999999999999',
    ),
    { maxLength: 12 },
  )
  .map((words) => words.join(' '));
