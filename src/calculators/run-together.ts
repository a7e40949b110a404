import { type Answer, type Calculator, numberOf, type Plainly } from './calculator.ts';
import { AMPS } from './common-inputs.ts';
import type { InputSpec, Reading } from './input-spec.ts';
import { type Load, parseLoads } from './kept.ts';
import { OWN_MISSED } from './lexicon.ts';
import { ASKS, ampsSaid, asksWhat, isOfSupply, mainsNamed } from './plainly.ts';
import {
  ampsOf,
  drawW,
  dropV,
  heaterW,
  isBackground,
  type Limit,
  type LoadVerdict,
  limitsOf,
  loadVerdict,
  loopOhms,
  onLimit,
  POST,
  staysOn,
  tightest,
} from './supply.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { ampsText, figure, listText, wattsText } from './words.ts';

/** What to switch off so that the post and every breaker are at or below their rating, the least missed. Empty when all fits; null when nothing helps. */
export function toSwitchOff(loads: readonly Load[], amps: number, context: CalculatorContext): readonly Load[] | null {
  const named = loads.filter((load) => !staysOn(load.key));
  let best: { readonly off: readonly Load[]; readonly missed: number; readonly watts: number } | null = null;
  for (let mask = 0; mask < 2 ** named.length; mask++) {
    const off = named.filter((_, i) => mask & (1 << i));
    const on = loads.filter((load) => !off.includes(load));
    if (loadVerdict(tightest(limitsOf(on, amps, context.figures, context.constants)).share) !== 'fits') continue;
    const missed = off.reduce((sum, load) => sum + missedOf(load, context), 0);
    const watts = off.reduce((sum, load) => sum + drawW(load), 0);
    if (best === null || missed < best.missed || (missed === best.missed && watts < best.watts))
      best = { off, missed, watts };
  }
  return best?.off ?? null;
}

function missedOf(load: Load, context: CalculatorContext): number {
  const { loads } = context.figures.mains;
  if (load.key === 'heating') return loads[`heating-${load.watts}`]?.missed ?? OWN_MISSED;
  return loads[load.key]?.missed ?? OWN_MISSED;
}

/** The highest lower step of the heating with which the rest fits; null when there is none. */
export function lowerStepW(loads: readonly Load[], amps: number, context: CalculatorContext): number | null {
  const heating = loads.find((load) => load.key === 'heating');
  if (heating?.watts === undefined || heating.watts === null) return null;
  const lower = context.figures.mains.heatingStepsW.filter((watts) => watts < (heating.watts ?? 0)).reverse();
  const fits = (watts: number) => {
    const with_ = loads.map((load) => (load === heating ? { ...load, watts } : load));
    return loadVerdict(tightest(limitsOf(with_, amps, context.figures, context.constants)).share) === 'fits';
  };
  return lower.find(fits) ?? null;
}

const MOST_NAMED = 10;

export const APPLIANCES: InputSpec = {
  name: 'appliances',
  as: 'appliances',
  known: 'appliances',
  ask: (context) => ({
    question: 'Which things do you want on at the same time?',
    choices: [
      ...new Set([
        ...(Object.keys(context.figures.mains.loads).includes('kettle') ? ['Kettle'] : []),
        'Hair dryer',
        'Heating and kettle',
        'Kettle and toaster',
      ]),
    ],
  }),
};

/** Asked only when a named thing's draw cannot be known from the van: a step of the heating, or a plate. */
export const WATTS: InputSpec = {
  name: 'watts',
  as: 'ampHours',
  known: 'watts',
  needed: (inputs) => parseLoads(inputs['appliances']).some((load) => load.watts === null),
  ask: (context, inputs) => {
    const open = parseLoads(inputs['appliances']).find((load) => load.watts === null);
    const usual = context.constants.things[open?.key ?? '']?.watts;
    if (open?.key !== 'heating')
      return {
        question: `How many watts does the ${open?.name ?? 'thing'} draw? It stands on its plate.`,
        choices: usual === undefined ? [] : [`About ${wattsText(usual)}`],
      };
    const steps = context.figures.mains.heatingStepsW;
    if (steps.length === 0)
      return { question: 'How many watts does the heater draw? It stands on its plate.', choices: [] };
    return { question: 'On which step is the heating?', choices: [...steps.map(wattsText), 'On gas'] };
  },
};

