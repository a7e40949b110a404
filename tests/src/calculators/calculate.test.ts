import { describe, expect, it } from 'vitest';
import { CALCULATORS } from '../../../src/calculators/calculators.ts';
import { calculate, changesInput, isCalculation } from '../../../src/calculators/index.ts';
import { inVan, talk, valuesOf, vanIds } from './fleet.ts';

const TOGETHER = 'mains-can-i-run-together';

describe('a calculation', () => {
  it('asks for one missing thing at a time, with choices that can be said back', () => {
    const first = talk('dunlin', TOGETHER, ['can I run these two together?']);
    expect(first).toMatchObject({ kind: 'asks', asks: 'appliances' });
    const second = talk('dunlin', TOGETHER, ['can I run these two together?', 'heating and the kettle']);
    expect(second).toMatchObject({ kind: 'asks', asks: 'watts', choices: ['1,000 W', '2,000 W', '3,000 W', 'On gas'] });
    const third = talk('dunlin', TOGETHER, ['can I run these two together?', 'heating and the kettle', '1,000 W']);
    expect(third).toMatchObject({ kind: 'asks', asks: 'amps' });
    const last = talk('dunlin', TOGETHER, [
      'can I run these two together?',
      'heating and the kettle',
      '1,000 W',
      '10 amps',
    ]);
    expect(valuesOf(last)).toMatchObject({ totalW: 2250, verdict: 'fits' });
  });

  it('understands every choice it offers', () => {
    for (const { topic } of CALCULATORS) {
      for (const van of vanIds) {
        const open = calculate(topic, 'tell me', null, inVan(van));
        if (open.kind !== 'asks') continue;
        for (const choice of open.choices) {
          const next = calculate(topic, choice, open.inputs, inVan(van));
          expect(next.kind === 'asks' ? next.asks : next.kind, `${topic}, ${van}: ${choice}`).not.toBe(open.asks);
          expect(next.kind, `${topic}, ${van}: ${choice}`).not.toBe('refused');
        }
      }
    }
  });

  it('takes ten, 10 and 10 amps alike in reply to its question', () => {
    for (const reply of ['ten', '10', '10 amps', 'the post says 10', "it's 10", '10A']) {
      expect(valuesOf(talk('dunlin', 'mains-what-can-i-run', ['what can I run?', reply])), reply).toMatchObject({
        availableW: 2050,
      });
    }
    for (const reply of ['four', '4', 'four of us', 'two adults two kids']) {
      expect(valuesOf(talk('dunlin', 'toilet-capacity', ['how often?', reply])), reply).toMatchObject({ days: 1.8 });
    }
  });

  it('leaves its question open when the hirer speaks of something else', () => {
    const open = talk('dunlin', 'gas-how-long', ['how long will the gas last']);
    const aside = talk('dunlin', 'gas-how-long', [
      'how long will the gas last',
      'where is the corkscrew, it is the 3rd drawer I tried in december',
    ]);
    expect(aside).toEqual(open);
  });

  it('names an absurd reply and takes the next one', () => {
    const refused = talk('dunlin', 'toilet-capacity', ['how often?', '400']);
    expect(refused).toMatchObject({ kind: 'refused', refused: 'people' });
    expect(refused.kind === 'refused' && refused.says).toContain('400');
    expect(refused.kind === 'refused' && refused.says).toContain('How many of you are there?');
    expect(refused.kind === 'refused' && refused.choices).toContain('4');
    expect(valuesOf(talk('dunlin', 'toilet-capacity', ['how often?', '400', '4']))).toMatchObject({ days: 1.8 });
  });

  it('lets what was said win over the booking', () => {
    expect(valuesOf(talk('dunlin', 'mains-what-can-i-run', ['what on 16 amps?'], { amps: 6 }))).toMatchObject({
      availableW: 3430,
    });
    expect(
      valuesOf(talk('dunlin', 'toilet-capacity', ['and if only two of us were there'], { people: 4 })),
    ).toMatchObject({ days: 3.6 });
  });

  it('keeps inputs that survive being stored', () => {
    const outcome = talk('dunlin', TOGETHER, ['kettle and heating on 2'], { amps: 10 });
    expect(JSON.parse(JSON.stringify(outcome.inputs))).toEqual(outcome.inputs);
  });

  it('refuses a topic that has no sum', () => {
    expect(isCalculation('water-none')).toBe(false);
    expect(() => calculate('water-none', 'x', null, inVan('dunlin'))).toThrow('water-none');
  });

  it('passes a breathing machine to staff whatever the figures', () => {
    for (const amps of [0, 6, 16]) {
      const outcome = talk('curlew', 'dc-cpap-overnight', ['cpap tonight?'], { amps, nights: 1 });
      expect(outcome).toMatchObject({ kind: 'result', pass: true });
      expect(outcome.kind === 'result' && outcome.caution).toContain('999');
    }
  });

  it('reads no charge from the volts of a lithium battery', () => {
    const outcome = talk('curlew', 'dc-battery-days', ['battery reads 13.2 volts, how long have we got']);
    expect(valuesOf(outcome)).toMatchObject({ usableAh: 90 });
    expect(outcome.kind === 'result' && outcome.caution).toContain('lithium');
  });
});

