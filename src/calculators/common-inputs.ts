import type { InputSpec } from './input-spec.ts';
import type { CalculatorContext } from './types.ts';

/* The inputs that several sums share, each with where it comes from and how it is asked for. */

const amps: InputSpec = {
  name: 'amps',
  as: 'amps',
  known: 'amps',
  least: 0,
  most: 32,
  worse: 'low',
  sane: 'a pitch gives 6, 10 or 16 amps as a rule, 2 to 32 at the most',
  fill: (context) => context.amps,
  ask: () => ({
    question: 'How many amps does your pitch give? It stands on the post or in your booking.',
    choices: ['6 amps', '10 amps', '16 amps', 'No hook-up'],
  }),
};

/** The pitch's rating in amps; 0 is no hook-up. */
export const AMPS_IF_KNOWN: InputSpec = amps;
export const AMPS: InputSpec = { ...amps, needed: () => true };

const people: InputSpec = {
  name: 'people',
  as: 'people',
  known: 'people',
  least: 1,
  most: 20,
  whole: true,
  sane: 'it has to be a whole number of people, and the vans sleep 6 at most',
  fill: (context) => context.people,
  ask: () => ({ question: 'How many of you are there?', choices: ['1', '2', '4', '6'] }),
};

export const PEOPLE_IF_KNOWN: InputSpec = people;
export const PEOPLE: InputSpec = { ...people, needed: () => true };

export const CHILDREN: InputSpec = {
  name: 'children',
  as: 'children',
  known: 'people',
  least: 0,
  most: 19,
  whole: true,
  sane: 'it has to be a whole number of children',
  fill: (context) => context.children,
};

export const MONTH: InputSpec = {
  name: 'month',
  as: 'month',
  known: 'month',
  least: 1,
  most: 12,
  whole: true,
  sane: 'the months go from 1 to 12',
  fill: (context) => context.month,
};

export const NIGHTS_IF_KNOWN: InputSpec = {
  name: 'nights',
  as: 'nights',
  known: 'nights',
  least: 0.04,
  most: 120,
  sane: 'a hire is a few nights, at most some weeks',
  fill: (context) => context.nights,
  ask: () => ({ question: 'For how many nights?', choices: ['1', '2', '3', '7'] }),
};

/** Outside temperature, in degrees Celsius. A range is read at its cold end. */
export const OUTSIDE: InputSpec = {
  name: 'outside',
  as: 'outside',
  known: 'outside',
  least: -30,
  most: 45,
  worse: 'low',
  sane: 'out of doors it is between -30 and 45 degrees Celsius',
  ask: () => ({ question: 'How cold is it outside, in degrees Celsius?', choices: ['-2', '0', '5', '10'] }),
};

/** The room temperature wanted, in degrees Celsius; a range at its warm end. */
export const INSIDE: InputSpec = {
  name: 'inside',
  as: 'inside',
  known: 'inside',
  least: 0,
  most: 35,
  worse: 'high',
  sane: 'a room is kept between 5 and 30 degrees Celsius',
  ask: () => ({ question: 'How warm is it inside the van, in degrees Celsius?', choices: ['0', '5', '10', '18'] }),
};

/** Whether a month counts as cold for water, battery and gas. */
export function isCold(month: number, context: CalculatorContext): boolean {
  return context.constants.coldMonths.includes(month);
}

/** Temperature of the cold tap in a month, in degrees Celsius. */
export function coldWaterC(month: number, context: CalculatorContext): number {
  const { summer, winter } = context.constants.coldWaterC;
  return isCold(month, context) ? winter : summer;
}
