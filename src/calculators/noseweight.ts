import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { ASKS } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure } from './words.ts';

export type NoseRange = { readonly lowKg: number; readonly highKg: number; readonly limitKg: number };

/** The guideline's band for a laden mass, cut at the lowest limit. `highKg` below `lowKg` means that none is left. */
export function guidelineBand(
  ladenKg: number,
  limitsKg: readonly number[],
  share: CalculatorContext['constants']['noseShare'],
): NoseRange {
  const limitKg = Math.min(...limitsKg, Number.POSITIVE_INFINITY);
  return { lowKg: ladenKg * share.low, highKg: Math.min(ladenKg * share.high, limitKg), limitKg };
}

/** From here on a plain number beside a noseweight is one, in kg. */
const LEAST_NOSE_KG = 20;

export const towingNoseweight: Calculator = {
  topic: 'towing-noseweight',
  plainly: ({ text, counted }) =>
    /\bnose ?-? ?(weight|load)\b|\b(tow ?ball|ball|hitch) weight\b|\b(on|at) the nose\b|\bgauge\b.*\b(nose|hitch|jockey|tow ?ball)\b|\b(nose|hitch|tow ?ball)\b.*\bgauge\b/.test(
      text,
    ) &&
    counted.quantities.some(({ unit, high }) => unit === 'kg' || (unit === 'bare' && high >= LEAST_NOSE_KG)) &&
    ASKS.test(text),
  inputs: [
    {
      name: 'carLimit',
      as: 'weight',
      known: 'car',
      least: 25,
      most: 350,
      words: /\b(car|cars|car's|tow ?bar|towbar's|ball|tow ?ball|limit|vehicle|max|maximum|hitch|bracket|handbook)\b/,
      unless: /\b(measured|gauge|reads|reading|weighed|we've got|now|currently|showing|scale|scales)\b/,
      sane: "a car's noseweight limit lies between 50 and 150 kg",
    },
    {
      name: 'measured',
      as: 'weight',
      known: 'things',
      least: 0,
      most: 350,
      words:
        /\b(kg|kgs|kilos?|kilograms?|kilogrammes?|measured|nose|noseweight|gauge|reads|reading|weighed|now|currently|showing|scale|scales)\b/,
      unless:
        /\b(car|cars|car's|tow ?bar|ball limit|limit|vehicle|max|maximum|bracket|handbook|bike|bikes|awning|mtplm)\b/,
      sane: 'a noseweight lies between 30 and 150 kg',
    },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const nose = context.figures.noseweight;
  if (nose === undefined)
    return {
      values: { lowKg: 0, highKg: 0, limitKg: 0, verdict: 'fits' },
      first: `${context.vanName} is not towed: it has no noseweight.`,
      working: [],
      caution: null,
      bar: null,
    };
  const car = numberOf(inputs, 'carLimit');
  const measured = numberOf(inputs, 'measured');
  const limitKg = Math.min(nose.limitKg, car ?? Number.POSITIVE_INFINITY);
  const lowKg = Math.min(nose.lowKg, limitKg);
  const highKg = Math.min(nose.highKg, limitKg);
  const over = limitKg < nose.lowKg || (measured !== null && measured > limitKg);
  const { mtplmKg } = context.figures;
  const { noseShare } = context.constants;
  const band = guidelineBand(mtplmKg, [], noseShare);
  const guideline = `${figure(noseShare.low * 100)}-${figure(noseShare.high * 100)} %`;
  const share = nose.lowKg / mtplmKg;
  return {
    values: { lowKg, highKg, limitKg, verdict: over ? 'over' : 'fits' },
    first: firstLine({ lowKg, highKg, limitKg }, nose, measured, car),
    working: [
      `${context.vanName}: aim for ${figure(nose.lowKg)}-${figure(nose.highKg)} kg, never over ${figure(nose.limitKg)} kg${car === null ? " or the car's own limit, whichever is lower" : `; your car's limit is ${figure(car)} kg`}.`,
      share < noseShare.low
        ? `${figure(nose.lowKg)} kg is ${figure(share * 100)} % of ${figure(mtplmKg)} kg: the limit of the hitch and the car comes before the ${guideline} guideline.`
        : `${guideline} of ${figure(mtplmKg)} kg, the guideline, would be ${figure(band.lowKg, 0)}-${figure(band.highKg, 0)} kg.`,
    ],
    caution:
      measured !== null && measured < nose.lowKg
        ? 'Too light a nose makes it snake: move heavy things forward, low and near the axle.'
        : 'Move heavy things to change it, low and near the axle. The plates of car and van decide.',
    bar: {
      title: 'Noseweight',
      unit: 'kg',
      limit: limitKg,
      segments: [{ label: measured === null ? 'aim' : 'measured', amount: measured ?? highKg }],
    },
  };
}

function firstLine(range: NoseRange, nose: NoseRange, measured: number | null, car: number | null): string {
  if (range.limitKg < nose.lowKg)
    return `By these figures your car cannot carry it: its limit of ${figure(range.limitKg)} kg is under the ${figure(nose.lowKg)} kg the van wants.`;
  if (measured === null)
    return `Aim for ${figure(range.lowKg)}-${figure(range.highKg)} kg, never over ${figure(range.limitKg)} kg.`;
  if (measured > range.limitKg)
    return `Over: ${figure(measured)} kg is more than ${figure(range.limitKg)} kg${car !== null && car < nose.limitKg ? ", your car's limit" : ''}.`;
  if (measured > range.highKg)
    return `Nothing over at ${figure(measured)} kg, but above the ${figure(range.lowKg)}-${figure(range.highKg)} kg to aim for.`;
  if (measured < range.lowKg)
    return `Not over, but light: ${figure(measured)} kg where ${figure(range.lowKg)}-${figure(range.highKg)} kg is wanted.`;
  return `Good: ${figure(measured)} kg lies within ${figure(range.lowKg)}-${figure(range.highKg)} kg.`;
}
