import { batteryAppliances, mainsAppliances } from './lexicon.ts';
import { type Mention, mentionsIn } from './mentions.ts';
import { monthIn } from './months.ts';
import { peopleIn } from './people.ts';
import { type Counted, countedIn, type Quantity, type Unit } from './quantities.ts';
import { type Source, settingOf, sourceIn } from './sources.ts';
import { frostInWords, temperaturesIn } from './temperatures.ts';
import { type Thing, thingsIn } from './things.ts';
import type { CalculatorContext, InputName, Inputs } from './types.ts';

export type InputValue = NonNullable<Inputs[string]>;

/** What words may be read as. A calculator's table names one of these for each input. */
export type InputKind =
  | 'amps'
  | 'people'
  | 'children'
  | 'nights'
  | 'month'
  | 'hours'
  | 'percent'
  | 'bottles'
  | 'slope'
  | 'mm'
  | 'metres'
  | 'volts'
  | 'ampHours'
  | 'outside'
  | 'inside'
  | 'kg'
  | 'flag'
  | 'count'
  | 'appliances'
  | 'loads'
  | 'things'
  | 'source';

/** One input of a sum: what it is, how far it may go, where it comes from and how it is asked for. */
export type InputSpec = {
  /** Its key among the inputs kept with the thread. */
  readonly name: string;
  readonly as: InputKind;
  /** The name under which it is asked for or refused. */
  readonly known: InputName;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** The end of a range to plan for: '2 to 4'. The high one when left out. */
  readonly worse?: 'low' | 'high';
  /** For a flag what sets it, for a weight or count the words that must stand near. */
  readonly words?: RegExp;
  /** For a flag what clears it again. */
  readonly unless?: RegExp;
  /** Why a value beyond `least` and `most` cannot be: 'a post gives 2 to 32 amps'. */
  readonly sane?: string;
  /** The settings a source may name. */
  readonly sources?: (context: CalculatorContext) => readonly Source[];
  /** What the van or the booking already knows. */
  readonly fill?: (context: CalculatorContext) => InputValue | null;
  /** Whether the sum cannot be done without it. Never, when left out. */
  readonly needed?: (inputs: Inputs, context: CalculatorContext) => boolean;
  readonly ask?: (
    context: CalculatorContext,
    inputs: Inputs,
  ) => { readonly question: string; readonly choices: readonly string[] };
};

/** Why an input cannot be used, in words for the hirer. */
export type Absurd = { readonly spec: InputSpec; readonly says: string };

/** What was read: values by name, names of which the value was taken back, and the first absurd one. */
export type Read = { readonly values: Inputs; readonly absurd: Absurd | null };

/** A text made ready for reading against any table. */
export type Reading = {
  readonly text: string;
  readonly counted: Counted;
  readonly context: CalculatorContext;
  /** The name of the input that was asked for, if a question is open. */
  readonly asked: string | null;
  readonly previous: Inputs | null;
};

export function readingOf(text: string, context: CalculatorContext, previous: Inputs | null): Reading {
  const counted = countedIn(text);
  const asked = typeof previous?.['asked'] === 'string' ? previous['asked'] : null;
  return { text: counted.pieces.map((piece) => piece.text).join(' '), counted, context, asked, previous };
}

/** Reads every input of `table` that the text gives. */
export function readTable(table: readonly InputSpec[], reading: Reading): Read {
  const values: Record<string, InputValue> = {};
  let absurd: Absurd | null = null;
  for (const spec of table) {
    const value = READERS[spec.as](reading, spec);
    if (value === null) continue;
    const problem = problemWith(value, spec);
    if (problem === null) values[spec.name] = value;
    else absurd ??= { spec, says: problem };
  }
  return { values: absurd === null ? bareNumber(table, reading, values) : values, absurd };
}

