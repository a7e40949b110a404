import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { CalculatorContext, Inputs, Outcome } from '../../../src/calculators/index.ts';
import { calculate } from '../../../src/calculators/index.ts';
import { type Constants, constants, figures } from '../../../src/knowledge/schema.ts';

const graph = new URL('../../../graph/', import.meta.url);

/** The firm's constants as they stand in graph/firm.yaml. */
export const firmConstants: Constants = constants.parse(read('firm.yaml')['constants']);

const files = readdirSync(new URL('vans/', graph)).filter((name) => name.endsWith('.yaml'));
const vans = new Map(
  files.map((name) => {
    const data = read(`vans/${name}`);
    return [String(data['van']), { name: String(data['name']), figures: figures.parse(data['figures']) }];
  }),
);

function read(path: string): Record<string, unknown> {
  return parse(readFileSync(new URL(path, graph), 'utf8'));
}

/** The ids of the vans in graph/vans. */
export const vanIds: readonly string[] = [...vans.keys()].sort();

/** What the booking tells; what is left out is not known. The month is July. */
export type Booked = {
  readonly amps?: number;
  readonly people?: number;
  readonly children?: number;
  readonly nights?: number;
  readonly month?: number;
  readonly sun?: CalculatorContext['sun'];
};

/** A context in a van, with what the booking tells. */
export function inVan(van: string, booked: Booked = {}): CalculatorContext {
  const found = vans.get(van);
  if (found === undefined) throw new Error(`no van '${van}' in graph/vans`);
  return {
    figures: found.figures,
    vanName: found.name,
    constants: firmConstants,
    amps: booked.amps ?? null,
    people: booked.people ?? null,
    children: booked.children ?? null,
    nights: booked.nights ?? null,
    month: booked.month ?? 7,
    sun: booked.sun ?? 'north',
  };
}

/** Says the turns one after another and gives the last outcome. */
export function talk(van: string, topic: string, turns: readonly string[], booked: Booked = {}): Outcome {
  const context = inVan(van, booked);
  let outcome: Outcome | null = null;
  let previous: Inputs | null = null;
  for (const text of turns) {
    outcome = calculate(topic, text, previous, context);
    previous = outcome.inputs;
  }
  if (outcome === null) throw new Error('a talk has at least one turn');
  return outcome;
}

/** The values of a result; throws with what came instead. */
export function valuesOf(outcome: Outcome): Readonly<Record<string, unknown>> {
  if (outcome.kind !== 'result') throw new Error(`expected a result, got ${JSON.stringify(outcome)}`);
  return outcome.values;
}
