import { ampHours, fridgeAh, peukertShare, RATED_HOURS } from './battery.ts';
import { numberOf } from './calculator.ts';
import { isCold } from './common-inputs.ts';
import type { InputSpec } from './input-spec.ts';
import { type Load, parseLoads } from './kept.ts';
import { ALWAYS_ON } from './lexicon.ts';
import { WATTS } from './run-together.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { figure, listText, wattsText } from './words.ts';

/** A day's draw from the battery and how it was come by. */
export type DailyUse = {
  readonly ah: number;
  /** What it is made of. */
  readonly parts: readonly { readonly name: string; readonly ah: number }[];
  readonly says: string /** Share of the rated Ah at this current: Peukert. */;
  readonly share: number;
};

/** On as people please: nobody can tell for how long. Of the rest the usual day tells. */
const NOT_TIMED: ReadonlySet<string> = new Set([...ALWAYS_ON, 'pump', 'heating']);

/** What is named, runs as long as people like, and has no hours said. */
function withoutHours(inputs: Inputs): readonly Load[] {
  if (Object.hasOwn(inputs, 'dailyAh')) return [];
  const loads = parseLoads(inputs['loads']);
  return loads.some((load) => load.hours !== null) ? [] : loads.filter((load) => !NOT_TIMED.has(load.key));
}

function hoursOf(names: readonly string[]): string {
  const several = names.length > 1 || names[0]?.endsWith('s') === true;
  return `${several ? 'are' : 'is'} the ${listText(names)} on`;
}

/** The inputs that say what is drawn from the battery; hours of what is named are asked for. */
export const DAILY_USE: readonly InputSpec[] = [
  { name: 'loads', as: 'loads', known: 'appliances' },
  { name: 'mainsOnly', as: 'mainsOnly', known: 'appliances' },
  {
    ...WATTS,
    needed: (inputs) => parseLoads(inputs['loads']).some((load) => load.watts === null && load.key !== 'fridge'),
  },
  {
    name: 'hours',
    as: 'hours',
    known: 'hours',
    least: 0,
    most: 24,
    sane: 'a day has 24 hours',
    needed: (inputs) => inputs['nonstop'] !== true && inputs['usual'] !== true && withoutHours(inputs).length > 0,
    ask: (_, inputs) => ({
      question: `How many hours a day ${hoursOf(withoutHours(inputs).map((load) => load.name))}?`,
      choices: ['1 hour', '2 hours', '4 hours', 'All the time'],
    }),
  },
  {
    name: 'dailyAh',
    as: 'ampHours',
    known: 'appliances',
    least: 0,
    most: 2000,
    words: /\b(use|uses|using|day|daily|draw|draws|need)\b/,
    sane: 'no van draws so much in a day',
  },
  {
    name: 'outside',
    as: 'outside',
    known: 'outside',
    least: -30,
    most: 45,
    sane: 'out of doors it is between -30 and 45 degrees Celsius',
  },
  {
    name: 'nonstop',
    as: 'flag',
    known: 'hours',
    words:
      /\bhow many hours\b|\bhow long (can|could|will|would|do|may|might) (we|i|you) (run|watch|use|leave|keep|have|play)\b|\b(24 ?\/ ?7|non ?stop|round the clock|all the time|constantly|continuously)\b/,
  },
  { name: 'usual', as: 'flag', known: 'hours', words: /\b(usual|usually|normal|normally|ordinary|average|typical)\b/ },
  { name: 'onlyThese', as: 'flag', known: 'appliances', words: /\b(only|just|nothing (else )?but|nothing else)\b/ },
  {
    name: 'heated',
    as: 'flag',
    known: 'appliances',
    words: /\b(heat|heating|heater|blower|boiler|warm)\b/,
    unless:
      /\b(no|without|not using|not|off) (the )?(heat|heating|heater|blower)\b|\b(heating|heater|blower) (is )?off\b/,
  },
];

/** The same where the usual day does as well: no hours are asked for. */
export const DAILY_USE_IF_SAID: readonly InputSpec[] = DAILY_USE.map((spec) =>
  spec.name === 'hours' ? { ...spec, needed: () => false } : spec,
);

/**
 * What is drawn in a day, in Ah: said outright, or from loads with hours, or the van's usual day of the season.
 */