/** 'And on 16?': a lone number after a sum is the input it can be. */
function bareNumber(table: readonly InputSpec[], reading: Reading, values: Inputs): Inputs {
  if (reading.previous === null || Object.keys(values).length > 0) return values;
  const bare = reading.counted.quantities.filter((quantity) => quantity.unit === 'bare');
  const only = bare[0];
  if (bare.length !== 1 || only === undefined) return values;
  for (const spec of table) {
    if (
      reading.asked !== null
        ? spec.name !== reading.asked
        : !Object.hasOwn(reading.previous, spec.name) && spec.as !== 'amps'
    )
      continue;
    const value = endOf(only, spec);
    if (!NUMERIC.has(spec.as) || problemWith(value, spec) !== null) continue;
    if (spec.as === 'amps' && reading.asked === null && !RATINGS.has(value)) continue;
    return { ...values, [spec.name]: value };
  }
  return values;
}

const NUMERIC = new Set<InputKind>([
  'amps',
  'people',
  'nights',
  'month',
  'hours',
  'percent',
  'slope',
  'outside',
  'inside',
  'kg',
]);
/** Ratings that posts have: IEC 60898-1's preferred values and what sites abroad fit. */
const RATINGS = new Set([2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 32]);

/** Null when the value is sane; otherwise what to say of it. */
export function problemWith(value: InputValue, spec: InputSpec): string | null {
  if (spec.as === 'appliances' || spec.as === 'loads') return loadsProblem(value);
  if (spec.as === 'things') return thingsProblem(value);
  if (typeof value !== 'number') return null;
  const tooLow = spec.least !== undefined && value < spec.least;
  const tooHigh = spec.most !== undefined && value > spec.most;
  const broken = spec.whole === true && !Number.isInteger(value);
  if (!tooLow && !tooHigh && !broken && Number.isFinite(value)) return null;
  const said = `${shown(value)}${UNIT_WORDS[spec.as] ?? ''}`;
  return `${said} cannot be right: ${spec.sane ?? 'please look again'}.`;
}

const UNIT_WORDS: Readonly<Partial<Record<InputKind, string>>> = {
  amps: ' amps',
  people: ' people',
  children: ' children',
  nights: ' nights',
  hours: ' hours a day',
  percent: ' %',
  slope: ' degrees',
  outside: ' degrees outside',
  inside: ' degrees inside',
  kg: ' kg',
  month: ' as a month',
  mm: ' mm',
  volts: ' volts',
  ampHours: ' Ah',
  bottles: ' bottles',
  count: '',
};

/** 3,000 for 3000; at most two decimals. */
export function shown(value: number): string {
  return value.toLocaleString('en-GB', { maximumFractionDigits: 2 });
}

/** The largest load a 13 A plug and a site post leave sense in, in watts. */
const MOST_WATTS = 6000;
const MOST_OF_A_KIND = 20;
const MOST_KG = 500;

function loadsProblem(value: InputValue): string | null {
  for (const load of parseLoads(value)) {
    if (load.watts !== null && load.watts <= 0)
      return `The watts of the ${load.name} must be more than 0, got ${shown(load.watts)}.`;
    if (load.watts !== null && load.watts > MOST_WATTS)
      return `${shown(load.watts)} watts cannot be right for the ${load.name}: nothing with a plug draws more than about 3,000.`;
    if (load.count <= 0 || load.count > MOST_OF_A_KIND)
      return `${shown(load.count)} of the ${load.name} cannot be right.`;
    if (load.hours !== null && (load.hours < 0 || load.hours > 24))
      return `${shown(load.hours)} hours a day cannot be right for the ${load.name}: a day has 24.`;
  }
  return null;
}

function thingsProblem(value: InputValue): string | null {
  for (const thing of parseThings(value)) {
    if (thing.count < 0 || (thing.count > MOST_OF_A_KIND && thing.key !== 'water') || thing.count > MOST_KG)
      return `${shown(thing.count)} of the ${thing.name} cannot be right.`;
    if (thing.kg < 0 || thing.kg > MOST_KG) return `${shown(thing.kg)} kg cannot be right for the ${thing.name}.`;
  }
  return null;
}

/** A load as it is kept with the thread: 'kettle|kettle|1000|1|'. */
export type Load = {
  readonly key: string;
  readonly name: string;
  readonly watts: number | null;
  readonly count: number;
  readonly hours: number | null;
};

function loadText(load: Load): string {
  return [load.key, load.name, load.watts ?? '', load.count, load.hours ?? ''].join('|');
}

