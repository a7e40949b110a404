import type { TopicId } from '../basics/ids.ts';
import type { InputSpec, Reading } from './input-spec.ts';
import type { Bar, CalculatorContext, Inputs } from './types.ts';

/** A sum's result and how it is put. `first` carries the verdict and the figure; `working` is two or three lines. */
export type Answer = {
  readonly values: Readonly<Record<string, unknown>>;
  readonly first: string;
  readonly working: readonly string[];
  readonly caution: string | null;
  readonly bar: Bar | null;
  readonly pass?: boolean;
};

/** What a sum is about, where it could be taken for another: how that is named, and the questions that ask for it. */
export type Subject = { readonly named: RegExp; readonly asks: RegExp };

/** Whether a text asks for this sum so plainly, with what it works from, that nothing else can be meant. */
export type Plainly = (reading: Reading) => boolean;

/** A question about a stock: it lasts, or it does not. */
export const ASKS_HOW_LONG_IT_LASTS =
  /\b(how long|how many (days|nights|hours)|(will|would|does|do|should|gonna|going to)\b.*\blasts?|lasting|enough|good for|see us|hold out|days wise)\b/;
/** A question about a wait: never one about how long a stock lasts. */
export const ASKS_HOW_SOON =
  /^(?!.*\b(lasts?|lasting|run out)\b(?! (night|week|year|time|summer|minute))).*(\bhow (long|quick|quickly|soon|fast)\b|\bhow many (minutes|mins|hours)\b|\b(time|long) to (heat|warm|get|reach)\b|\bwhen(s|'s| is| will)\b)/;

/** One sum: the table of its inputs and what it answers once nothing it needs is missing. */
export type Calculator = {
  readonly topic: TopicId;
  readonly subject?: Subject;
  readonly plainly?: Plainly;
  readonly inputs: readonly InputSpec[];
  readonly answer: (inputs: Inputs, context: CalculatorContext) => Answer;
};

/** The number under `name`, or null. */
export function numberOf(inputs: Inputs, name: string): number | null {
  const value = inputs[name];
  return typeof value === 'number' ? value : null;
}

/** The text under `name`, or null. */
export function textOf(inputs: Inputs, name: string): string | null {
  const value = inputs[name];
  return typeof value === 'string' ? value : null;
}

/** Whether the flag `name` is set. */
export function isSet(inputs: Inputs, name: string): boolean {
  return inputs[name] === true;
}
