import { describe, expect, it } from 'vitest';
import { asks, sumAsked, sumsPlainlyAsked } from '../../../src/calculators/index.ts';
import { inVan } from './fleet.ts';

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

describe('a sum that is asked for plainly', () => {
  it.each([
    ['godwit', "baby's freezing can we put the electric heater on its a 6 amp pole", 'mains-can-i-run-together'],
    ['curlew', 'kettle for the bottle and her hair dryer, is 10A enough for the two', 'mains-can-i-run-together'],
    [
      'dunlin',
      'the heating is in 2 kW and we want also toaster, it is sixteen amps, enough?',
      'mains-can-i-run-together',
    ],
    ['plover', 'Minus ten amps. What runs?', 'mains-what-can-i-run'],
    ['dunlin', 'what can we run off the hook up please', 'mains-what-can-i-run'],
    ['curlew', 'CPAP with the humidifier through the inverter socket, one night. Does it manage?', 'dc-cpap-overnight'],
    ['wren', 'couple, fridge on gas, we cook, one tank of hot water a day. how long', 'gas-how-long'],
    ['plover', '3 degrees inside the van, is the butane going to be any good for porridge', 'gas-butane-cold'],
    ['wren', '6 amps, what should we heat with', 'heating-best-source'],
    ['dunlin', "Will the heating get us to 20 degrees on 1kw? It's 6 degrees outside.", 'heating-time'],
    ['dunlin', "Boiler's on gas at 3.3kW, when will the water be hot enough for washing up", 'hotwater-time'],
    ['curlew', 'How many minutes of shower is possible with one full tank of hot water?', 'hotwater-shower-length'],
    ['plover', 'is the solar panel enough to keep the battery charged', 'dc-solar-keep-up'],
    ['wren', 'Frosty. Heating on, no mains. Battery?', 'dc-battery-days'],
    ['curlew', "there's six of us. how many litres of water a day are we going to get through", 'water-how-much'],
    ['godwit', 'when is the cassette full', 'toilet-capacity'],
    ['godwit', 'tow ball weight reads 62kg, car allows 75, ok?', 'towing-noseweight'],
    ['curlew', 'my suv is 2.2 t, heavy enough?', 'towing-car-match'],
    ['wren', 'can i take my 61kg telescope or is that over the weight', 'load-how-much'],
    ['godwit', "it's lower on the door side. How much do we need to raise it with the ramps?", 'setup-chock-height'],
  ])('in %s by "%s" is %s', (van, text, topic) => {
    expect(sumsPlainlyAsked(text, inVan(van))).toEqual([topic]);
  });

  it.each([
    'My mother-in-law travels always with her own iron and slow cooker. You permit?',
    'kettle and toaster tripped the post again, 10 amps',
    'The refrigerator has pictures of a plug, a car and a flame. Which do we take?',
    'i put the fridge on gas last night and its warm',
    'can i load the shopping in straight away or give it a while first',
    'how long is the hose of the shower',
    'where do i check the water and the gas bottle',
  ])('is none in "%s"', (text) => {
    expect(sumsPlainlyAsked(text, inVan('dunlin'))).toEqual([]);
  });
});

describe('a question', () => {
  it('is not what only tells', () => {
    expect(asks('can we still boil the kettle')).toBe(true);
    expect(asks('tell me what it can do')).toBe(true);
    expect(asks('Site is 10 amps')).toBe(false);
  });
});
