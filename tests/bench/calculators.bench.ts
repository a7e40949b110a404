import { bench, describe } from 'vitest';
import { calculate, changesInput, sumsPlainlyAsked } from '../../src/calculators/index.ts';
import { inVan } from '../src/calculators/fleet.ts';

/* Each sum read from words and done; the issue asks for less than 1 ms each. */
const SAID: readonly (readonly [string, string])[] = [
  ['setup-chock-height', 'spirit level says 1.5 degrees low on the offside, which step of the ramp?'],
  ['mains-can-i-run-together', 'can I boil the kettle with the heating on 2 and the toaster, we have 10 amps?'],
  ['mains-what-can-i-run', 'what can we run on 16 amps'],
  ['dc-battery-days', 'telly for four hours and the lights for 4 hrs a night, how many nights'],
  ['dc-solar-keep-up', 'is the panel on the roof enough in September, parked under trees?'],
  ['dc-cpap-overnight', 'can he run his cpap with the humidifier off the battery tonight, no hook-up'],
  ['gas-how-long', "it's 5 outside and the heating runs on gas for four of us, how many days"],
  ['gas-butane-cold', 'it goes down to minus 3 tonight, will the butane still work for the heating'],
  ['water-how-much', 'how many litres a day for two adults and 2 kids with one shower each'],
  ['toilet-capacity', 'four of us'],
  ['heating-best-source', 'gas or electric for the heating, 3 outside and a 10 amp post'],
  ['heating-time', '5 outside, want 20, on gas'],
  ['hotwater-time', 'how long till the water is hot on gas in January'],
  ['hotwater-shower-length', 'how many minutes of shower do the two of us get from one tank'],
  ['towing-noseweight', 'the gauge under the nose says 88 but the car only allows 80'],
  ['towing-car-match', 'the car has a kerb weight of 1,450 kg and may tow 1,500, is it heavy enough'],
  ['load-how-much', 'clothes for two adults and two kids plus food, 4 bikes and 4 chairs'],
];

describe('a sum from words', () => {
  const context = inVan('dunlin');
  for (const [topic, text] of SAID) {
    bench(topic, () => {
      calculate(topic, text, null, context);
    });
  }
});

describe('which sum', () => {
  const context = inVan('dunlin');
  const previous = calculate('mains-can-i-run-together', 'kettle and toaster on 10 amps', null, context).inputs;
  bench('is asked for plainly, in a long message', () => {
    sumsPlainlyAsked(
      'Lovely site thanks, the kids have found the stream and one of them is soaked through! Wanted to do toast and boil the kettle at the same time for everyone, does that work here?',
      context,
    );
  });
  bench('a follow-up changes', () => {
    changesInput('Thank you. And on 6 amps, at the farm?', 'mains-can-i-run-together', previous, context);
  });
});