const TOGETHER =
  /\b(together|(the )?same time|at once|both|while|whilst|simultaneously|on top of|along ?with|alongside|at the same)\b/;
/** From here on two things said with a mere 'and' are a load, and not the lights and the television. */
const LEAST_HEAVY_W = 600;

/** Things named and the post's rating, or several things at one time, with a question. */
const plainly: Plainly = (reading) => {
  const { text } = reading;
  if (asksWhat(reading) || !isOfSupply(reading) || NOT_TOGETHER.test(text)) return false;
  const named = mainsNamed(reading);
  if (named.length === 0 || (!ASKS.test(text) && named.length === 1)) return false;
  if (
    named.every(({ appliance: { key } }) => key === 'heating' || key.startsWith('own-')) &&
    (WHICH_HEAT.test(text) || isOfWarmth(reading))
  )
    return false;
  if ((ampsSaid(reading) ?? 0) !== 0) return true;
  if (named.length === 1 || !ASKS.test(text)) return false;
  if (TOGETHER.test(text)) return true;
  const watts = named.reduce((sum, { appliance, watts: said }) => sum + (said ?? appliance.watts ?? LEAST_HEAVY_W), 0);
  return watts >= LEAST_HEAVY_W && !MAY_WE.test(text);
};

function isOfWarmth({ counted }: Reading): boolean {
  return counted.quantities.some(({ unit }) => unit === 'degrees' || unit === 'celsius');
}

/** What may be brought is a rule of the firm's. */
const MAY_WE = /\b(permit\w*|allowed|forbid\w*|bring|brought|take with)\b/;
/** With nothing but the heating named, which heat to choose. */
const WHICH_HEAT = /\b(better|best|cheaper|which|what|heat with|instead)\b/;

/** A choice between fuels, a place, a weight or a way of doing it. */
const NOT_TOGETHER =
  /\b(gas|electric\w*|leccy)( heating| heat| heater| fire| one)? or( the| on)? (gas|electric\w*|leccy)\b|\b(where|how (do|to)|kg|kilos?|weigh\w*|heavy|load|litres?)\b/;

export const runTogether: Calculator = {
  topic: 'mains-can-i-run-together',
  plainly,
  inputs: [
    { ...APPLIANCES, needed: (inputs) => parseLoads(inputs['appliances']).length === 0 },
    WATTS,
    AMPS,
    { name: 'inverter', as: 'flag', known: 'appliances', words: /\b(inverter|invertor)\b/ },
  ],
  answer,
};

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { figures, constants } = context;
  const loads = parseLoads(inputs['appliances']).slice(0, MOST_NAMED);
  const amps = numberOf(inputs, 'amps') ?? 0;
  const inverterW = figures.mains.inverterW;
  if (inverterW !== undefined && (inputs['inverter'] === true || amps === 0))
    return onInverter(loads, inverterW, context);
  const limits = limitsOf(loads, amps, figures, constants);
  const limit = tightest(limits);
  const totalW = limits[0]?.usedW ?? 0;
  const total = ampsOf(totalW, constants.volts);
  const verdict = loadVerdict(limit.share);
  const off =
    verdict === 'fits' ? [] : (toSwitchOff(loads, amps, context) ?? loads.filter((load) => !staysOn(load.key)));
  const named = loads.filter((load) => !isBackground(load.key));
  const here = onLimit(limit, loads, figures);
  return {
    values: {
      totalW,
      amps: total,
      limitA: limit.amps,
      limitedBy: limit.id,
      drop: off.map((load) => load.name),
      verdict,
    },
    first: firstLine(verdict, totalW, total, limit, context),
    working: [
      `${[...named.map(loadLine), `fridge and charger ${wattsText(figures.mains.backgroundW)}`].join(' + ')} = ${wattsText(totalW)}, ${ampsText(total)}.`,
      limitLine(limit, context),
      adviceLine(verdict, loads, off, amps, context),
    ].filter((line) => line !== ''),
    caution: cautionFor(loads, total, verdict, context),
    bar: {
      title: limit.id === POST ? 'On the post' : `On ${limit.name}`,
      unit: 'W',
      limit: limit.amps * constants.volts,
      segments: [
        ...(here.backgroundW > 0 ? [{ label: 'fridge and charger', amount: here.backgroundW }] : []),
        ...here.loads.map((load) => ({ label: load.name, amount: drawW(load) })),
      ],
    },
  };
}