describe('a follow-up', () => {
  const followedBy = (van: string, topic: string, text: string, next: string) => {
    const context = inVan(van, { amps: 10, people: 4 });
    const { inputs } = calculate(topic, text, null, context);
    return changesInput(next, topic, inputs, context);
  };

  it('is seen when it changes an input', () => {
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'what about 16 amps')).toBe(true);
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'and on 16?')).toBe(true);
    expect(followedBy('dunlin', TOGETHER, 'heating on 2', 'and with the kettle too')).toBe(true);
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'and on 1?')).toBe(true);
    expect(followedBy('curlew', 'dc-solar-keep-up', 'does the solar keep up', 'and in december')).toBe(true);
    expect(
      followedBy('dunlin', 'gas-how-long', 'how long will the gas last', 'what if there were only two of us'),
    ).toBe(true);
  });

  it('is seen without an opening word when it holds nothing else', () => {
    expect(followedBy('dunlin', TOGETHER, 'heating on 2', 'kettle too')).toBe(true);
    expect(followedBy('curlew', 'dc-solar-keep-up', 'does the solar keep up', 'december?')).toBe(true);
  });

  it('is not taken for one when it asks something new', () => {
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'and how do I charge 2 phones')).toBe(false);
    expect(
      followedBy('dunlin', 'gas-how-long', 'how long will the gas last', 'if there are 2 of us what about the water'),
    ).toBe(false);
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'where is the fuse box')).toBe(false);
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'how do I empty the toilet')).toBe(false);
    expect(followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'thanks')).toBe(false);
    expect(
      followedBy('dunlin', TOGETHER, 'kettle with the heating on 2', 'the kettle has gone bang and there is smoke'),
    ).toBe(false);
    expect(
      followedBy('dunlin', 'toilet-capacity', 'how often', 'how long will the gas last for 4 people in december'),
    ).toBe(false);
    expect(changesInput('and on 16?', TOGETHER, null, inVan('dunlin'))).toBe(false);
  });

  it('adds, takes off and changes appliances', () => {
    const total = (...turns: string[]) => valuesOf(talk('dunlin', TOGETHER, turns, { amps: 16 }))['totalW'];
    expect(total('heating on 2', 'and with the kettle too')).toBe(3250);
    expect(total('heating on 2 and kettle', 'without the kettle')).toBe(2250);
    expect(total('heating on 2 and kettle', 'and on 1?')).toBe(2250);
    expect(total('heating on 2 and kettle', 'and if the heating is on 3')).toBe(4250);
  });
});

