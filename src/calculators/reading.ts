import type { InputKind, InputSpec, InputValue, Reader, Reading } from './input-spec.ts';
import { parseThings, thingText } from './kept.ts';
import { mainsAppliances } from './lexicon.ts';
import { mentionsIn } from './mentions.ts';
import { monthIn } from './months.ts';
import { peopleIn } from './people.ts';
import { countedIn } from './quantities.ts';
import { batteryNamed, mainsOnlyNamed } from './read-battery.ts';
import { readLoads } from './read-loads.ts';
import {
  endOf,
  firstOf,
  RATINGS,
  readAmps,
  readCount,
  readFlag,
  readHours,
  readNights,
  readPeople,
  readPercent,
  readSlope,
  readWeight,
} from './read-numbers.ts';
import { readAnywhere, readFrom, readStart, readTarget, readTemperature } from './read-temperatures.ts';
import { type Problem, problemWith } from './sane.ts';
import { settingOf, sourceIn } from './sources.ts';
import { thingsIn } from './things.ts';
import type { CalculatorContext, Inputs } from './types.ts';

/** An input of a table that cannot be. */
export type Absurd = Problem & { readonly spec: InputSpec };

/** What was read: values by name, and the first absurd one. */
export type Read = { readonly values: Inputs; readonly absurd: Absurd | null };

/**
 * Makes a text ready for reading.
 * @param previous The inputs before; `asked` among them names the question that is open.
 */
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
    else absurd ??= { ...problem, spec };
  }
  if (absurd !== null || Object.keys(values).length > 0) return { values, absurd };
  return bareNumber(table, reading);
}

/** 'And on 16?', or '10' in reply to a question: a lone number is the input it can be. */
function bareNumber(table: readonly InputSpec[], reading: Reading): Read {
  const nothing: Read = { values: {}, absurd: null };
  const bare = reading.counted.quantities.filter((quantity) => quantity.unit === 'bare');
  const only = bare[0];
  if (reading.previous === null || bare.length !== 1 || only === undefined) return nothing;
  for (const spec of table) {
    if (!NUMERIC.has(spec.as) || !isMeant(spec, reading)) continue;
    const value = endOf(only, spec);
    const problem = problemWith(value, spec);
    if (problem === null && (spec.as !== 'amps' || reading.asked !== null || RATINGS.has(value)))
      return { values: { [spec.name]: value }, absurd: null };
    if (problem !== null && reading.asked !== null) return { values: {}, absurd: { ...problem, spec } };
  }
  return nothing;
}

/** The input asked for; without a question one that the sum before used, or the amps. */
function isMeant(spec: InputSpec, reading: Reading): boolean {
  if (reading.asked !== null) return spec.name === reading.asked;
  return Object.hasOwn(reading.previous ?? {}, spec.name) || spec.as === 'amps';
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
  'anywhere',
  'weight',
  'watts',
]);

function readThings(reading: Reading, spec: InputSpec): InputValue | null {
  const { context } = reading;
  const booked = context.people === null ? null : { people: context.people, children: context.children, adults: null };
  const found = thingsIn(reading.counted, context.figures, context.constants, booked);
  if (found.length === 0) return null;
  const kept = parseThings(reading.previous?.[spec.name]).filter(
    (thing) => !found.some((other) => other.key === thing.key),
  );
  return [...kept, ...found].map(thingText);
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
  return settingOf(said, all, availableW, reading.context.constants.usualGasW);
}

const READERS: Readonly<Record<InputKind, Reader>> = {
  amps: readAmps,
  watts: firstOf('watts'),
  anywhere: readAnywhere,
  from: readFrom,
  target: readTarget,
  start: readStart,
  weight: readWeight,
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
    mentionsIn(reading.counted, mainsAppliances(reading.context.figures, reading.context.constants), true),
  ),
  loads: readLoads(batteryNamed),
  mainsOnly: mainsOnlyNamed,
  things: readThings,
  source: readSource,
};
