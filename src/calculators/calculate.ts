import type { TopicId } from '../basics/ids.ts';
import { calculatorOf } from './calculators.ts';
import { isAside } from './follow-up.ts';
import type { InputSpec, InputValue } from './input-spec.ts';
import { readingOf, readTable } from './reading.ts';
import type { CalculatorContext, Inputs, Outcome } from './types.ts';
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
    return { kind: 'refused', refused: known, says, inputs: { ...said, asked: spec.name } };
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
  const { question: says, choices } = spec.ask?.(context, inputs) ?? {
    question: `Please tell me the ${spec.known}.`,
    choices: [],
  };
  return { kind: 'asks', asks: spec.known, question: says, choices, inputs: { ...said, asked: spec.name } };
}
