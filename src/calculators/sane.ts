import type { InputKind, InputSpec, InputValue } from './input-spec.ts';
import { parseLoads, parseThings } from './kept.ts';
import type { InputName } from './types.ts';

/** An input that cannot be: its name, and what to say of it. */
export type Problem = { readonly known: InputName; readonly says: string };

/** Null when the value is sane; otherwise what to say of it. */
export function problemWith(value: InputValue, spec: InputSpec): Problem | null {
  if (spec.as === 'appliances' || spec.as === 'loads') return loadsProblem(value);
  if (spec.as === 'things') return thingsProblem(value);
  if (typeof value !== 'number') return null;
  const tooLow = spec.least !== undefined && value < spec.least;
  const tooHigh = spec.most !== undefined && value > spec.most;
  const broken = spec.whole === true && !Number.isInteger(value);
  if (!tooLow && !tooHigh && !broken && Number.isFinite(value)) return null;
  const said = `${shown(value)}${UNIT_WORDS[spec.as] ?? ''}`;
  return { known: spec.known, says: `${said} cannot be right: ${spec.sane ?? 'please look again'}.` };
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
  weight: ' kg',
  watts: ' watts',
  anywhere: ' degrees',
  target: ' degrees',
  from: ' degrees',
  start: ' degrees',
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
/** More water than any of the vans can carry twice over. */
const MOST_LITRES = 200;

function loadsProblem(value: InputValue): Problem | null {
  for (const { name, watts, count, hours } of parseLoads(value)) {
    if (watts !== null && watts <= 0)
      return { known: 'watts', says: `The watts of the ${name} must be more than 0, got ${shown(watts)}.` };
    if (watts !== null && watts > MOST_WATTS) {
      return {
        known: 'watts',
        says: `${shown(watts)} watts cannot be right for the ${name}: nothing with a plug draws more than about 3,000.`,
      };
    }
    if (count <= 0 || count > MOST_OF_A_KIND)
      return { known: 'appliances', says: `${shown(count)} x ${name} cannot be right.` };
    if (hours !== null && (hours < 0 || hours > 24))
      return { known: 'hours', says: `${shown(hours)} hours a day cannot be right for the ${name}: a day has 24.` };
  }
  return null;
}

function thingsProblem(value: InputValue): Problem | null {
  for (const { key, name, count, kg } of parseThings(value)) {
    const most = key === 'water' ? MOST_LITRES : MOST_OF_A_KIND;
    if (count < 0 || count > most)
      return { known: key.endsWith('-kit') ? 'people' : 'things', says: `${shown(count)} x ${name} cannot be right.` };
    if (kg < 0 || kg > MOST_KG) return { known: 'things', says: `${shown(kg)} kg cannot be right for the ${name}.` };
  }
  return null;
}
