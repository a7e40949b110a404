import { type Answer, type Calculator, numberOf } from './calculator.ts';
import type { InputSpec } from './input-spec.ts';
import { ASKS } from './plainly.ts';
import { readWeight } from './read-numbers.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure } from './words.ts';

/** The van's mass against the car's kerb weight, in per cent. */
export function ratioPercent(vanKg: number, kerbKg: number): number {
  return (vanKg / kerbKg) * 100;
}

/** The heaviest van for a kerb weight at a share: 85 % is common practice, not law. */
export function heaviestVanKg(kerbKg: number, share: number): number {
  return kerbKg * share;
}

const TOW_WORDS = /\b(tow|towing|pull|pulling|braked|train|limit|capacity|gtw)\b/;
const NOT_KERB =
  /\b(pull up|tow up to|can tow|can pull|towing (limit|capacity|weight)|tow limit|max(imum)? tow|braked|capacity|noseweight|nose|caravan weighs|van weighs|mtplm|rated to)\b/;

const KERB: InputSpec = {
  name: 'kerb',
  as: 'weight',
  known: 'car',
  least: 600,
  most: 4000,
  unless: NOT_KERB,
  worse: 'low',
  sane: "a car's kerb weight lies between 800 and 3,000 kg",
  needed: () => true,
  ask: () => ({
    question: "What is your car's kerb weight in kg? It is in its handbook, or as 'mass in service' in its papers.",
    choices: ['1,500 kg', '1,700 kg', '1,900 kg', '2,100 kg'],
  }),
};

export const towingCarMatch: Calculator = {
  topic: 'towing-car-match',
  plainly: (reading) =>
    /\b(tow|tows|towing|pull|pulls|pulling|haul|drag|kerb|curb|match|(heavy|big|strong) enough)\b/.test(reading.text) &&
    /\b(car|suv|estate|vehicle|hatchback|saloon|van|truck|pick ?up|4x4|carrier|kerb|curb)\b/.test(reading.text) &&
    !/\bnose\b|\b(tow ?ball|ball|hitch) weight\b|\bspeed\b|\bmph\b/.test(reading.text) &&
    ASKS.test(reading.text) &&
    readWeight(reading, KERB) !== null,
  inputs: [
    KERB,
    {
      name: 'towLimit',
      as: 'weight',
      known: 'car',
      least: 200,
      most: 4000,
      words: TOW_WORDS,
      unless: /\b(kerb|curb)\b/,
      worse: 'low',
      sane: "a car's towing limit lies between 500 and 3,500 kg",
    },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { mtplmKg } = context.figures;
  const { usual, most } = context.constants.carRatio;
  const kerb = numberOf(inputs, 'kerb') ?? 0;
  const towLimit = numberOf(inputs, 'towLimit');
  const limited = towLimit !== null && towLimit !== kerb ? towLimit : null;
  const percent = ratioPercent(mtplmKg, kerb);
  const pastLimit = limited !== null && limited < mtplmKg;
  const over = percent > usual * 100 || pastLimit;
  return {
    values: { ratioPercent: percent, verdict: over ? 'over' : 'fits' },
    first: pastLimit
      ? `Over: your car may tow ${figure(limited)} kg and ${context.vanName} may weigh ${figure(mtplmKg)} kg.`
      : over
        ? `Over our guideline: ${context.vanName} is ${figure(percent, 0)} % of your car's kerb weight, and we ask for ${figure(usual * 100, 0)} % or less.`
        : `It fits our guideline: ${context.vanName} is ${figure(percent, 0)} % of your car's kerb weight, and we ask for ${figure(usual * 100, 0)} % or less.`,
    working: [
      `${figure(mtplmKg)} / ${figure(kerb)} = ${figure(percent)} %.`,
      over && percent <= most * 100 && !pastLimit
        ? `Up to ${figure(most * 100, 0)} % only for experienced towers and only if we agree: ask us.`
        : `${figure(usual * 100, 0)} % of your car is ${figure(heaviestVanKg(kerb, usual), 0)} kg; the lightest car within it weighs ${figure(mtplmKg / usual, 0)} kg.`,
      "The car's own towing limit and its train weight, on its plate, come first.",
    ],
    caution:
      'The guideline is common practice; the plates and your licence decide. Most car licences in Great Britain cover trailers to 3,500 kg: check yours.',
    bar: {
      title: 'Van against car',
      unit: 'kg',
      limit: Math.round(kerb * usual),
      segments: [{ label: context.vanName, amount: mtplmKg }],
    },
  };
}
