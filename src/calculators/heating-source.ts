import { type Answer, type Calculator, numberOf } from './calculator.ts';
import { AMPS, OUTSIDE } from './common-inputs.ts';
import { type Load, parseLoads } from './kept.ts';
import { both } from './plainly.ts';
import { usualGas } from './sources.ts';
import { drawW, isBackground, limitsOf, loadVerdict, tightest } from './supply.ts';
import type { Bar, CalculatorContext, Inputs } from './types.ts';
import { maxRiseK } from './warming.ts';
import { figure, listText, wattsText } from './words.ts';

export type HeatSource = 'electric' | 'gas' | 'diesel' | 'mix';

const isDiesel = (context: CalculatorContext) =>
  context.figures.heating.sources.some((source) => source.kind === 'diesel');

export const heatingBestSource: Calculator = {
  topic: 'heating-best-source',
  plainly: both(
    /\b(what|which|how) (should|do|shall|can|would) (we|i|you) heat( the van| it)? (with|by|on)\b|\bwhich (electric |heating |heater )?(step|setting)\b|\b(gas|electric\w*|leccy|diesel|hook ?-? ?up|mains)( heating| heat| heater| fire| one)? ?(or|versus|vs|over|\/|rather than|instead of)( the| on| by| with)? (gas|electric\w*|leccy|diesel|hook ?-? ?up|mains)\b/,
    /\b(heat|heats|heating|heater|warm|warming|warmth|room)\b/,
    /\b(hot water|water|ramps?|lean\w*|fridge|how long|lasts?|cheaper|doesn't|not working)\b/,
  ),
  inputs: [
    { ...AMPS, needed: (_, context) => !isDiesel(context) },
    OUTSIDE,
    { name: 'appliances', as: 'appliances', known: 'appliances' },
  ],
  answer,
};

/** The highest step of the electric heating that post and breaker carry beside what else is on, in watts; 0 for none. */
export function largestStepW(amps: number, on: readonly Load[], context: CalculatorContext): number {
  const fits = (watts: number) => {
    const heating: Load = { key: 'heating', name: 'heating', watts, count: 1, hours: null };
    return loadVerdict(tightest(limitsOf([...on, heating], amps, context.figures, context.constants)).share) === 'fits';
  };
  return [...context.figures.mains.heatingStepsW].reverse().find(fits) ?? 0;
}

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures, constants } = context;
  const amps = numberOf(inputs, 'amps') ?? 0;
  const outside = numberOf(inputs, 'outside');
  const on = parseLoads(inputs['appliances']).filter((load) => load.key !== 'heating' && !isBackground(load.key));
  const onW = on.reduce((sum, load) => sum + drawW(load), 0);
  if (isDiesel(context)) return diesel(outside, context);
  const stepW = largestStepW(amps, on, context);
  const cold = outside !== null && outside < constants.addGasBelowC;
  const source: HeatSource = stepW === 0 ? 'gas' : cold ? 'mix' : 'electric';
  const freeW = Math.max(0, amps * constants.volts - figures.mains.backgroundW - onW);
  const rise = maxRiseK(stepW, figures.heating.lossWPerK);
  const needW =
    outside === null ? null : figures.heating.lossWPerK * Math.max(0, context.constants.usual.insideC - outside);
  const safeStep = wattsText(constants.safeStepW);
  return {
    values: { source, stepW },
    first: FIRST[source](wattsText(stepW), amps),
    working: [
      amps === 0
        ? 'There is no hook-up.'
        : `${figure(amps)} A x ${figure(constants.volts)} V less ${wattsText(figures.mains.backgroundW)} for fridge and charger${onW > 0 ? ` and ${wattsText(onW)} for the ${listText(on.map((load) => load.name))}` : ''} leaves ${wattsText(freeW)}.`,
      stepW === 0
        ? ''
        : `${wattsText(stepW)} holds about ${figure(rise, 0)}° above outside.${outside === null ? '' : ` At ${figure(outside)}° outside, ${context.constants.usual.insideC}° takes ${wattsText(needW ?? 0)}.`}`,
      stepW === 0 ? '' : `${wattsText(Math.max(0, freeW - stepW))} is left: ${leaveOff(freeW - stepW, on, context)}`,
    ].filter((line) => line !== ''),
    caution:
      stepW >= context.constants.goodSupplyW
        ? `${wattsText(stepW)} of heating wants a good 16 A supply; on an old site ${safeStep} is the safe step.`
        : source === 'electric' && outside === null
          ? `Below about ${figure(constants.addGasBelowC)}° outside add gas. On an old site ${safeStep} is the safe step.`
          : 'Vents stay open, whatever heats.',
    bar:
      amps === 0
        ? heatBar(gasW(context), outside, context)
        : {
            title: 'On the post',
            unit: 'W',
            limit: amps * constants.volts,
            segments: [
              { label: 'fridge and charger', amount: figures.mains.backgroundW },
              ...on.map((load) => ({ label: load.name, amount: drawW(load) })),
              { label: 'heating', amount: stepW },
            ],
          },
  };
}