function firstLine(
  verdict: LoadVerdict,
  totalW: number,
  total: number,
  limit: Limit,
  context: CalculatorContext,
): string {
  const sum = `${wattsText(totalW)}, ${ampsText(total)} in all`;
  if (limit.amps === 0) return `No: without a hook-up the mains sockets are dead, and this would need ${sum}.`;
  const ratedW = wattsText(limit.amps * context.constants.volts);
  const rating =
    limit.id === POST
      ? `the post's ${figure(limit.amps)} A (${ratedW})`
      : `the ${figure(limit.amps)} A (${ratedW}) of ${limit.name}`;
  const load = limit.id === POST ? sum : `${sum}, of which ${wattsText(limit.usedW)} on one breaker,`;
  switch (verdict) {
    case 'fits':
      return `Yes, that fits: ${sum}, within ${rating}.`;
    case 'over':
      return `Just over: ${load} against ${rating}. It may hold, but plan for less.`;
    case 'may-trip':
      return `No: ${load} is over ${rating} and may trip it.`;
    case 'will-trip':
      return `No: ${load} is far over ${rating} and will trip it.`;
  }
}

function adviceLine(
  verdict: LoadVerdict,
  loads: readonly Load[],
  off: readonly Load[],
  amps: number,
  context: CalculatorContext,
): string {
  const { constants } = context;
  if (amps === 0) return '';
  if (verdict === 'fits') {
    const usedW = limitsOf(loads, amps, context.figures, constants)[0]?.usedW ?? 0;
    return `${wattsText(Math.max(0, amps * constants.volts - usedW))} is left on the post.`;
  }
  const step = lowerStepW(loads, amps, context);
  const never = off.filter((load) => !fitsAlone(load, amps, context));
  if (never.length > 0 && step === null) return neverLine(never, off, context);
  const rest =
    off.length === 0 ? '' : `Leave the ${listText(off.map((load) => load.name))} off${offSuffix(off, loads)}`;
  const down = step === null ? '' : `the heating down to ${wattsText(step)}`;
  if (rest === '') return down === '' ? '' : `Turn ${down}.`;
  return down === '' || off.some((load) => load.key === 'heating' && off.length > 1)
    ? `${rest}.`
    : `${rest}, or turn ${down}.`;
}

/** Whether a load runs on this post with nothing but the background beside it. */
function fitsAlone(load: Load, amps: number, { figures, constants }: CalculatorContext): boolean {
  return loadVerdict(tightest(limitsOf([load], amps, figures, constants)).share) === 'fits';
}

/** Some of what is to be left off does not wait for its turn: it never fits here. */
function neverLine(never: readonly Load[], off: readonly Load[], context: CalculatorContext): string {
  const others = off.filter((load) => !never.includes(load));
  const first = `Leave the ${listText(never.map((load) => load.name))} off: ${wattsText(Math.max(...never.map(drawW)))} never fits here, whatever else is off.`;
  const gas = context.figures.heating.sources.some((source) => source.kind === 'gas');
  const heat = never.some((load) => load.key === 'heating') && gas ? ' Heat with gas.' : '';
  const rest = others.length === 0 ? '' : ` Leave the ${listText(others.map((load) => load.name))} off too.`;
  return `${first}${heat}${rest}`;
}