describe('what hirers read', () => {
  const told = (van: string, topic: string, text: string, booked: Parameters<typeof talk>[3] = {}) => {
    const outcome = talk(van, topic, [text], booked);
    if (outcome.kind !== 'result') throw new Error(JSON.stringify(outcome));
    return [outcome.first, ...outcome.working, outcome.caution ?? ''].join('\n');
  };

  it('tells apart what waits its turn and what never fits', () => {
    expect(told('dunlin', TOGETHER, 'kettle and toaster', { amps: 6 })).toContain('until the others are done');
    expect(told('dunlin', TOGETHER, 'kettle with the heating on 2', { amps: 10 })).toContain('while the heating is on');
    const six = told('godwit', TOGETHER, 'kettle and the heater', { amps: 6 });
    expect(six).toContain('2,000 W never fits here');
    expect(six).toContain('Heat with gas');
    expect(six).not.toContain('until');
  });

  it('calls the watts of a diesel heater its fan, and gives them no heat', () => {
    const text = told('plover', TOGETHER, 'kettle and the heater', { amps: 6 });
    expect(text).toContain("diesel heater's fan 18 W");
    expect(text).not.toContain('20 W');
  });

  it('says what a heater gives at the end of the lead, and at the lowest lawful volts', () => {
    // 2,250 W is 9.8 A; 25 m of 7.98 ohm/km there and back takes 3.9 V: 2000 x (226.1/230)^2, 2000 x (212.3/230)^2.
    const text = told('dunlin', TOGETHER, 'heating on 2', { amps: 10 });
    expect(text).toContain('1,930 W');
    expect(text).toContain('1,700 W');
  });

  it('draws on a breaker what stands on it alone', () => {
    const outcome = talk('curlew', TOGETHER, ['kettle, toaster, microwave and heating on 1'], { amps: 32 });
    expect(outcome).toMatchObject({
      values: { limitedBy: 'breaker-1' },
      bar: {
        limit: 2300,
        // The charger is on breaker 3, the heating on breaker 2.
        segments: [
          { label: 'kettle', amount: 1000 },
          { label: 'toaster', amount: 900 },
          { label: 'microwave', amount: 1250 },
        ],
      },
    });
  });

  it('counts what the charger takes after a flat battery, and does not ask to switch it off', () => {
    // Dunlin: 190 W of fridge, 380 W of charger instead of 60, a kettle of 1,000 W.
    const text = 'kettle while it charges a flat battery';
    expect(valuesOf(talk('dunlin', TOGETHER, ['heating on 2 and a flat battery'], { amps: 10 }))).toMatchObject({
      drop: ['heating'],
    });
    expect(valuesOf(talk('dunlin', TOGETHER, [text], { amps: 6 }))).toMatchObject({ totalW: 1570, drop: ['kettle'] });
    expect(
      valuesOf(talk('dunlin', 'mains-what-can-i-run', ['what can I run, the battery is flat'], { amps: 10 })),
    ).toMatchObject({ availableW: 1730 });
  });

  it('gives no time for a step that the post does not carry without saying so, and offers none', () => {
    expect(told('dunlin', 'hotwater-time', 'how long for hot water on 3 kw', { amps: 6 })).toMatch(
      /^Your 6 amps do not carry/,
    );
    expect(told('dunlin', 'hotwater-time', 'how long for hot water on 1 kw', { amps: 6 })).toMatch(/^About/);
    expect(told('godwit', 'heating-time', '5 outside, electric, how long', { amps: 6 })).toMatch(
      /^Your 6 amps do not carry/,
    );
    const never = told('wren', 'heating-time', '5 outside, will 500 watts get to 20', { amps: 6 });
    expect(never).toContain('electric on 1 kW');
    expect(never).not.toContain('electric on 2 kW');
  });

  it('sets days of gas and battery against the nights that are left', () => {
    // Wren, two: 3,705 / 542 = 6.8 days; Dunlin: 47.5 / 27 = 1.8 days.
    expect(told('wren', 'gas-how-long', 'how long will the gas last', { people: 2, nights: 3 })).toContain(
      'enough for the 3 nights you have left',
    );
    expect(told('wren', 'gas-how-long', 'how long will the gas last', { people: 2, nights: 9 })).toContain(
      'not the 9 nights you have left',
    );
    expect(told('dunlin', 'dc-battery-days', 'how long will the battery last', { nights: 1 })).toContain(
      'enough for the night you have left',
    );
    expect(told('dunlin', 'dc-battery-days', 'how long will the battery last')).not.toContain('left');
  });

  it('says no when what is on already is more than the post carries', () => {
    const text = told('godwit', 'mains-what-can-i-run', 'can we have the heater on', { amps: 6 });
    // 6 A x 230 V less 185 W; the heater alone is 2,000 W.
    expect(text).toMatch(
      /^No: with the heating on it is more than 6 amps carry. Without it there are 1,195 W to spare/,
    );
  });

  it('speaks of no fridge on gas where the fridge burns none', () => {
    expect(told('curlew', 'gas-how-long', 'how long will the gas last', { people: 6 })).not.toMatch(/fridge/i);
    expect(told('dunlin', 'gas-how-long', 'how long will the gas last', { people: 6 })).toContain(
      'the fridge and the hot water on hook-up',
    );
  });

  it('passes butane that gives no gas, and offers electric heat only where the post carries it', () => {
    const cold = (amps: number | undefined) =>
      told('godwit', 'gas-butane-cold', 'minus 2 tonight', amps === undefined ? {} : { amps });
    expect(talk('godwit', 'gas-butane-cold', ['minus 2 tonight'])).toMatchObject({ pass: true });
    expect(talk('godwit', 'gas-butane-cold', ['plus 2 tonight'])).toMatchObject({ pass: false });
    expect(cold(10)).toContain('On your 10 amps heat with electricity');
    expect(cold(undefined)).toContain('On 10 amps or more heat with electricity');
    expect(cold(6)).not.toContain('electricity');
  });

  const replies = CALCULATORS.flatMap(({ topic }) =>
    vanIds.flatMap((van) =>
      [
        '5 degrees, car 1700 kg, two bikes, kettle and toaster, 4 people, gas',
        '-4 degrees outside on 6 amps with the heating on 1, 6 people, 1300 kg car',
      ].map((text) => {
        const outcome = calculate(topic, text, null, inVan(van, { amps: 10, people: 4, nights: 3 }));
        return { topic, van, outcome };
      }),
    ),
  );

  it('never calls anything legal and never tells a time in seconds to a trip', () => {
    for (const { topic, van, outcome } of replies) {
      if (outcome.kind !== 'result') continue;
      const text = [outcome.first, ...outcome.working, outcome.caution ?? ''].join('\n');
      expect(text, `${topic}, ${van}`).not.toMatch(/\blegal/i);
      if (topic.startsWith('mains')) expect(text, `${topic}, ${van}`).not.toMatch(/second/i);
    }
  });

  it('is short: the verdict in one line and two to four lines of working, without holes', () => {
    for (const { topic, van, outcome } of replies) {
      if (outcome.kind !== 'result') continue;
      expect(outcome.first.length, `${topic}, ${van}: ${outcome.first}`).toBeLessThan(200);
      expect(outcome.working.length, `${topic}, ${van}`).toBeLessThanOrEqual(4);
      expect([outcome.first, ...outcome.working].join(' '), `${topic}, ${van}`).not.toMatch(
        /undefined|NaN|null|Infinity|\s\s/,
      );
    }
  });

  it('takes the sun of the latitude band that the site lies in', () => {
    const wh = (sun: 'north' | 'middle' | 'south') =>
      valuesOf(talk('curlew', 'dc-solar-keep-up', ['does the solar keep up'], { month: 12, sun }))['solarWh'];
    // 120 W x 0.5, 0.6 and 1.0 hours x 0.70: firm.yaml.
    expect([wh('north'), wh('middle'), wh('south')]).toEqual([42, 50.4, 84]);
  });

  it('has a bar in every result, but for what the van has not', () => {
    const without = new Set(['godwit hotwater-time', 'godwit hotwater-shower-length', 'plover towing-noseweight']);
    for (const { topic, van, outcome } of replies) {
      if (outcome.kind !== 'result' || without.has(`${van} ${topic}`)) continue;
      expect(outcome.bar?.segments.length, `${topic}, ${van}`).toBeGreaterThan(0);
      // More letters of the page's own bold run out of the bar's frame on a phone.
      expect(outcome.bar?.title.length, `${topic}, ${van}`).toBeLessThanOrEqual(27);
    }
    for (const text of ['how long without hook up', 'on the engine']) {
      expect(talk('plover', 'hotwater-time', [text], { amps: 0 })).toMatchObject({
        bar: { title: 'Heat of one hour' },
      });
    }
  });
});

