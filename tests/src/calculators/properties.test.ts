import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batteryDays, leftAh, percentFromVolts, peukertHours, usableAh } from '../../../src/calculators/battery.ts';
import { butaneVerdict } from '../../../src/calculators/butane-cold.ts';
import { CALCULATORS } from '../../../src/calculators/calculators.ts';
import { liftMm, nearestStep, tiltDegrees } from '../../../src/calculators/chock-height.ts';
import { calculate } from '../../../src/calculators/index.ts';
import { type Load, loadText, parseLoads } from '../../../src/calculators/kept.ts';
import { celsiusAtGauge, gaugeBar, gramsBurnt, heatingGrams } from '../../../src/calculators/lpg.ts';
import { toSwitchOff } from '../../../src/calculators/run-together.ts';
import { limitsOf, loadVerdict, tightest } from '../../../src/calculators/supply.ts';
import { maxRiseK, warmingMinutes } from '../../../src/calculators/warming.ts';
import { mixedLitres, waterMinutes } from '../../../src/calculators/water-heat.ts';
import { largestSets } from '../../../src/calculators/what-can-i-run.ts';
import { firmConstants, inVan, vanIds } from './fleet.ts';

const SEED = 20;
const RANK = ['fits', 'over', 'may-trip', 'will-trip'];
const anyVan = fc.constantFrom(...vanIds);
const celsius = fc.double({ min: -30, max: 30, noNaN: true });
const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });
const load = (key: string, watts: number): Load => ({ key, name: key, watts, count: 1, hours: null });
const someLoads = fc
  .array(
    fc.tuple(
      fc.constantFrom('kettle', 'toaster', 'microwave', 'heating', 'water-heater', 'iron', 'own-thing'),
      fc.integer({ min: 1, max: 3000 }),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .map((list) => list.map(([key, watts]) => load(key, watts)));

describe('what always holds of the hook-up', () => {
  it('more watts never fit better', () => {
    fc.assert(
      fc.property(
        anyVan,
        someLoads,
        fc.integer({ min: 1, max: 3000 }),
        fc.constantFrom(6, 10, 16),
        (van, loads, more, amps) => {
          const { figures, constants } = inVan(van);
          const rank = (list: readonly Load[]) =>
            RANK.indexOf(loadVerdict(tightest(limitsOf(list, amps, figures, constants)).share));
          expect(rank([...loads, load('iron', more)])).toBeGreaterThanOrEqual(rank(loads));
        },
      ),
      { seed: SEED },
    );
  });

  it('a larger post never fits worse', () => {
    fc.assert(
      fc.property(anyVan, someLoads, (van, loads) => {
        const { figures, constants } = inVan(van);
        const ranks = [6, 10, 16, 32].map((amps) =>
          RANK.indexOf(loadVerdict(tightest(limitsOf(loads, amps, figures, constants)).share)),
        );
        expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
      }),
      { seed: SEED },
    );
  });

  it('what is left after switching off fits, and nothing is switched off when all fits', () => {
    fc.assert(
      fc.property(anyVan, someLoads, fc.constantFrom(6, 10, 16), (van, loads, amps) => {
        const context = inVan(van);
        const off = toSwitchOff(loads, amps, context);
        if (off === null) return;
        const on = loads.filter((each) => !off.includes(each));
        const verdict = (list: readonly Load[]) =>
          loadVerdict(tightest(limitsOf(list, amps, context.figures, context.constants)).share);
        expect(verdict(on)).toBe('fits');
        if (verdict(loads) === 'fits') expect(off).toEqual([]);
      }),
      { seed: SEED },
    );
  });

  it('offers at most four sets, the most missed first, none within another', () => {
    for (const van of vanIds) {
      for (const amps of [6, 10, 16]) {
        const sets = largestSets([], amps, inVan(van));
        expect(sets.length).toBeLessThanOrEqual(4);
        for (const set of sets)
          for (const other of sets) expect(set !== other && set.every((name) => other.includes(name))).toBe(false);
      }
    }
    expect(largestSets([], 10, inVan('dunlin'))[0]).toEqual(['heating 1,000 W', 'kettle']);
    expect(largestSets([], 6, inVan('godwit'))).toEqual([['kettle']]);
    expect(largestSets([load('heating', 1000)], 6, inVan('wren'))).toEqual([]);
  });

  it('keeps to the conventional currents at their very edge', () => {
    expect([1, 1.0000001, 1.13, 1.1300001, 1.45, 1.4500001].map(loadVerdict)).toEqual([
      'fits',
      'over',
      'over',
      'may-trip',
      'may-trip',
      'will-trip',
    ]);
    expect(loadVerdict(2300 / 230 / 10)).toBe('fits');
  });

  it('gives back the loads it stores', () => {
    fc.assert(
      fc.property(someLoads, (loads) => {
        expect(parseLoads(loads.map(loadText))).toEqual(loads);
      }),
      { seed: SEED },
    );
  });
});

describe('what always holds of gas and heat', () => {
  it('colder never gives more gas', () => {
    fc.assert(
      fc.property(
        celsius,
        positive(20),
        fc.constantFrom('propane' as const, 'butane' as const),
        fc.boolean(),
        (warm, colder, gas, hob) => {
          expect(gaugeBar(warm - colder, gas)).toBeLessThan(gaugeBar(warm, gas));
          const order = ['none', 'weak', 'fine'];
          expect(order.indexOf(butaneVerdict(warm - colder, hob, firmConstants.butaneC))).toBeLessThanOrEqual(
            order.indexOf(butaneVerdict(warm, hob, firmConstants.butaneC)),
          );
        },
      ),
      { seed: SEED },
    );
  });

  it('the temperature at a pressure has that pressure', () => {
    fc.assert(
      fc.property(celsius, (warm) => {
        expect(celsiusAtGauge(gaugeBar(warm, 'butane'), 'butane')).toBeCloseTo(warm, 6);
      }),
      { seed: SEED },
    );
  });

  it('colder outside never burns less', () => {
    const heat = (outside: number) =>
      heatingGrams({ lossWPerK: 80, liftK: 20 - outside, hours: 14, efficiency: 0.85, netKWhPerKg: 12.87 });
    fc.assert(
      fc.property(celsius, positive(10), (outside, colder) => {
        expect(heat(outside - colder)).toBeGreaterThanOrEqual(heat(outside));
      }),
      { seed: SEED },
    );
    expect(heat(25)).toBe(0);
  });

  it('a stronger heater is never slower, and never gets there only below its limit', () => {
    const van = { lossWPerK: 80, storeKWhPerK: 0.21 };
    fc.assert(
      fc.property(positive(6000), positive(2000), positive(30), (watts, more, rise) => {
        const weak = warmingMinutes({ ...van, watts }, 0, rise);
        const strong = warmingMinutes({ ...van, watts: watts + more }, 0, rise);
        if (weak !== null) expect(strong ?? Number.NaN).toBeLessThanOrEqual(weak);
        expect(weak === null).toBe(van.lossWPerK * rise >= watts);
        if (weak === null) expect(maxRiseK(watts, van.lossWPerK)).toBeLessThanOrEqual(rise);
      }),
      { seed: SEED },
    );
  });

  it('never gets there at the very limit, and just below it does', () => {
    const van = { watts: 1000, lossWPerK: 80, storeKWhPerK: 0.21 };
    expect(warmingMinutes(van, 0, 12.5)).toBeNull();
    expect(warmingMinutes(van, 0, 13)).toBeNull();
    expect(warmingMinutes(van, 0, 12.4)).toBeGreaterThan(0);
    expect(warmingMinutes(van, 12, 10)).toBe(0);
  });

  it('water heated on the way takes as long as in two goes', () => {
    fc.assert(
      fc.property(positive(50), fc.double({ min: 13, max: 59, noNaN: true }), (litres, between) => {
        const go = (fromC: number, toC: number) => waterMinutes({ litres, fromC, toC, kJPerLK: 4.19 }, 765);
        expect(go(12, between) + go(between, 60)).toBeCloseTo(go(12, 60), 6);
      }),
      { seed: SEED },
    );
    expect(mixedLitres(10, 60, 15, 60)).toBeCloseTo(10, 9);
    expect(gramsBurnt(1000, 1, firmConstants.netCalorificKWhPerKg)).toBeCloseTo(77.7, 1);
  });
});

describe('what always holds of the battery and the ramp', () => {
  it('more use never lasts longer, more sun never shorter', () => {
    fc.assert(
      fc.property(positive(200), positive(100), positive(50), positive(40), (usable, daily, more, solar) => {
        const days = (use: number, sun: number) => batteryDays(usable, use, sun) ?? Number.POSITIVE_INFINITY;
        expect(days(daily + more, solar)).toBeLessThanOrEqual(days(daily, solar));
        expect(days(daily, solar + more)).toBeGreaterThanOrEqual(days(daily, solar));
      }),
      { seed: SEED },
    );
  });

  it('Peukert gives the label at the rated current and less above it', () => {
    fc.assert(
      fc.property(positive(200), fc.double({ min: 1, max: 1.4, noNaN: true }), (capacity, k) => {
        expect(peukertHours(capacity, 20, capacity / 20, k)).toBeCloseTo(20, 6);
        expect(peukertHours(capacity, 20, capacity / 10, k)).toBeLessThanOrEqual(10 + 1e-9);
      }),
      { seed: SEED },
    );
  });

  it('a full battery has all of its usable charge, and volts rise with the charge', () => {
    const battery = { nominalAh: 100, usableShare: 0.5, ageFactor: 0.95 };
    expect(leftAh(battery, 100)).toBeCloseTo(usableAh(battery), 9);
    fc.assert(
      fc.property(
        fc.double({ min: 11, max: 13, noNaN: true }),
        positive(1),
        fc.constantFrom('flooded' as const, 'agm' as const),
        (volts, more, type) => {
          expect(percentFromVolts(volts + more, type, firmConstants.restVolts) ?? -1).toBeGreaterThanOrEqual(
            percentFromVolts(volts, type, firmConstants.restVolts) ?? Number.NaN,
          );
        },
      ),
      { seed: SEED },
    );
    expect(percentFromVolts(13.2, 'lithium', firmConstants.restVolts)).toBeNull();
  });

  it('a height has the tilt it came from, and the step is the nearest', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (degrees, baseM) => {
          expect(tiltDegrees(liftMm({ degrees, baseM }), baseM)).toBeCloseTo(degrees, 9);
        },
      ),
      { seed: SEED },
    );
    expect([0, 19, 21, 59, 61, 99, 101, 120, 121].map((mm) => nearestStep(mm, [40, 80, 120]))).toEqual([
      0,
      0,
      1,
      1,
      2,
      2,
      3,
      3,
      null,
    ]);
  });
});