/** What is left on may be done in time, but heating is not. */
function offSuffix(off: readonly Load[], loads: readonly Load[]): string {
  const others = loads.filter((load) => !isBackground(load.key) && !off.includes(load));
  if (off.length !== 1 || others.length === 0) return '';
  return others.some((load) => load.key === 'heating') ? ' while the heating is on' : ' until the others are done';
}

function cautionFor(loads: readonly Load[], total: number, verdict: string, context: CalculatorContext): string | null {
  const { volts, voltsLow, lead } = context.constants;
  if (loads.some((load) => load.key === 'fan-heater'))
    return "Heaters of your own are not allowed on the van's sockets.";
  if (loads.some((load) => load.key === 'heating' && isElement(load, context)) && verdict === 'fits') {
    const heating = loads.find((load) => load.key === 'heating')?.watts ?? 0;
    const lost = dropV(loopOhms(lead.metres, lead.ohmPerKm), total);
    const gives = (postV: number) => wattsText(Math.round(heaterW(heating, volts, postV - lost) / 10) * 10);
    return `Unroll the lead wholly. It takes ${figure(lost)} V, so the heater gives about ${gives(volts)}; on a post at ${figure(voltsLow, 0)} V, the lowest allowed, ${gives(voltsLow)}.`;
  }
  return verdict === 'fits'
    ? null
    : 'If the post has gone off: switch things off first, then reset it once, or ask the site.';
}

/** Whether the heating named is electric heat, and not the fan of a diesel heater. */
function isElement({ watts }: Load, { figures }: CalculatorContext): boolean {
  return watts !== null && figures.mains.heatingStepsW.includes(watts);
}

function onInverter(loads: readonly Load[], inverterW: number, context: CalculatorContext): Answer {
  const { volts } = context.constants;
  const named = loads.filter((load) => !isBackground(load.key));
  const totalW = named.reduce((sum, load) => sum + drawW(load), 0);
  const verdict = loadVerdict(totalW / inverterW);
  const off = verdict === 'fits' ? [] : named.filter((load) => drawW(load) > inverterW || totalW > inverterW);
  return {
    values: {
      totalW,
      amps: ampsOf(totalW, volts),
      limitA: ampsOf(inverterW, volts),
      limitedBy: 'inverter',
      drop: off.map((load) => load.name),
      verdict,
    },
    first:
      verdict === 'fits'
        ? `Yes, on the inverter socket: ${wattsText(totalW)} of its ${wattsText(inverterW)}.`
        : `No: off hook-up only the inverter socket works, and ${wattsText(totalW)} is over its ${wattsText(inverterW)}.`,
    working: [
      `${named.map((load) => `${load.name} ${wattsText(drawW(load))}`).join(' + ')} = ${wattsText(totalW)}.`,
      'It runs on the battery: switch the inverter off when you are done.',
    ],
    caution: 'Never the kettle, toaster, hair dryer or iron on the inverter.',
    bar: {
      title: 'On the inverter',
      unit: 'W',
      limit: inverterW,
      segments: named.map((load) => ({ label: load.name, amount: drawW(load) })),
    },
  };
}

function loadLine(load: Load): string {
  return `${load.name}${load.count > 1 ? ` x ${load.count}` : ''} ${wattsText(drawW(load))}`;
}

function limitLine(limit: Limit, context: CalculatorContext): string {
  const { volts } = context.constants;
  if (limit.amps === 0) return '';
  if (limit.id === POST)
    return `The post: ${figure(limit.amps)} A x ${figure(volts)} V = ${wattsText(limit.amps * volts)}.`;
  return `${capital(limit.name)} carries ${figure(limit.amps)} A; these put ${ampsText(ampsOf(limit.usedW, volts))} on it.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