export function parseLoads(value: InputValue | undefined): readonly Load[] {
  if (!Array.isArray(value)) return [];
  return value.map((line: string): Load => {
    const [key = '', name = '', watts = '', count = '1', hours = ''] = line.split('|');
    return {
      key,
      name,
      watts: watts === '' ? null : Number(watts),
      count: Number(count),
      hours: hours === '' ? null : Number(hours),
    };
  });
}

export function parseThings(value: InputValue | undefined): readonly Thing[] {
  if (!Array.isArray(value)) return [];
  return value.map((line: string): Thing => {
    const [key = '', name = '', count = '1', kg = '0'] = line.split('|');
    return { key, name, count: Number(count), kg: Number(kg) };
  });
}

type Reader = (reading: Reading, spec: InputSpec) => InputValue | null;

function endOf(quantity: Quantity, spec: InputSpec): number {
  return spec.worse === 'low' ? Math.min(quantity.low, quantity.high) : Math.max(quantity.low, quantity.high);
}

function firstOf(unit: Unit): (reading: Reading, spec: InputSpec) => number | null {
  return (reading, spec) => {
    const quantity = reading.counted.quantities.find((each) => each.unit === unit && nearWords(reading, each, spec));
    return quantity === undefined ? null : endOf(quantity, spec);
  };
}

/** Whether one of the spec's words stands within a few pieces of the quantity. True when the spec has none. */
function nearWords(reading: Reading, quantity: Quantity, spec: InputSpec): boolean {
  if (spec.words === undefined) return true;
  const { pieces } = reading.counted;
  const before = pieces.slice(Math.max(0, quantity.from - 5), quantity.from);
  const after = pieces.slice(quantity.to, quantity.to + 4);
  return spec.words.test([...before, ...after].map((piece) => piece.text).join(' '));
}

