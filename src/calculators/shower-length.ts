import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { coldWaterC, MONTH, PEOPLE_IF_KNOWN } from './common-inputs.ts';
import { hotC } from './hot-water-time.ts';
import { both } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { mixedLitres } from './water-heat.ts';
import { figure } from './words.ts';

/** Above this, water for bathing scalds: HSE Health Services Information Sheet 6, in degrees Celsius. */
export const SCALD_C = 44;

const { fill: _, ...people } = PEOPLE_IF_KNOWN;

export const showerLength: Calculator = {
  topic: 'hotwater-shower-length',
  subject: {
    named: /\bshowers?\b(?! water)/,
    asks: /\bhow (long|many minutes)\b|\b(minutes|duration|length)\b/,
  },
  plainly: both(
    /\bshowers?\b(?! water)/,
    /\bhow (long|many (minutes|mins))\b.*\b(tank|possible|get|gets|have|has|lasts?|before|runs?|go|stay|each|shower)\b/,
    /\b(before|when) (we|i|you|they|she|he|anyone|everyone|the kids)\b|\b(til|till|until|to heat|to warm|heat up|warm up|ready|wait|hose|often|how much water|litres)\b/,
  ),
  inputs: [
    MONTH,
    people,
    {
      name: 'target',
      as: 'target',
      known: 'degrees',
      least: 36,
      most: SCALD_C,
      sane: 'a shower is 36 to 44 degrees Celsius, and above 44 it scalds',
    },
  ],
  answer,
};

/** litres at 40 C = tank x (60 - cold) / (40 - cold) x 0.9; minutes at 5 litres a minute. */
function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { hotWater } = context.figures;
  const { showerC: usualC, showerLPerMinute } = context.constants;
  if (hotWater === undefined)
    return {
      values: { litres: 0, minutes: 0 },
      first: `${context.vanName} has no shower and cold taps only.`,
      working: [],
      caution: null,
      bar: null,
    };
  const showerC = numberOf(inputs, 'target') ?? usualC;
  const coldC = coldWaterC(numberOf(inputs, 'month') ?? context.month, context);
  const tankC = hotC(context, hotWater);
  const litres = mixedLitres(hotWater.litres, tankC, coldC, showerC) * context.constants.drawnHotShare;
  const minutes = litres / showerLPerMinute;
  const persons = numberOf(inputs, 'people') ?? 1;
  return {
    values: { litres, minutes },
    first: `About ${figure(minutes)} minutes of running water from a full hot tank.`,
    working: [
      `${figure(hotWater.litres)} L x (${figure(tankC)} - ${figure(coldC)}) / (${figure(showerC)} - ${figure(coldC)}) x ${figure(context.constants.drawnHotShare)} = ${figure(litres)} L at ${figure(showerC)}°, at ${figure(showerLPerMinute)} L a minute.`,
      persons > 1
        ? `Shared by ${figure(persons)} that is ${figure(minutes / persons)} minutes each, or a full one each with a reheat between.`
        : 'Stop the water while you soap; wait for the reheat between two people.',
    ],
    caution: `Mix it before anybody gets under it: the tank is at ${figure(tankC)}°.`,
    bar: {
      title: 'Warm water',
      unit: 'L',
      limit: Math.round(litres * 10) / 10,
      segments: [{ label: 'a minute', amount: showerLPerMinute }],
    },
  };
}