export function dailyUse(inputs: Inputs, context: CalculatorContext): DailyUse {
  const said = numberOf(inputs, 'dailyAh');
  if (said !== null)
    return { ah: said, parts: [{ name: 'use', ah: said }], says: `You use ${figure(said)} Ah a day.`, share: 1 };
  const loads = timed(inputs);
  if (loads.length > 0) return fromLoads(loads, inputs, context);
  const { battery } = context.figures;
  const month = numberOf(inputs, 'month') ?? context.month;
  if (inputs['heated'] === true || (inputs['heated'] !== false && isCold(month, context))) {
    return {
      ah: battery.coldDayAh,
      parts: [{ name: 'a usual cold day', ah: battery.coldDayAh }],
      says: `A usual cold day with the heating takes ${figure(battery.coldDayAh)} Ah.`,
      share: 1,
    };
  }
  const outside = numberOf(inputs, 'outside');
  const fridge = battery.fridgeAhPerDay;
  const more = outside === null || fridge === undefined ? 0 : fridgeAh(fridge, outside) - fridge.at20C;
  const ah = battery.summerDayAh + more;
  return {
    ah,
    parts: [{ name: 'a usual day', ah }],
    says: `A usual summer day takes ${figure(ah)} Ah${more === 0 ? '' : ` at ${figure(outside ?? 0)}°`}.`,
    share: 1,
  };
}

/** What is named and cannot run off hook-up, said; null where there is none. */
export function mainsOnlyLine(inputs: Inputs, { figures, vanName }: CalculatorContext): string | null {
  const names = inputs['mainsOnly'];
  if (!Array.isArray(names) || names.length === 0) return null;
  const { inverterW } = figures.mains;
  const why =
    inverterW === undefined
      ? `${vanName} has no inverter`
      : `the inverter socket gives ${wattsText(inverterW)} at most`;
  return `The ${listText(names)} cannot run off hook-up: ${why}.`;
}

/** The loads with their hours; none when no hours were said of any. */
function timed(inputs: Inputs): readonly (Load & { readonly hours: number })[] {
  const loads = parseLoads(inputs['loads']);
  const hours = inputs['nonstop'] === true ? 24 : numberOf(inputs, 'hours');
  const always = (load: Load) => ALWAYS_ON.has(load.key);
  const onlyAlways = inputs['onlyThese'] === true && loads.some(always);
  if (hours === null && !onlyAlways && loads.every((load) => load.hours === null)) return [];
  return loads.flatMap((load) => {
    const mine = load.hours ?? (always(load) ? 24 : hours);
    return mine === null ? [] : [{ ...load, hours: mine }];
  });
}

function fromLoads(
  loads: readonly (Load & { readonly hours: number })[],
  inputs: Inputs,
  context: CalculatorContext,
): DailyUse {
  const { battery } = context.figures;
  const { batteryVolts, peukert, peukertFromTimes } = context.constants;
  const parts = loads.map((load) => ({ load, ah: loadAh(load, inputs, context) }));
  const ah = parts.reduce((sum, part) => sum + part.ah, 0);
  const amps = loads.reduce((sum, load) => sum + ((load.watts ?? 0) * load.count) / batteryVolts, 0);
  const fast = amps > (peukertFromTimes * battery.nominalAh) / RATED_HOURS;
  return {
    ah,
    parts: parts.map(({ load, ah: each }) => ({ name: load.name, ah: each })),
    says: `${parts.map(({ load, ah: each }) => `${load.name}${load.count > 1 ? ` x ${load.count}` : ''} ${figure(load.hours)} h: ${figure(each)} Ah`).join(', ')}; ${figure(ah)} Ah a day, and nothing else.`,
    share: fast ? peukertShare(battery.nominalAh, amps, peukert[battery.type]) : 1,
  };
}

function loadAh(load: Load & { readonly hours: number }, inputs: Inputs, context: CalculatorContext): number {
  const { battery } = context.figures;
  if (load.key === 'fridge' && load.watts === null && battery.fridgeAhPerDay !== undefined) {
    const outside = numberOf(inputs, 'outside');
    const perDay = outside === null ? battery.fridgeAhPerDay.at20C : fridgeAh(battery.fridgeAhPerDay, outside);
    return perDay * (load.hours / 24);
  }
  const watts = (load.watts ?? 0) * load.count;
  return needsInverter(load, context)
    ? inverterAh(watts, load.hours, context)
    : ampHours(watts, load.hours, context.constants.batteryVolts);
}

/** What has a mains plug and runs off hook-up only through the inverter; phones and breathing machines have leads of their own. */
function needsInverter(load: Load, context: CalculatorContext): boolean {
  const { battery } = context.figures;
  if (battery.inverterEfficiency === undefined || Object.hasOwn(battery.loadsW, load.key)) return false;
  return Object.hasOwn(context.constants.things, load.key) && load.key !== 'phone';
}

/** Ah through the inverter: the load over its efficiency, and what it takes just being on. */
export function inverterAh(watts: number, hours: number, { figures, constants }: CalculatorContext): number {
  const { inverterEfficiency = 1, loadsW } = figures.battery;
  return ampHours(watts / inverterEfficiency + (loadsW['inverter-idle'] ?? 0), hours, constants.batteryVolts);
}