describe('a sum about the battery', () => {
  it('says what cannot run off hook-up instead of leaving it out', () => {
    const said = (van: string, text: string) => {
      const outcome = talk(van, 'dc-battery-days', [text]);
      return outcome.kind === 'result' ? outcome.first : outcome.kind;
    };
    expect(said('dunlin', 'off grid with the microwave, how long does the battery last')).toContain(
      'The microwave cannot run off hook-up: Dunlin has no inverter.',
    );
    expect(said('curlew', 'telly 4 hours and the toaster off grid, how many days')).toContain(
      'The toaster cannot run off hook-up: the inverter socket gives 350 W at most.',
    );
    expect(said('godwit', 'a 700 W gadget an hour a day off the battery')).toContain('cannot run off hook-up');
    // A kettle on the hob draws nothing, and a laptop has a lead of its own.
    expect(said('dunlin', 'kettle on the hob, laptop 2 hours a day, how long')).not.toContain('cannot');
  });

  it('asks for the hours of what is named, unless it is a usual day', () => {
    const open = talk('wren', 'dc-battery-days', ['how many days will the battery last if we watch telly']);
    expect(open).toMatchObject({ kind: 'asks', asks: 'hours' });
    const days = (reply: string) =>
      valuesOf(talk('wren', 'dc-battery-days', ['how many days will the battery last if we watch telly', reply]));
    // 18 W x 2 h / 12 V and 38.25 Ah: fleet.md, section 8.
    expect(days('2 hours')).toMatchObject({ dailyAh: 3, days: 12.75 });
    expect(days('All the time')).toMatchObject({ dailyAh: 36 });
    expect(valuesOf(talk('wren', 'dc-battery-days', ['normal use, lights and telly, how long']))).toMatchObject({
      dailyAh: 12,
    });
    expect(valuesOf(talk('wren', 'dc-battery-days', ['how long till the lights go out']))).toMatchObject({
      dailyAh: 12,
    });
  });
});

