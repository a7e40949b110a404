import { type Answer, ASKS_HOW_SOON, type Calculator, numberOf, textOf } from './calculator.ts';
import { AMPS_IF_KNOWN, coldWaterC, MONTH } from './common-inputs.ts';
import { both } from './plainly.ts';
import { onPost, type Source, sourcesOf, usualGas } from './sources.ts';
import type { Bar, CalculatorContext, Inputs } from './types.ts';
import { rounded, WATTS_PER_KILOWATT } from './units.ts';
import { type Tank, waterKWh, waterMinutes } from './water-heat.ts';
import { figure, listText, minutesText, wattsText } from './words.ts';

/** How hot the van's tank gets in the end and what a tap calls hot, in degrees Celsius; a heater that stops sooner decides. */
export function hotC({ constants }: Pick<CalculatorContext, 'constants'>, hotWater: Pick<HotWater, 'maxC'>): number {
  return Math.min(constants.hotC, hotWater.maxC);
}

const heatersOf = (context: CalculatorContext) => context.figures.hotWater?.sources ?? [];

export const hotWaterTime: Calculator = {
  topic: 'hotwater-time',
  subject: {
    named:
      /\b(hot water|water('s| is| to get| gets| be)? (hot|warm|ready)|water heater|(heat|warm)(ing)?( up)? the water)\b/,
    asks: ASKS_HOW_SOON,
  },
  plainly: both(
    /\b(hot water|water('s| is| to get| gets| be)? (hot|warm|ready)|water heater|(heat|warm)(ing)?( up)? the water)\b|\bwater\b.*\b(heat|warm|hot|ready)\b|\bwater( \w+){0,3} (get|gets|reach|come|comes)( up)?( to)? \d/,
    ASKS_HOW_SOON,
    /(?<!\b(before|until|till|when) (we|i|you|they|anyone)\b.*)\bshowers?\b|\b(goes cold|gone|run out|runs out|fridge|van)\b|\bgas\b.*\bcook\w*|\bcook\w*.*\bgas\b/,
  ),
  inputs: [
    {
      name: 'source',
      as: 'source',
      known: 'source',
      words: /engine/,
      sources: heatersOf,
      fill: (context) => (context.amps === 0 ? assumed(0, context) : null),
      needed: (inputs, context) => assumed(numberOf(inputs, 'amps'), context) === null && heatersOf(context).length > 0,
      ask: (context) => ({
        question: 'What heats it?',
        choices: [
          ...heatersOf(context).map((source) => source.name),
          ...(heatersOf(context).some((source) => source.kind === 'gas') ? ['Both gas and electric'] : []),
        ],
      }),
    },
    AMPS_IF_KNOWN,
    MONTH,
    { name: 'from', as: 'from', known: 'degrees', least: 0, most: 60, sane: 'cold water has 0 to 60 degrees Celsius' },
    {
      name: 'target',
      as: 'target',
      known: 'degrees',
      least: 30,
      most: 80,
      sane: 'the heater stops at 60 to 70 degrees Celsius',
    },
  ],
  answer,
};

/** The heater that is meant when none is said: the only one, or gas where there is no hook-up. Null when it cannot be told. */
function assumed(amps: number | null, context: CalculatorContext): string | null {
  const all = heatersOf(context);
  const { engineMinutes } = context.figures.hotWater ?? {};
  const gas = all.filter((source) => source.kind === 'gas');
  if (amps === 0)
    return usualGas(gas, context.constants.usualGasW)?.id ?? (engineMinutes === undefined ? null : 'engine');
  return all.length === 1 ? (all[0]?.id ?? null) : null;
}

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { hotWater } = context.figures;
  if (hotWater === undefined) {
    return {
      values: { minutes: null },
      first: `${context.vanName} has no water heater: warm water in a pan or the kettle.`,
      working: [],
      caution: null,
      bar: null,
    };
  }
  const setting = textOf(inputs, 'source') ?? assumed(numberOf(inputs, 'amps'), context) ?? '';
  const month = numberOf(inputs, 'month') ?? context.month;
  const fromC = numberOf(inputs, 'from') ?? coldWaterC(month, context);
  const most = hotWater.maxC;
  const { heatStartMinutes, waterHeatKJPerLK } = context.constants;
  const tankTo = (target: number): Tank => ({
    litres: hotWater.litres,
    fromC,
    toC: target,
    kJPerLK: waterHeatKJPerLK,
  });
  if (setting === 'engine') return byEngine(hotWater.engineMinutes ?? 1, tankTo(hotC(context, hotWater)));
  const used = sourcesOf(setting, hotWater.sources);
  const wanted = numberOf(inputs, 'target');
  const toC = Math.min(wanted ?? hotC(context, hotWater), most);
  const usefulW = used.reduce((sum, source) => sum + source.watts * efficiencyOf(source, hotWater), 0);
  const minutesTo = (target: number) => waterMinutes(tankTo(target), usefulW) + heatStartMinutes;
  const minutes = minutesTo(toC);
  const furtherLine = (reached: number) =>
    wanted === null && reached < most
      ? `It goes on to about ${figure(most)}°, ${minutesText(minutesTo(most))} in all.`
      : '';
  return {
    values: { minutes },
    first: onPost(
      `About ${minutesText(minutes)} to ${figure(toC)}° with ${listText(used.map((source) => source.name))}.`,
      used,
      numberOf(inputs, 'amps'),
      context,
    ),
    working: [
      `${figure(hotWater.litres)} L x ${figure(waterHeatKJPerLK, 2)} x (${figure(toC)} - ${figure(fromC)}) K / ${used.map((source) => `(${wattsText(source.watts)} x ${figure(efficiencyOf(source, hotWater), 2)})`).join(' + ')} = ${figure(minutes - heatStartMinutes, 0)} min, and ${figure(heatStartMinutes)} to start.`,
      wanted !== null && wanted > most ? `The heater stops at ${figure(most)}°.` : furtherLine(toC),
      quickest(used, hotWater.sources),
    ].filter((line) => line !== ''),
    caution:
      toC >= context.constants.hotC
        ? `Water at ${figure(toC)}° scalds in seconds, children sooner: mix it before anybody gets under it.`
        : null,
    bar: onThePost(used, numberOf(inputs, 'amps'), context) ?? heatBar(tankTo(toC), usefulW),
  };
}

/** Electric heat against the post's rating; null where none is used or the rating is not known. */
function onThePost(
  used: readonly Source[],
  amps: number | null,
  { figures, constants }: CalculatorContext,
): Bar | null {
  const electric = used.filter(({ kind }) => kind === 'electric');
  if (electric.length === 0 || amps === null || amps === 0) return null;
  return {
    title: 'On the post',
    unit: 'W',
    limit: amps * constants.volts,
    segments: [
      { label: 'fridge and charger', amount: figures.mains.backgroundW },
      ...electric.map(({ watts }) => ({ label: 'water heater', amount: watts })),
    ],
  };
}

/** The heat a tank takes against what the heater puts into it in an hour. */
function heatBar(tank: Tank, usefulW: number): Bar {
  return {
    title: 'Heat of one hour',
    unit: 'kWh',
    limit: rounded(usefulW / WATTS_PER_KILOWATT, 2),
    segments: [{ label: 'a tank of water', amount: rounded(waterKWh(tank), 2) }],
  };
}

function byEngine(minutes: number, tank: Tank): Answer {
  return {
    values: { minutes },
    first: `About ${figure(minutes)} minutes' driving: the engine warms it.`,
    working: ['Off hook-up and parked there is no other way but a pan or the kettle on the hob.'],
    caution: 'Do not run the engine just for this on a pitch.',
    bar: heatBar(tank, (waterKWh(tank) * WATTS_PER_KILOWATT * 60) / minutes),
  };
}

type HotWater = NonNullable<CalculatorContext['figures']['hotWater']>;

function efficiencyOf(source: Source, { efficiencyElectric, efficiencyGas }: HotWater): number {
  return source.kind === 'electric' ? efficiencyElectric : efficiencyGas;
}

function quickest(used: readonly Source[], all: readonly Source[]): string {
  const kinds = new Set(all.map((source) => source.kind));
  return used.length === 1 && kinds.size > 1 ? 'Gas and electric together are quickest.' : '';
}
