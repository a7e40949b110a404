import { type Answer, ASKS_HOW_SOON, type Calculator, isSet, numberOf, textOf } from './calculator.ts';
import { AMPS_IF_KNOWN, INSIDE, OUTSIDE } from './common-inputs.ts';
import type { Reading } from './input-spec.ts';
import { carried, onPost, type Source, sourcesOf, usualGas } from './sources.ts';
import { temperaturesIn } from './temperatures.ts';
import type { CalculatorContext, Inputs } from './types.ts';
import { maxRiseK, type Warming, warmingMinutes } from './warming.ts';
import { figure, listText, minutesText, wattsText } from './words.ts';

export const heatingTime: Calculator = {
  topic: 'heating-time',
  subject: {
    named:
      /\b(warm(ing)?|heat(ing)?|get)( up)?( the| our| this)? (van|caravan|place|up|it|in here|to \d+)\b|\b(heater|heating) takes?\b/,
    asks: ASKS_HOW_SOON,
  },
  plainly: (reading) => {
    const { text, counted } = reading;
    const told = temperaturesIn(counted, false).length;
    if (told === 0 || NOT_WARMING.test(text)) return false;
    if (ASKS_HOW_SOON.test(text) && (told > 1 || WARMING.test(text))) return true;
    return WARMING.test(text) && (/\b(ever|manage|able) (get |reach |to |warm )/.test(text) || asksWhether(reading));
  },
  inputs: [
    { ...OUTSIDE, needed: () => true },
    INSIDE,
    {
      name: 'start',
      as: 'start',
      known: 'inside',
      least: -20,
      most: 35,
      sane: 'in the van it is between -20 and 35 degrees Celsius',
    },
    { name: 'source', as: 'source', known: 'source', sources: (context) => context.figures.heating.sources },
    { name: 'watts', as: 'watts', known: 'watts', least: 1, most: 10000, sane: 'a heater gives at most 10,000 watts' },
    AMPS_IF_KNOWN,
    {
      name: 'roofUp',
      as: 'flag',
      known: 'type',
      words:
        /\broof (is )?(still )?(up|popped|open|raised)\b|\b(pop ?-? ?top|pop ?-? ?up) (roof )?(is )?up\b|\bwith the roof up\b/,
      unless: /\broof (is )?(down|shut|closed)\b/,
    },
  ],
  answer,
};

const WARMING = /\b(heat|heater|heating|warm\w*|toasty|cosy|degrees|celsius|reach|gets?|radiators?)\b/;
const NOT_WARMING =
  /\b(water|showers?|kettle|battery|cook\w*|fridge)\b|\b(gas|bottles?|cylinders?)\b.*\b(lasts?|good for|do us|run out)\b|\bhow many (days|nights)\b/;

/** 'Will the heating get us to 20 on 1 kW? It's 6 outside': two temperatures and a question. */
function asksWhether({ text, counted }: Reading): boolean {
  if (/\b(how many (days|nights)|lasts?|kg|kilos?|bottles?|cylinders?)\b/.test(text)) return false;
  return /\b(will|can|could|would|does|enough)\b/.test(text) && temperaturesIn(counted, false).length > 1;
}