describe('what the gas is for', () => {
  // Cooking 55 g a head; fridge Dunlin 380, Wren 270; a tank Dunlin 74, Wren 54; three a day: fleet.md, section 8.
  it.each([
    ['dunlin', '3 people, cooking plus 1 tank of hot water a day, fridge electric', 165 + 74],
    ['dunlin', 'four of us cooking and fridge on gas', 220 + 380],
    ['dunlin', '4 people. Fridge: gas. Cooking: gas. Hot water: electric. Heating: electric.', 220 + 380],
    ['dunlin', 'three people, just running the fridge on gas and cooking', 165 + 380],
    ['wren', 'me and my partner, we cook, the fridge, one tank of hot water. Heatings off', 110 + 270 + 54],
    ['wren', 'fridge on gas, cooking on gas, water and space heating off, just me', 55 + 270],
    ['wren', 'two of us, fridge and cooking on gas, no hot water or heating', 110 + 270],
    ['wren', 'gas only for cooking and two tanks of hot water, two adults', 110 + 108],
    ['wren', 'two of us', 110 + 270 + 162],
  ])('of %s in "%s" takes %s g a day', (van, text, grams) => {
    expect(valuesOf(talk(van, 'gas-how-long', [text]))['gramsPerDay']).toBeCloseTo(grams);
  });
});

describe('a sum about a cylinder that is begun', () => {
  it('asks how full it is', () => {
    const turns = ["how long will what's left in the bottle last for two of us"];
    expect(talk('godwit', 'gas-how-long', turns)).toMatchObject({ kind: 'asks', asks: 'percent' });
    const full = valuesOf(talk('godwit', 'gas-how-long', [...turns, 'Full']))['days'] as number;
    const half = valuesOf(talk('godwit', 'gas-how-long', [...turns, 'Half']))['days'] as number;
    expect(half).toBeCloseTo(full / 2);
  });
});

