import { describe, expect, it } from 'vitest';
import { createTongueReader } from '../../../src/safety/tongue.ts';
import { wordsOf } from '../../../src/safety/words.ts';
import { aReading, rule } from './small-reading.ts';

const reading = aReading();
const english = reading.tongues['en'];
if (english === undefined) throw new Error('the small reading has English');
const reader = createTongueReader(english, reading.hazards, new Set(['there']));
const read = (text: string) => reader.read(wordsOf(text, new Map(), 'written-out').words);
const hazards = (text: string) => read(text).alarms.map((alarm) => alarm.hazard);

describe('the rules of one language', () => {
  it('meets a rule whose groups stand near each other, in any order', () => {
    expect(hazards('there is a smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('the gas stinks')).toEqual(['safety-gas-smell']);
    expect(hazards('gas is cheap here and so is the food, but what I do not like is the smell')).toEqual([]);
  });

  it('keeps to one sentence unless the rule says otherwise', () => {
    expect(hazards('I smell. Gas')).toEqual([]);
    expect(hazards('The alarm. It is going off')).toEqual(['safety-gas-alarm']);
  });

  it('is set aside by harmless company', () => {
    expect(read('the toilet smells of gas').aside).toEqual([
      "safety-gas-smell: 'smells ... gas' (smell + gas): something harmless beside it",
    ]);
  });

  it.each([
    ['no smell of gas', 'it says that there is none'],
    ['where is the smell of gas from', 'a question about it'],
    ['smell of gas, what is it for', 'asks what it is for'],
    ['if I smell gas', 'only supposed'],
    ['last year we had a smell of gas', 'long ago'],
    ['a smell of gas in the film', 'somewhere else'],
  ])('sets aside: %s', (text, why) => {
    expect(read(text)).toMatchObject({ alarms: [], aside: [expect.stringContaining(why)] });
  });

  it('lets a negation reach a few words of its clause, not further', () => {
    expect(hazards('no hot water, smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('not hot and not cold and then the smell of gas')).toEqual(['safety-gas-smell']);
  });

  it('lets no guard reach past a turn, from either side', () => {
    expect(hazards('no light but smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('last year all was well but smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('if I open it goes but smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('smell of gas but it was last year')).toEqual(['safety-gas-smell']);
    expect(hazards('but last year we had a smell of gas')).toEqual([]);
  });

  it('lets a question reach to what is so and no further', () => {
    expect(hazards('where is the tap there is a smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('where is the tap the van smells of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('where is the tap, smell of gas')).toEqual(['safety-gas-smell']);
    expect(hazards('where is it the smell of gas')).toEqual([]);
    expect(hazards('how do i test it for a smell of gas')).toEqual([]);
  });

  it('does not take a negation for one that is part of a saying', () => {
    expect(hazards('not sure if I smell gas')).toEqual(['safety-gas-smell']);
  });

  it('hides the words of a saying, one phrase or several that stand together', () => {
    expect(hazards('a shock')).toEqual(['safety-electric-shock']);
    expect(hazards('a shock at the price')).toEqual([]);
  });

  it('lets a rule stand despite a guard it names', () => {
    const despite = createTongueReader(
      english,
      { 'safety-gas-smell': [rule(['smell', 'gas'], { despite: ['supposed'] })] },
      new Set(),
    );
    expect(despite.read(wordsOf('if I smell gas', new Map(), 'written-out').words).alarms).toHaveLength(1);
  });

  it('keeps a rule for short messages to short messages', () => {
    const short = createTongueReader(english, { 'safety-gas-alarm': [rule(['alarm'], { most: 2 })] }, new Set());
    const met = (text: string) => short.read(wordsOf(text, new Map(), 'written-out').words).alarms.length;
    expect([met('alarm'), met('the alarm on the wall')]).toEqual([1, 0]);
  });

  it('tells which groups count and which a guard set aside', () => {
    expect(read('no smell, gas bottle')).toMatchObject({ groups: ['bottle', 'gas'], guarded: ['negated smell'] });
  });

  it('leaves out rules that name a group it has not', () => {
    const none = createTongueReader(english, { 'safety-fire': [rule(['smell', 'flame'])] }, new Set());
    expect(none.read(wordsOf('smell', new Map(), 'written-out').words).alarms).toEqual([]);
  });
});
