import { describe, expect, it } from 'vitest';
import { editDistance } from '../../src/language/edit-distance.ts';
import { stem } from '../../src/language/stems.ts';
import { accuracy, auroc, brier, calibrationError, coverageAt, type Judged } from '../bench/understanding/metrics.ts';
import { dataSets, dataThere } from '../bench/understanding/open-data.ts';

const one = (confidence: number, right: boolean, covered = true): Judged => ({ confidence, right, covered });

// M. F. Porter, 'An algorithm for suffix stripping', Program 14(3), 1980, pp. 130-137: the examples beside its rules,
// each run through all the steps.
describe('stems', () => {
  it.each([
    ['caresses', 'caress'],
    ['ponies', 'poni'],
    ['cats', 'cat'],
    ['feed', 'feed'],
    ['plastered', 'plaster'],
    ['bled', 'bled'],
    ['motoring', 'motor'],
    ['sing', 'sing'],
    ['hopping', 'hop'],
    ['tanned', 'tan'],
    ['falling', 'fall'],
    ['hissing', 'hiss'],
    ['fizzed', 'fizz'],
    ['failing', 'fail'],
    ['filing', 'file'],
    ['happy', 'happi'],
    ['sky', 'sky'],
    ['relational', 'relat'],
    ['conditional', 'condit'],
    ['digitizer', 'digit'],
    ['operator', 'oper'],
    ['hopefulness', 'hope'],
    ['formalize', 'formal'],
    ['electrical', 'electr'],
    ['goodness', 'good'],
    ['allowance', 'allow'],
    ['adjustable', 'adjust'],
    ['replacement', 'replac'],
    ['adoption', 'adopt'],
    ['effective', 'effect'],
    ['rate', 'rate'],
    ['controll', 'control'],
    ['roll', 'roll'],
  ])('of %s is %s, as Porter gives it', (word, wanted) => {
    expect(stem(word)).toBe(wanted);
  });
});

// L. Boytsov, 'Indexing methods for approximate dictionary searching', ACM JEA 16, 2011: optimal string alignment
// never touches a letter twice, so CA -> ABC is 3 where the unrestricted Damerau-Levenshtein distance is 2.
describe('edit distance', () => {
  it.each([
    ['ca', 'abc', 3],
    ['kitten', 'sitting', 3],
    ['toliet', 'toilet', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %s to %s is %i', (a, b, wanted) => {
    expect(editDistance(a, b, 5)).toBe(wanted);
    expect(editDistance(b, a, 5)).toBe(wanted);
  });

  it('stops counting where it is told to', () => {
    expect(editDistance('kitten', 'sitting', 1)).toBe(2);
  });
});

// Worked by hand.
describe('the bench’s figures', () => {
  const table = [one(0.9, true), one(0.8, false), one(0.7, true), one(0.6, true), one(0.3, false, false)];

  it('counts right first topics among the covered', () => {
    expect(accuracy(table)).toBe(3 / 4);
  });

  it('goes down the surest until too many are wrong', () => {
    expect(coverageAt(table, 0)).toBe(1 / 4);
    expect(coverageAt(table, 0.2)).toBe(3 / 4);
  });

  it('lets equally sure ones stand or fall together', () => {
    expect(coverageAt([one(0.9, true), one(0.9, false)], 0)).toBe(0);
  });

  it('compares every right answer with every wrong one', () => {
    // Pairs (right, wrong): .9 beats .8 and .3, .7 and .6 beat .3 only: 4 of 6.
    expect(auroc(table)).toBeCloseTo(4 / 6, 12);
    expect(auroc([one(0.5, true), one(0.5, false)])).toBe(0.5);
  });

  it('measures how far confidence is from being right', () => {
    // Five bins of one: .1, .8, .3, .4, .3, over 5.
    expect(calibrationError(table)).toBeCloseTo(1.9 / 5, 12);
    expect(brier(table)).toBeCloseTo((0.01 + 0.64 + 0.09 + 0.16 + 0.09) / 5, 12);
  });
});

// The counts of the lab's protocol, from the data sets' own description in ../shared/data/README.md.
describe.skipIf(!dataThere())('the open data sets', () => {
  it('are cut as the lab cut them', () => {
    const sets = Object.fromEntries(dataSets().map((set) => [set.name, set]));
    const size = (name: string) => [sets[name]?.train.length, sets[name]?.test.length];
    expect(size('CLINC-r')).toEqual([1500, 5500]);
    expect(size('BANK')).toEqual([770, 3080]);
    expect(sets['BANK-oos']?.train.length).toBe(570);
    expect(sets['BANK-oos']?.test.filter(({ label }) => label === null).length).toBe(800);
    expect(size('curekart')).toEqual([600, 991]);
    expect(size('sofmattress')).toEqual([328, 397]);
    expect(size('powerplay')).toEqual([471, 983]);
  });
});
if (!dataThere()) console.log('../shared/data is not here: the open data sets are not checked');
