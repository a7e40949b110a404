import type { Constants } from '../knowledge/schema.ts';
import { type Answer, type Calculator, isSet, numberOf } from './calculator.ts';
import { AMPS_IF_KNOWN, INSIDE, MONTH, OUTSIDE } from './common-inputs.ts';
import { largestStepW } from './heating-source.ts';
import { celsiusAtGauge, type Gas, gaugeBar } from './lpg.ts';
import { both } from './plainly.ts';
import type { Bar, CalculatorContext, Inputs } from './types.ts';
import { rounded } from './units.ts';
import { figure } from './words.ts';

export type GasVerdict = 'fine' | 'weak' | 'none';

/**
 * Whether butane serves at a cylinder temperature, in degrees Celsius: by the firm's sheet above 10 fine; 5-10 fine for a
 * hob, weak for a heater; 0-5 weak for anything; below 0 none. Propane works in any British weather.
 */
export function butaneVerdict(celsius: number, forHobOnly: boolean, from: Constants['butaneC']): GasVerdict {
  if (celsius > from.anything) return 'fine';
  if (celsius >= from.hob) return forHobOnly ? 'fine' : 'weak';
  return celsius >= from.weak ? 'weak' : 'none';
}

const isInside = (context: CalculatorContext) => context.figures.gas?.inside === true;

export const butaneCold: Calculator = {
  topic: 'gas-butane-cold',
  plainly: both(
    /\bbutane\b|\b(gas|bottle|cylinder)\b.*\b(freez\w*|frozen|frost\w*|minus|below zero|in the cold|cold weather|too cold)\b|\b(freez\w*|frozen|frost\w*|minus|below zero|in the cold|cold weather|too cold)\b.*\b(gas|bottle|cylinder)\b/,
    /\b(work|works|working|ok|okay|fine|good|light|lights|freez\w*|used?|manage|cope|alright|come out|give|do|boil|cook|run)\b/,
    /\b(how long|how many|lasts?|smell\w*|hiss\w*|leak\w*|swap|change|refill|where)\b/,
  ),
  inputs: [
    { ...OUTSIDE, needed: (_, context) => !isInside(context) },
    {
      ...INSIDE,
      as: 'anywhere',
      least: -30,
      most: 45,
      worse: 'low',
      sane: 'in the van it is between -30 and 45 degrees Celsius',
      needed: (_, context) => isInside(context),
    },
    MONTH,
    AMPS_IF_KNOWN,
    {
      name: 'hob',
      as: 'flag',
      known: 'type',
      words: /\b(hob|cook|cooking|kettle|stove|grill|oven|breakfast|bacon|brew|tea)\b/,
      unless: /\b(heating|heater|heat|fire|fridge)\b/,
    },
    { name: 'butane', as: 'flag', known: 'type', words: /\bbutane\b/, unless: /\bpropane\b/ },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { gas } = context.figures;
  const { butaneC, regulatorBar } = context.constants;
  const month = numberOf(inputs, 'month') ?? context.month;
  const celsius = numberOf(inputs, isInside(context) ? 'inside' : 'outside') ?? 0;
  const kind = kindOf(inputs, month, context);
  const hob = isSet(inputs, 'hob') || gas?.hobOnly === true;
  const verdict = kind === 'propane' ? 'fine' : butaneVerdict(celsius, hob, butaneC);
  const gauge = gaugeBar(celsius, kind);
  return {
    values: { gaugeBar: gauge, verdict },
    first:
      kind === 'propane'
        ? `Yes: the van has propane in this month, which works in any British weather.`
        : FIRST[verdict](celsius, hob, butaneC),
    working: [
      gauge > 0
        ? `At ${figure(celsius)}° the cylinder holds about ${figure(gauge, 2)} bar over the air outside; the regulator wants ${regulatorBar} bar, which ${kind} gives only above about ${figure(celsiusAtGauge(regulatorBar, kind))}°.`
        : `At ${figure(celsius)}° ${kind} holds no pressure over the air outside: nothing comes out.`,
      isInside(context)
        ? `${context.vanName}'s cylinder stands inside, so the van's own warmth counts.`
        : 'The locker follows the night air; a nearly empty cylinder gives up first.',
    ],
    caution:
      verdict === 'fine'
        ? 'Never warm a cylinder with anything.'
        : `Never warm a cylinder with anything.${isInside(context) ? ' Warm the van with its heater instead.' : ` Ask us for propane before a frost.${electricLine(numberOf(inputs, 'amps'), context)}`}`,
    bar: barOf(kind, celsius, hob, context),
    pass: verdict === 'none' && !warmWithoutGas(numberOf(inputs, 'amps'), context),
  };
}

/** Butane by how warm its cylinder must be, propane by the pressure that the regulator wants. */
function barOf(
  kind: Gas,
  celsius: number,
  hob: boolean,
  { constants: { butaneC, regulatorBar } }: CalculatorContext,
): Bar {
  return kind === 'butane'
    ? {
        title: 'Cylinder above freezing',
        unit: '°',
        limit: Math.max(0, celsius),
        segments: [{ label: hob ? 'the hob wants' : 'the heater wants', amount: hob ? butaneC.hob : butaneC.anything }],
      }
    : {
        title: 'Pressure in the cylinder',
        unit: 'bar',
        limit: rounded(Math.max(0, gaugeBar(celsius, kind)), 2),
        segments: [{ label: 'the regulator wants', amount: regulatorBar }],
      };
}

/**
 * Whether the van stays warm when the gas does not come: on diesel, or on electricity that this post carries. Without
 * either a frosty night wants a person.
 */
function warmWithoutGas(amps: number | null, context: CalculatorContext): boolean {
  const diesel = context.figures.heating.sources.some(({ kind }) => kind === 'diesel');
  return diesel || (amps !== null && largestStepW(amps, [], context) > 0);
}

/** Heat without gas: what this post carries, or from how many amps on it is possible. Nothing where it is not. */
function electricLine(amps: number | null, context: CalculatorContext): string {
  const carries = (rating: number) => largestStepW(rating, [], context) > 0;
  if (amps !== null) return carries(amps) ? ` On your ${figure(amps)} amps heat with electricity meanwhile.` : '';
  const least = POSTS.find(carries);
  return least === undefined ? '' : ` On ${figure(least)} amps or more heat with electricity meanwhile.`;
}

/** The ratings of a site's posts, in amps. */
const POSTS = [6, 10, 16];

function kindOf(inputs: Inputs, month: number, context: CalculatorContext): Gas {
  const { gas } = context.figures;
  if (inputs['butane'] === true) return 'butane';
  if (inputs['butane'] === false || gas === undefined) return 'propane';
  return gas.winter?.months.includes(month) === true ? gas.winter.kind : gas.kind;
}

const FIRST: Readonly<Record<GasVerdict, (celsius: number, hob: boolean, from: Constants['butaneC']) => string>> = {
  fine: (celsius, hob, from) =>
    `Yes, ${hob && celsius <= from.anything ? 'for the hob ' : ''}butane works at ${figure(celsius)}°.`,
  weak: (celsius, _, from) =>
    celsius >= from.hob
      ? `Partly: at ${figure(celsius)}° butane does for the hob but is weak for a heater after an hour.`
      : `Only weakly: at ${figure(celsius)}° butane is weak for anything.`,
  none: (celsius) => `No: at ${figure(celsius)}° butane gives no gas.`,
};
