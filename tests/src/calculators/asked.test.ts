import { describe, expect, it } from 'vitest';
import { sumAsked } from '../../../src/calculators/index.ts';

describe('the subject of a question', () => {
  it.each([
    ['how long will the gas last, no hook up', 'gas-how-long'],
    ['gas how long off grid', 'gas-how-long'],
    ["we've no hookup, how many days will the gas bottle do", 'gas-how-long'],
    ['no electric on this field so whats the gas good for, days wise', 'gas-how-long'],
    ['off hook up all week, enough gas?', 'gas-how-long'],
    ['not plugged in, how long before the gas runs out', 'gas-how-long'],
    ["the battery's fine but how long will the gas last", 'gas-how-long'],
    ['how long till the gas is done with the heating on and 5 outside', 'gas-how-long'],
    ['how long will the battery last with the heating on gas', 'dc-battery-days'],
    ['gas is full but how long will the battery do off hook up', 'dc-battery-days'],
    ['no gas left, how many days will the battery run the lights', 'dc-battery-days'],
    ['solar is on, how long will the battery go in june off hook up', 'dc-battery-days'],
    ['does the solar keep the battery up in june', 'dc-solar-keep-up'],
    ['battery is low in the mornings, is the solar enough in may', 'dc-solar-keep-up'],
    ["toilet flushes off the water tank, how many days till the cassette's full for four", 'toilet-capacity'],
    ['how long for the shower water to get hot on gas', 'hotwater-time'],
    ['off grid, how long till the hot water is ready on gas', 'hotwater-time'],
    ['how long a shower do we get when the water is hot', 'hotwater-shower-length'],
    ['how long is the shower before the hot water has to warm up again', 'hotwater-shower-length'],
    ['no hook up, how long to warm the van on gas from 5 outside to 20', 'heating-time'],
  ])('of "%s" asks for %s', (text, topic) => {
    expect(sumAsked(text)).toBe(topic);
  });

  it.each([
    'how long will it last',
    'the gas heating will not start and the battery is low',
    'is gas or electric better for the heating',
    'is it too much to have the kettle on with the heating',
    'where is the gas locker, and the battery',
  ])('of "%s" is none that could be taken for another', (text) => {
    expect(sumAsked(text)).toBeNull();
  });
});
