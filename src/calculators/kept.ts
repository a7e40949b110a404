import type { InputValue } from './input-spec.ts';
import type { Thing } from './things.ts';

/* Lists of loads and things as they are kept with the thread: plain lines, so that they can be stored. */

/** A load as it is kept with the thread: 'kettle|kettle|1000|1|'. */
export type Load = {
  readonly key: string;
  readonly name: string;
  readonly watts: number | null;
  readonly count: number;
  readonly hours: number | null;
};

/** The line of a load; {@link parseLoads} reads it back. */
export function loadText(load: Load): string {
  return [load.key, load.name, load.watts ?? '', load.count, load.hours ?? ''].join('|');
}

/** Loads from what was kept; none from anything else. */
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

/** The line of a thing; {@link parseThings} reads it back. */
export function thingText(thing: Thing): string {
  return [thing.key, thing.name, thing.count, thing.kg].join('|');
}

/** Things from what was kept; none from anything else. */
export function parseThings(value: InputValue | undefined): readonly Thing[] {
  if (!Array.isArray(value)) return [];
  return value.map((line: string): Thing => {
    const [key = '', name = '', count = '1', kg = '0'] = line.split('|');
    return { key, name, count: Number(count), kg: Number(kg) };
  });
}
