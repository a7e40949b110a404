import type { TopicId } from '../basics/ids.ts';
import { calculatorOf } from './calculators.ts';
import { isAside } from './follow-up.ts';
import type { Asking, InputSpec, InputValue } from './input-spec.ts';
import { readingOf, readTable } from './reading.ts';
import type { CalculatorContext, InputName, Inputs, Outcome } from './types.ts';
import { rounded } from './units.ts';

/**
 * Answers a calculation: reads the inputs from the words, fills the rest from the booking and the van, and asks for the
 * one that is still missing.
 *
 * @param previous Inputs of the sum before, or of the question that is open (`asked` among them); null at the start.
 *                 What the text says changes them.
 * @returns        `asks` with the input that is missing, `refused` with one that cannot be, or the result. Its `inputs`
 *                 are what to keep with the thread.
 * @throws         When no calculator has the topic: a slip of the caller's.
 */
export function calculate(topic: TopicId, text: string, previous: Inputs | null, context: CalculatorContext): Outcome {
  const calculator = calculatorOf(topic);
  if (calculator === null) throw new Error(`no calculator for the topic '${topic}'`);
  const reading = readingOf(text, context, previous);
  const given = readTable(calculator.inputs, reading);
  const read = isAside(reading, given.values) ? { values: {}, absurd: null } : given;
  const said: Inputs = { ...withoutAsked(previous), ...read.values };
  if (read.absurd !== null) {
    const { spec, known, says } = read.absurd;
    const again = askAgain(known, spec, filled(calculator.inputs, said, context), context);
    const inputs = { ...said, asked: spec.name };
    return { kind: 'refused', refused: known, says: `${says} ${again.question}`, choices: again.choices, inputs };
  }
  const inputs = filled(calculator.inputs, said, context);
  const missing =
    calculator.inputs.find((spec) => !Object.hasOwn(inputs, spec.name) && spec.needed?.(inputs, context) === true) ??
    null;
  if (missing !== null) return question(missing, said, inputs, context);
  const { pass = false, ...answer } = calculator.answer(inputs, context);
  return { kind: 'result', ...answer, values: tidied(answer.values), pass, inputs: said };
}

/** Decimals of a value: more than any of the sums is good for, and none of the floating point's own. */
const PLACES = 4;

function tidied(values: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, typeof value === 'number' ? rounded(value, PLACES) : value]),
  );
}

function withoutAsked(previous: Inputs | null): Inputs {
  const { asked: _, ...rest } = previous ?? {};
  return rest;
}

/** What was said, and for the rest what the booking and the van know. */
function filled(table: readonly InputSpec[], said: Inputs, context: CalculatorContext): Inputs {
  const known: Record<string, InputValue> = {};
  for (const spec of table) {
    const value = said[spec.name] ?? spec.fill?.(context) ?? null;
    if (value !== null) known[spec.name] = value;
  }
  return { ...said, ...known };
}

function question(spec: InputSpec, said: Inputs, inputs: Inputs, context: CalculatorContext): Outcome {
  return {
    kind: 'asks',
    asks: spec.known,
    ...askAgain(spec.known, spec, inputs, context),
    inputs: { ...said, asked: spec.name },
  };
}

/** The input's own question; the plain one where it has none, or where something else about it was absurd. */
function askAgain(known: InputName, spec: InputSpec, inputs: Inputs, context: CalculatorContext): Asking {
  const own = spec.known === known ? spec.ask?.(context, inputs) : undefined;
  return own ?? { question: PLAIN_QUESTIONS[known], choices: [] };
}

const PLAIN_QUESTIONS: Readonly<Record<InputName, string>> = {
  amps: 'How many amps are there?',
  people: 'How many is it?',
  nights: 'For how many nights?',
  hours: 'How many hours a day is it?',
  watts: 'How many watts does it draw?',
  degrees: 'How many degrees is it?',
  appliances: 'Which things, and how many of them?',
  inside: 'How many degrees is it inside?',
  outside: 'How many degrees is it outside?',
  month: 'Which month is it?',
  type: 'Please say it another way.',
  source: 'What heats it?',
  car: "How many kg does the car's plate or handbook say?",
  percent: 'How full is it, in per cent?',
  things: 'What is it, and how heavy?',
};