const FIRST: Readonly<Record<Exclude<HeatSource, 'diesel'>, (step: string, amps: number) => string>> = {
  electric: (step, amps) =>
    `Electric, on the ${step} step: that is what ${figure(amps)} amps carries, and it saves gas.`,
  mix: (step) => `Both: electric on the ${step} step and gas with it, as it is cold.`,
  gas: (_, amps) =>
    amps === 0
      ? 'Gas: there is no hook-up for electric heating.'
      : `Gas: no step of the electric heating fits on ${figure(amps)} amps.`,
};

function leaveOff(spareW: number, on: readonly Load[], context: CalculatorContext): string {
  const large = Object.entries(context.figures.mains.loads)
    .filter(
      ([id, load]) =>
        !id.startsWith('heating-') && !isBackground(id) && load.watts > spareW && !on.some((other) => other.key === id),
    )
    .map(([, load]) => load.name.replace(/^low-watt /, ''));
  return large.length === 0
    ? 'everything else of the van fits one at a time.'
    : `turn it down before you use the ${listText(large)}.`;
}

/** What holds the van warm against what the heater gives; outside as said, or as it usually is that month. */
function heatBar(givesW: number, outside: number | null, { constants, figures, month }: CalculatorContext): Bar {
  const outsideC = outside ?? constants.outsideC[month - 1] ?? constants.heatsBelowC;
  const { insideC } = constants.usual;
  return {
    title: `Heat at ${figure(outsideC)}° outside`,
    unit: 'W',
    limit: givesW,
    segments: [
      { label: `${insideC}° inside`, amount: Math.round(figures.heating.lossWPerK * Math.max(0, insideC - outsideC)) },
    ],
  };
}

/** Watts of the gas heating as it is used every day. */
function gasW({ figures, constants }: CalculatorContext): number {
  return (
    usualGas(
      figures.heating.sources.filter(({ kind }) => kind === 'gas'),
      constants.usualGasW,
    )?.watts ?? 0
  );
}

function diesel(outside: number | null, context: CalculatorContext): Answer {
  const source = context.figures.heating.sources.find((each) => each.kind === 'diesel');
  const watts = source?.watts ?? 0;
  return {
    values: { source: 'diesel', stepW: 0 },
    first: `Diesel, always: ${context.vanName} has no other heating, on hook-up or off.`,
    working: [
      `It gives ${wattsText(watts)}, which holds about ${figure(maxRiseK(watts, context.figures.heating.lossWPerK), 0)}° above outside.`,
      'It takes fuel from the vehicle and stops below about a quarter of a tank.',
    ],
    caution: 'Off in filling stations and anywhere enclosed. Heaters of your own are not allowed on the sockets.',
    bar: heatBar(watts, outside, context),
  };
}
