import { type Answer, type Calculator, isSet, numberOf } from './calculator.ts';
import { ASKS } from './plainly.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure } from './words.ts';

/** Millimetres across one metre of a level, or degrees, and the width they stand over. */
export type Tilt = { readonly degrees: number; readonly baseM: number };

/**
 * How far the low side has to rise.
 * height = base x 1000 x tan(degrees); 0..20 degrees. The firm's sums; the reference's T-17 takes the sine, which
 * differs by less than 0.2 % under 3 degrees.
 */
export function liftMm({ degrees, baseM }: Tilt): number {
  return baseM * 1000 * Math.tan((degrees * Math.PI) / 180);
}

/** The tilt that a height difference over a base means, in degrees: the inverse of {@link liftMm}. */
export function tiltDegrees(mm: number, baseM: number): number {
  return (Math.atan(mm / (baseM * 1000)) * 180) / Math.PI;
}

/**
 * The ramp's step nearest to a height: 1 for the first; 0 when level ground is nearer; null above the last.
 * @param stepsMm Heights of the steps, lowest first.
 */
export function nearestStep(mm: number, stepsMm: readonly number[]): number | null {
  const last = stepsMm.at(-1) ?? 0;
  if (mm > last) return null;
  const heights = [0, ...stepsMm];
  return heights.reduce(
    (best, height, step) => (Math.abs(height - mm) < Math.abs((heights[best] ?? 0) - mm) ? step : best),
    0,
  );
}

const ORDINALS = ['no', 'first', 'second', 'third', 'fourth', 'fifth'];

export const chockHeight: Calculator = {
  topic: 'setup-chock-height',
  plainly: (reading) =>
    /\b(ramps?|steps?|chocks?|level|levelling|lean\w*|tilt\w*|slop\w*|bubble|lift|blocks?|high|height)\b/.test(
      reading.text,
    ) &&
    /\b(ramps?|chocks?|blocks?|which step|what step|lean\w*|tilt\w*|slop\w*|bubble|level)\b/.test(reading.text) &&
    ASKS.test(reading.text) &&
    !/\b(outside|inside|warm|heat\w*|electric\w*|butane|water|thermostat)\b/.test(reading.text) &&
    (reading.counted.quantities.some(({ unit }) => unit === 'degrees' || unit === 'mm') ||
      /\b(which|what) step\b|\bhow (high|much higher|far up)\b|\bhow much\b.*\b(raise|lift)\b/.test(reading.text)),
  inputs: [
    {
      name: 'degrees',
      as: 'slope',
      known: 'degrees',
      least: 0,
      most: 20,
      sane: 'a pitch leans between 0 and 20 degrees; read the level card again',
      needed: (inputs) => !['mm', 'percent'].some((name) => Object.hasOwn(inputs, name)),
      ask: () => ({
        question: 'How many degrees does it lean to the low side? On the level card one ring is one degree.',
        choices: ['1 degree', '2 degrees', '3 degrees'],
      }),
    },
    { name: 'mm', as: 'mm', known: 'degrees', least: 0, most: 700, sane: 'that is more than a wheel can be lifted' },
    { name: 'metres', as: 'metres', known: 'degrees', least: 0.1, most: 10, sane: 'a level is 0.1 to 10 m long' },
    { name: 'percent', as: 'percent', known: 'percent', least: 0, most: 36, sane: 'a pitch that steep is no pitch' },
    {
      name: 'perMetre',
      as: 'flag',
      known: 'degrees',
      words: /\b(per|across|over|in|every|for each|to the|on|on a|a) (a |an |one |1 |each )?(metre|meter|m)\b/,
    },
    {
      name: 'lengthways',
      as: 'flag',
      known: 'degrees',
      words:
        /\bfront to (back|rear)\b|\bnose\b|\btail\b|\b(front|back|rear)( end)?( is| are| needs| too| sits| about| \d+| a| degrees?| and| half)* (low|lower|down|up|high|higher)\b|\bback to front\b|\blengthways\b/,
      unless: /\bside to side\b|\bsideways\b|\bleft to right\b/,
    },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures, constants } = context;
  const lengthways = isSet(inputs, 'lengthways') && figures.wheelbaseM !== undefined;
  const baseM = lengthways ? (figures.wheelbaseM ?? figures.trackM) : figures.trackM;
  const mm = heightOf(inputs, baseM);
  const step = nearestStep(mm, constants.rampStepsMm);
  const degrees = tiltDegrees(mm, baseM);
  const { comfort, fridge } = constants.levelWithinDegrees;
  const stepMm = step === null || step === 0 ? null : constants.rampStepsMm[step - 1];
  const base = lengthways ? 'wheelbase' : 'track';
  return {
    values: { mm, step },
    first:
      step === null
        ? `Too steep: the low side would have to rise ${figure(mm, 0)} mm and the ramp ends at ${figure(constants.rampStepsMm.at(-1) ?? 0)}. Choose another spot on the pitch.`
        : step === 0
          ? `Leave the ramp: the low side is only ${figure(mm, 0)} mm down.`
          : `Take the ${ORDINALS[step] ?? step} step, ${stepMm} mm: the low side has to rise ${figure(mm, 0)} mm.`,
    working: [
      `${context.vanName}'s ${base} ${figure(baseM, 2)} m x 1,000 x tan(${figure(degrees)}°) = ${figure(mm, 0)} mm.`,
      step === null
        ? `The ramp has steps of ${constants.rampStepsMm.join(', ')} mm.`
        : `That leaves ${figure(Math.abs(tiltDegrees(Math.abs(mm - (stepMm ?? 0)), baseM)))}°; under ${comfort}° is comfortable to sleep.`,
      ...(figures.gas?.fridgeGPerDay === undefined ? [] : [`The fridge wants to be within ${fridge}°.`]),
    ],
    caution:
      isSet(inputs, 'lengthways') && !lengthways
        ? 'The ramp is for side to side. Front to back comes after unhitching, with the jockey wheel. The steadies never lift.'
        : 'Handbrake on and the other wheel chocked before anybody is near the wheels. The steadies never lift.',
    bar: {
      title: 'Height under the low wheel',
      unit: 'mm',
      limit: constants.rampStepsMm.at(-1) ?? 0,
      segments: [{ label: 'needed', amount: Math.round(mm) }],
    },
  };
}

/** Height from degrees, from millimetres over a level, straight from the ground, or from a slope in per cent. */
function heightOf(inputs: Inputs, baseM: number): number {
  const degrees = numberOf(inputs, 'degrees');
  if (degrees !== null) return liftMm({ degrees, baseM });
  const percent = numberOf(inputs, 'percent');
  if (percent !== null) return percent * 10 * baseM;
  const mm = numberOf(inputs, 'mm') ?? 0;
  const overM = numberOf(inputs, 'metres') ?? (isSet(inputs, 'perMetre') ? 1 : null);
  return overM === null ? mm : (mm / overM) * baseM;
}