describe('figures said behind a name', () => {
  const loads = (text: string) => talk('dunlin', TOGETHER, [text], { amps: 16 }).inputs['appliances'];

  it('belong to it, however far back it stands', () => {
    expect(loads('we packed our kettle from home, it is 2.2kW. with the laptop?')).toEqual([
      'house-kettle|full-size kettle from home|2200|1|',
      'laptop|laptop|65|1|',
    ]);
    expect(loads('I must iron one shirt, 1200 watt the iron')).toEqual(['iron|iron|1200|1|']);
    expect(loads('microwave and my travel hair dryer? The dryer is 900w')).toEqual([
      'microwave|microwave|1150|1|',
      'travel-hair-dryer|travel hair dryer|900|1|',
    ]);
    expect(loads('an electric blanket on each side, so two of them')).toEqual([
      'electric-blanket|electric blanket|60|2|',
    ]);
  });

  it('belong to each name in turn', () => {
    const hours = (text: string) => talk('dunlin', 'dc-battery-days', [text]).inputs['loads'];
    expect(hours('tv 3hrs lights 4hrs')).toEqual(['tv|TV|24|1|3', 'lights|lights|20|1|4']);
    expect(hours('3hrs tv 4hrs lights')).toEqual(['tv|TV|24|1|3', 'lights|lights|20|1|4']);
    expect(loads('iron 1000w toaster 900w')).toEqual(['iron|iron|1000|1|', 'toaster|toaster|900|1|']);
  });

  it('are never the background', () => {
    expect(loads('gadget 600w whilst the fridge is on')).toContainEqual('own-thing|thing|600|1|');
  });
});

describe('a change of one input', () => {
  it.each([
    [TOGETHER, 'toaster and kettle, 16 amps?', 'Thank you. And on 6 amps, at the farm?', 'amps', 6],
    [TOGETHER, 'toaster and kettle, 16 amps?', 'We might move to a 6 amp pitch, would it still be ok?', 'amps', 6],
    ['towing-car-match', 'kerb 2000 kg', 'Silly me, I read the wrong line. It is 2,120.', 'kerb', 2120],
    ['toilet-capacity', 'four persons', 'one is going home, so with three?', 'people', 3],
    ['gas-how-long', 'four of us', 'and when we are only two?', 'people', 2],
    ['dc-solar-keep-up', 'in June', 'My sister prefers December, how about then', 'month', 12],
    ['setup-chock-height', 'tilt 2.2 degrees', 'Re-measured: 3.3 degrees.', 'degrees', 3.3],
    ['water-how-much', 'two of us, no showers', 'Now one shower each.', 'showerCount', 1],
    ['heating-time', '8 outside, gas, 20 inside', 'I only need 18', 'inside', 18],
    ['heating-time', '5 outside, gas 3.3 kW', 'and on 5.5?', 'source', 'gas-5500'],
    ['heating-best-source', 'gas or electric heating on 10 amps', 'we might only get 6 amps', 'amps', 6],
    ['towing-noseweight', 'noseweight is 92 kg', 'my car can only take 85', 'carLimit', 85],
    ['towing-car-match', 'kerb 1550 kg', 'Sorry wrong car, the other one is 1820kg', 'kerb', 1820],
    ['gas-how-long', 'two of us', 'and without the heating and hot water?', 'no-water', true],
  ])('of %s, "%s", by "%s" changes %s to %s', (topic, first, then, name, value) => {
    const previous = talk('dunlin', topic, [first]).inputs;
    expect(changesInput(then, topic, previous, inVan('dunlin'))).toBe(true);
    expect(talk('dunlin', topic, [first, then]).inputs[name]).toBe(value);
  });

  it('that changes one thing of several keeps the others', () => {
    expect(
      valuesOf(talk('dunlin', TOGETHER, ['heating 2kw and kettle on 10 amps?', 'what if heating is 1kw'])),
    ).toMatchObject({ totalW: 2250 });
  });

  it('is none where a sentence before it speaks of something else', () => {
    const previous = talk('dunlin', TOGETHER, ['toaster and kettle, 16 amps?']).inputs;
    expect(
      changesInput('The fridge has been warm since last night. It is 10.', TOGETHER, previous, inVan('dunlin')),
    ).toBe(false);
  });
});