const NO_HOOK_UP =
  /\b(no|without|without a|without any|not got|haven't got|havent got|no mains) (hook|hookup|ehu|electric|electrics|electricity|mains|power|post)\b|\boff ?-? ?grid\b|\boff (the )?hook ?-? ?up\b|\boff (the )?(ehu|mains)\b|\bnot (plugged|hooked|connected)\b|\bun ?plugged\b|\bwild camp|\b(on|off|from|using) (the )?(leisure )?battery\b|\bno hook ?-? ?up\b|\bbattery (only|alone)\b/;
const POST_WORDS =
  /^(post|pitch|site|supply|hook|hookup|up|ehu|bollard|pedestal|says|say|said|gives|rated|ampage|amps|socket|plug|marked|reads|campsite)$/;

function readAmps(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const said = quantities.find(
    (each) => each.unit === 'amps' && !/^(fuse|plug|breaker|fuses|charger|hours?)$/.test(pieces[each.to]?.text ?? ''),
  );
  if (said !== undefined) return endOf(said, spec);
  if (NO_HOOK_UP.test(reading.text)) return 0;
  for (const each of quantities) {
    if (each.unit !== 'bare') continue;
    const before = pieces.slice(Math.max(0, each.from - 4), each.from).map((piece) => piece.text);
    const next = pieces[each.to]?.text ?? '';
    if (/^(people|adults?|kids?|of|nights?|days?|degrees?)$/.test(next)) continue;
    if (before.some((word) => POST_WORDS.test(word)) && !before.some((word) => /^(heating|heater|boiler)$/.test(word)))
      return each.high;
    if (
      RATINGS.has(each.high) &&
      each.high >= 4 &&
      /\b(on|on a|got|have|only|just got|only got|a)$/.test(before.join(' ')) &&
      (next === '' ||
        /^[?.,!]$/.test(next) ||
        next === 'site' ||
        next === 'post' ||
        next === 'hook' ||
        next === 'pitch')
    )
      return each.high;
  }
  return null;
}

function readPeople(reading: Reading): number | null {
  const said = peopleIn(reading.counted);
  if (said === null) return null;
  return said.people ?? (reading.asked === 'people' ? said.children : null);
}

function readNights(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  for (const each of quantities) {
    if (each.unit === 'hours' && each.high > 24 && !/^(a|per|every|each)$/.test(pieces[each.to]?.text ?? ''))
      return each.high / 24;
    if (each.unit !== 'nights') continue;
    const article = /^(a|an)$/.test(pieces[each.from]?.text ?? '') && each.to - each.from === 2;
    const before = pieces[each.from - 1]?.text ?? '';
    if (
      article &&
      (each.high === 1 ||
        !/^(for|last|lasts|lasting|of|be|about|us|whole|here|than|over|through|battery|gas|bottle|it|days?)$/.test(
          before,
        ))
    )
      continue;
    return endOf(each, spec);
  }
  if (/\b(the|all|this|long) weekend\b/.test(reading.text)) return 2;
  if (/\b(for the|all|the whole|whole|the full|rest of the) week\b/.test(reading.text)) return 7;
  if (/\b(for the|a) fortnight\b/.test(reading.text)) return 14;
  if (spec.words?.test(reading.text) === true) return 1;
  return null;
}

function readHours(reading: Reading, spec: InputSpec): number | null {
  const said = reading.counted.quantities.find((each) => each.unit === 'hours' && nearWords(reading, each, spec));
  if (said !== undefined) return endOf(said, spec);
  return clockSpan(reading);
}

/** Hours between two clock times: 'from 6pm to 8am' is 14. */
function clockSpan(reading: Reading): number | null {
  const clocks = reading.counted.pieces
    .filter((piece) => piece.kind === 'clock')
    .map((piece) => clockHours(piece.text));
  const [start, end] = clocks;
  if (start === undefined || end === undefined) return null;
  return (end - start + 24) % 24 || 24;
}

function clockHours(text: string): number {
  const [, hour = '0', minute = '0', half] = /^(\d{1,2})(?:[:.](\d{2}))?\s?([ap]m)?$/.exec(text) ?? [];
  const base = half === undefined ? Number(hour) : (Number(hour) % 12) + (half === 'pm' ? 12 : 0);
  return base + Number(minute) / 60;
}

const SHARES: readonly (readonly [RegExp, number])[] = [
  [/\b(three quarters|3 ?\/ ?4)( full| left| of|$)/, 75],
  [/\b(two thirds|2 ?\/ ?3)( full| left| of|$)/, 67],
  [/\b(a third|one third|1 ?\/ ?3)( full| left| of|$)/, 33],
  [/\b(a quarter|one quarter|quarter|1 ?\/ ?4)( full| left| of|$)/, 25],
  [
    /\b(half|1 ?\/ ?2)( full| empty| left| gone| used| charged| of it| the| way|$)|\b(about|at|down to|to|only|on) half\b/,
    50,
  ],
];

function readPercent(reading: Reading, spec: InputSpec): number | null {
  const said = firstOf('percent')(reading, spec);
  if (said !== null) return said;
  return SHARES.find(([pattern]) => pattern.test(reading.text))?.[1] ?? null;
}

function readSlope(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const said = quantities.find((each) => each.unit === 'degrees' || each.unit === 'celsius');
  if (said !== undefined) return endOf(said, spec);
  const bare = quantities.find(
    (each) => each.unit === 'bare' && /^(out|off|level|lean|leaning)$/.test(pieces[each.to]?.text ?? ''),
  );
  return bare === undefined ? null : endOf(bare, spec);
}

function readTemperature(where: 'outside' | 'inside'): Reader {
  return (reading, spec) => {
    const bare = reading.asked === spec.name;
    const all = temperaturesIn(reading.counted, bare);
    const sure = all.filter((each) => each.where === where);
    const open = all.filter((each) => each.where === null);
    const others = all.filter((each) => each.where !== null && each.where !== where);
    let found = where === 'outside' ? sure[0] : sure.at(-1);
    if (found === undefined && open.length > 0) {
      const sorted = [...open].sort((a, b) => a.low - b.low);
      if (bare || others.length > 0 || open.length > 1) found = where === 'outside' ? sorted[0] : sorted.at(-1);
      else if (where === 'outside') found = sorted[0];
    }
    // '20 degrees' said as the answer to 'how cold is it outside?' is outside, whatever stands near it.
    if (found === undefined && bare) found = all[0];
    if (found === undefined) return where === 'outside' ? frostInWords(reading.text) : null;
    return spec.worse === 'high' ? found.high : found.low;
  };
}

function readFlag(reading: Reading, spec: InputSpec): boolean | null {
  if (spec.unless?.test(reading.text) === true) return false;
  return spec.words?.test(reading.text) === true ? true : null;
}

/** A plain number beside its word: '2 showers', 'three tanks'. */
function readCount(reading: Reading, spec: InputSpec): number | null {
  const { pieces, quantities } = reading.counted;
  const found = quantities.find(
    (each) =>
      each.unit === 'bare' &&
      spec.words?.test([pieces[each.to]?.text, pieces[each.to + 1]?.text, pieces[each.to + 2]?.text].join(' ')) ===
        true,
  );
  return found === undefined ? null : endOf(found, spec);
}

function readLoads(known: (reading: Reading) => readonly Mention[]): Reader {
  return (reading, spec) => {
    const mentions = known(reading);
    const before = parseLoads(reading.previous?.[spec.name]);
    const answer = plateAnswer(reading, before);
    if (answer !== null) return answer;
    const off = new Set(
      mentions.filter((mention) => mention.off || mention.onGas).map((mention) => mention.appliance.key),
    );
    const on = mentions
      .filter((mention) => !mention.off && !mention.onGas)
      .map((mention) => loadOf(mention, reading.context));
    const all = alone(on);
    if (all.length === 0 && off.size === 0) return stepAnswer(reading, before);
    const fresh =
      before.length > 0 &&
      !/\b(and|too|also|plus|as well|with|without|add|another|off|instead|on)\b/.test(reading.text) &&
      reading.asked === null;
    const kept = fresh
      ? []
      : before.filter((load) => !off.has(load.key) && !all.some((other) => other.key === load.key));
    return [...kept, ...all].map(loadText);
  };
}

/** A kettle of the hirer's own is one kettle, not two: 'our own kettle from home' names both. */
function alone(loads: readonly Load[]): readonly Load[] {
  const own = new Set(loads.map((load) => load.key));
  return loads.filter(
    (load) =>
      !(load.key === 'kettle' && own.has('house-kettle')) && !(load.key === 'cpap' && own.has('cpap-humidifier')),
  );
}

/** The reply to 'how many watts is it?' goes to the load without watts. */
function plateAnswer(reading: Reading, before: readonly Load[]): InputValue | null {
  if (reading.asked !== 'watts') return null;
  const open = before.find((load) => load.watts === null);
  if (open === undefined) return null;
  if (open.key === 'heating' && /\bgas\b/.test(reading.text))
    return before.filter((load) => load !== open).map(loadText);
  const said =
    reading.counted.quantities.find((each) => each.unit === 'watts') ??
    reading.counted.quantities.find((each) => each.unit === 'bare');
  const word = /\b(full|max|high|highest|top)\b/.test(reading.text)
    ? 'high'
    : /\b(low|lowest|min)\b/.test(reading.text)
      ? 'low'
      : null;
  if (said === undefined && word === null) return null;
  const watts = open.key === 'heating' ? stepWatts(said?.high ?? word, reading.context) : (said?.high ?? null);
  return before.map((load) => loadText(load === open ? { ...load, watts: watts ?? said?.high ?? null } : load));
}

/** 'And on 1?' after a sum with the heating on 2. */
function stepAnswer(reading: Reading, before: readonly Load[]): InputValue | null {
  if (!before.some((load) => load.key === 'heating')) return null;
  const only = reading.counted.quantities[0];
  if (reading.counted.quantities.length !== 1 || only === undefined || (only.unit !== 'bare' && only.unit !== 'watts'))
    return null;
  const watts = stepWatts(only.high, reading.context);
  if (watts === null || (only.unit === 'bare' && only.high > 3)) return null;
  return before.map((load) => loadText(load.key === 'heating' ? { ...load, watts } : load));
}

function loadOf(mention: Mention, context: CalculatorContext): Load {
  const { appliance, count, hours } = mention;
  return { key: appliance.key, name: appliance.name, watts: wattsOf(mention, context), count, hours };
}

/** A microwave is sold by what it puts into the food; the mains gives more: reference M-27. */
const MICROWAVE_EFFICIENCY = 0.62;
const MOST_MICROWAVE_OUTPUT_W = 1000;

/** Watts from the mains of a microwave sold as `outputW`. */
export function microwaveInputW(outputW: number): number {
  return outputW / MICROWAVE_EFFICIENCY;
}

function wattsOf(mention: Mention, context: CalculatorContext): number | null {
  const { appliance } = mention;
  if (appliance.key === 'heating' && context.figures.battery.loadsW['heating'] !== appliance.watts) {
    if (mention.watts !== null) return stepWatts(mention.watts, context) ?? mention.watts;
    if (mention.step !== null) return stepWatts(mention.step, context);
    const steps = context.figures.mains.heatingStepsW;
    return steps.length === 1 ? (steps[0] ?? null) : null;
  }
  if (
    mention.watts !== null &&
    appliance.key === 'microwave' &&
    mention.watts <= MOST_MICROWAVE_OUTPUT_W &&
    mention.watts > 0
  ) {
    return appliance.watts ?? microwaveInputW(mention.watts);
  }
  return mention.watts ?? appliance.watts;
}

/** A step as said, in watts: 2, 2000 and 'high' for 2 kW; 2 for the second of 900 and 1,800 W. Null when the van has no such step. */
export function stepWatts(step: number | 'low' | 'middle' | 'high' | null, context: CalculatorContext): number | null {
  const steps = context.figures.mains.heatingStepsW;
  if (step === null || steps.length === 0) return null;
  if (step === 'low') return steps[0] ?? null;
  if (step === 'high') return steps.at(-1) ?? null;
  if (step === 'middle') return steps[Math.floor((steps.length - 1) / 2)] ?? null;
  if (step < 0) return step;
  const watts = step < 100 ? step * 1000 : step;
  const near = [...steps].sort((a, b) => Math.abs(a - watts) - Math.abs(b - watts))[0];
  if (near !== undefined && Math.abs(near - watts) <= near * 0.15) return near;
  if (step < 100) return steps[step - 1] ?? null;
  return null;
}

function readThings(reading: Reading, spec: InputSpec): InputValue | null {
  const { context } = reading;
  const booked = context.people === null ? null : { people: context.people, children: context.children, adults: null };
  const found = thingsIn(reading.counted, context.figures, context.constants, booked);
  if (found.length === 0) return null;
  const kept = parseThings(reading.previous?.[spec.name]).filter(
    (thing) => !found.some((other) => other.key === thing.key),
  );
  return [...kept, ...found].map((thing) => [thing.key, thing.name, thing.count, thing.kg].join('|'));
}

function readSource(reading: Reading, spec: InputSpec): string | null {
  const all = spec.sources?.(reading.context) ?? [];
  const said = sourceIn(reading.counted);
  if (said === null) return null;
  const amps = readAmps(reading, spec) ?? reading.context.amps;
  const { volts } = reading.context.constants;
  const availableW = amps === null ? null : amps * volts - reading.context.figures.mains.backgroundW;
  if (
    said.kinds.includes('engine') &&
    reading.context.figures.hotWater?.engineMinutes !== undefined &&
    spec.words !== undefined
  )
    return 'engine';
  return settingOf(said, all, availableW);
}

const READERS: Readonly<Record<InputKind, Reader>> = {
  amps: readAmps,
  people: readPeople,
  children: (reading) => peopleIn(reading.counted)?.children ?? null,
  nights: readNights,
  month: (reading) => monthIn(reading.counted),
  hours: readHours,
  percent: readPercent,
  bottles: firstOf('bottles'),
  slope: readSlope,
  mm: firstOf('mm'),
  metres: firstOf('metres'),
  volts: firstOf('volts'),
  ampHours: firstOf('ampHours'),
  outside: readTemperature('outside'),
  inside: readTemperature('inside'),
  kg: firstOf('kg'),
  flag: readFlag,
  count: readCount,
  appliances: readLoads((reading) =>
    mentionsIn(reading.counted, mainsAppliances(reading.context.figures, reading.context.constants)),
  ),
  loads: readLoads((reading) =>
    mentionsIn(reading.counted, batteryAppliances(reading.context.figures, reading.context.constants)),
  ),
  things: readThings,
  source: readSource,
};