describe('whatever is said', () => {
  const words = fc.array(
    fc.constantFrom(
      'kettle',
      'heating',
      'on',
      '2',
      '10',
      'amps',
      'minus',
      '-3',
      'degrees',
      'outside',
      'kids',
      'a week',
      'half a bottle',
      '0',
      'four of us',
      '1600 kg',
      '99999',
      'december',
      'tv',
      '5 hours',
      '%',
      'volts',
      '12.4',
      'gas',
      'without',
      'and',
      'the',
      'showers',
      'cpap',
      'overnight',
      'no hook up',
      '3 bikes',
      '1.5',
      'kw',
      'all',
      'only',
      '½',
    ),
    { maxLength: 10 },
  );

  it('no sum gives NaN or throws, and the same words give the same answer', () => {
    fc.assert(
      fc.property(
        anyVan,
        fc.constantFrom(...CALCULATORS.map((each) => each.topic)),
        words,
        fc.option(fc.constantFrom(0, 6, 10, 16)),
        fc.option(fc.integer({ min: 1, max: 6 })),
        fc.integer({ min: 1, max: 12 }),
        (van, topic, said, amps, people, month) => {
          const context = { ...inVan(van), amps, people, month };
          const outcome = calculate(topic, said.join(' '), null, context);
          expect(calculate(topic, said.join(' '), null, context)).toEqual(outcome);
          expect(JSON.parse(JSON.stringify(outcome))).toEqual(outcome);
          const again = calculate(topic, 'and with 4 people on 16 amps at 5 degrees', outcome.inputs, context);
          for (const each of [outcome, again]) {
            if (each.kind !== 'result') continue;
            for (const value of Object.values(each.values))
              if (typeof value === 'number') expect(Number.isFinite(value), `${topic}: ${said.join(' ')}`).toBe(true);
            expect([each.first, ...each.working].join(' ')).not.toMatch(/NaN|undefined|Infinity/);
            for (const segment of each.bar?.segments ?? []) expect(Number.isFinite(segment.amount)).toBe(true);
          }
        },
      ),
      { seed: SEED, numRuns: 1500 },
    );
  });

  it('gas that nothing burns has no end, in figures and in words', () => {
    const outcome = calculate('gas-how-long', 'how long does the gas last with no cooking', null, {
      ...inVan('plover'),
      people: 2,
    });
    expect(outcome).toMatchObject({ kind: 'result', values: { gramsPerDay: 0, days: null } });
    expect(JSON.stringify(outcome)).not.toMatch(/NaN|Infinity/);
  });

  it('each topic gives exactly its keys', () => {
    const KEYS: Readonly<Record<string, readonly string[]>> = {
      'setup-chock-height': ['mm', 'step'],
      'mains-what-can-i-run': ['availableW', 'sets'],
      'mains-can-i-run-together': ['amps', 'drop', 'limitA', 'limitedBy', 'totalW', 'verdict'],
      'dc-battery-days': ['dailyAh', 'days', 'solarAh', 'usableAh'],
      'dc-solar-keep-up': ['dailyAh', 'solarAh', 'solarWh', 'verdict'],
      'dc-cpap-overnight': ['ah', 'nights', 'verdict'],
      'gas-how-long': ['days', 'gramsPerDay'],
      'gas-butane-cold': ['gaugeBar', 'verdict'],
      'water-how-much': ['fillsPerDay', 'litresPerDay'],
      'toilet-capacity': ['days'],
      'heating-best-source': ['source', 'stepW'],
      'heating-time': ['maxC', 'maxRiseK', 'minutes', 'verdict'],
      'hotwater-time': ['minutes'],
      'hotwater-shower-length': ['litres', 'minutes'],
      'towing-noseweight': ['highKg', 'limitKg', 'lowKg', 'verdict'],
      'towing-car-match': ['ratioPercent', 'verdict'],
      'load-how-much': ['leftKg', 'verdict'],
    };
    expect(CALCULATORS.map((each) => each.topic).sort()).toEqual(Object.keys(KEYS).sort());
    for (const [topic, keys] of Object.entries(KEYS)) {
      for (const van of vanIds) {
        const text =
          '2 degrees, 5 degrees outside, 15 degrees inside, kettle, heating on 2, gas, 4 people, 2 nights, 2 bikes';
        const outcome = calculate(topic, topic === 'towing-car-match' ? 'car 1900 kg' : text, null, {
          ...inVan(van),
          amps: 16,
        });
        if (outcome.kind !== 'result') throw new Error(`${topic} in ${van}: ${JSON.stringify(outcome)}`);
        expect(Object.keys(outcome.values).sort(), `${topic} in ${van}`).toEqual(keys);
      }
    }
  });
});