function answer(inputs: Inputs, context: CalculatorContext): Answer {
  const { heating } = context.figures;
  const outside = numberOf(inputs, 'outside') ?? 0;
  const now = numberOf(inputs, 'start');
  // 'Inside is 20' with nothing else wanted is what is wanted.
  const target = numberOf(inputs, 'inside') ?? Math.max(now ?? 0, context.constants.usual.insideC);
  const start = now === null || now >= target ? outside : now;
  const roofUp = isSet(inputs, 'roofUp');
  const lossWPerK = roofUp ? (heating.lossRoofUpWPerK ?? heating.lossWPerK) : heating.lossWPerK;
  const used = usedSources(inputs, context);
  const watts = used.reduce((sum, source) => sum + source.watts, 0);
  const van: Warming = { watts, lossWPerK, storeKWhPerK: heating.storeKWhPerK };
  const bare = warmingMinutes(van, start - outside, target - outside);
  const minutes = bare === null || bare === 0 ? bare : bare + heating.lagMinutes;
  const rise = maxRiseK(watts, lossWPerK);
  const name = listText(used.map((source) => source.name));
  return {
    values: { minutes, maxRiseK: rise, maxC: outside + rise, verdict: minutes === null ? 'never' : 'reaches' },
    first:
      minutes === null
        ? `Never: ${name} holds the van at most ${figure(rise)}° above outside, that is ${figure(outside + rise)}°, not ${figure(target)}°.`
        : minutes === 0
          ? `It is as warm as that already.`
          : onPost(
              `About ${minutesText(minutes)} from ${figure(start)}° to ${figure(target)}° with ${name}.`,
              used,
              numberOf(inputs, 'amps'),
              context,
            ),
    working: [
      `Heat loss ${figure(lossWPerK)} W/K${roofUp ? ' with the roof up' : ''} x ${figure(Math.max(0, target - outside))} K = ${wattsText(lossWPerK * Math.max(0, target - outside))}; the heater gives ${wattsText(watts)}.`,
      minutes === null
        ? betterLine(van, outside, target, numberOf(inputs, 'amps'), context)
        : heating.lagMinutes > 0 && bare !== null
          ? `${minutesText(bare)} for the lounge and ${figure(heating.lagMinutes)} min more for the radiators at the far end.`
          : `The most it can hold is ${figure(outside + rise, 0)}°.`,
    ],
    caution: roofUp
      ? 'Roof down halves the wait. Vents stay open.'
      : heating.lossRoofUpWPerK === undefined
        ? 'Curtains and blinds shut help; the floor and roof vents stay open.'
        : 'Roof down, screens in the windows; the vents stay open.',
    bar: {
      title: 'Heat needed to hold it',
      unit: 'W',
      limit: watts,
      segments: [{ label: `${figure(target)}° inside`, amount: Math.round(lossWPerK * Math.max(0, target - outside)) }],
    },
  };
}

/** What would get there, or that nothing of the van does. */
function betterLine(
  van: Warming,
  outside: number,
  target: number,
  amps: number | null,
  context: CalculatorContext,
): string {
  const enough = context.figures.heating.sources.filter(
    (source) =>
      carried(source, amps, context) && warmingMinutes({ ...van, watts: source.watts }, 0, target - outside) !== null,
  );
  if (enough.length > 0) return `What does it: ${enough.map((source) => source.name).join(', ')}.`;
  return `None of the van's settings alone holds ${figure(target)}° at ${figure(outside)}° outside; use both fuels where they can run together, or aim lower.`;
}

/** The settings said, or what this van is usually warmed with. */
function usedSources(inputs: Inputs, context: CalculatorContext): readonly Source[] {
  const { sources } = context.figures.heating;
  const said = sourcesOf(textOf(inputs, 'source') ?? '', sources);
  if (said.length > 0) return said;
  const watts = numberOf(inputs, 'watts');
  if (watts !== null) return [{ id: 'own', name: `a heater of ${wattsText(watts)}`, watts, kind: 'electric' }];
  return [usualSource(numberOf(inputs, 'amps'), context)];
}

/**
 * One boiler that burns both makes most with gas; where gas fire and electric heater are two things, the electric one
 * is taken as far as the pitch carries it.
 */
function usualSource(amps: number | null, context: CalculatorContext): Source {
  const { figures, constants } = context;
  const { sources } = figures.heating;
  const gas = usualGas(
    sources.filter((source) => source.kind === 'gas'),
    constants.usualGasW,
  );
  const combined =
    figures.hotWater?.sources.some(
      (source) => source.kind === 'electric' && sources.some((other) => other.id === source.id),
    ) === true;
  const electric = sources.filter((source) => source.kind === 'electric' && carried(source, amps, context)).at(-1);
  const first = combined ? (gas ?? electric) : (electric ?? gas);
  const source = first ?? sources[0];
  if (source === undefined) throw new Error('a van has at least one source of heat');
  return source;
}
