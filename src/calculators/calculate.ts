import type { TopicId } from '../basics/ids.ts';
import type { Calculator } from './calculator.ts';
import { CALCULATORS } from './calculators.ts';
import type { InputSpec, InputValue, Reading } from './input-spec.ts';
import { readingOf, readTable } from './reading.ts';
import type { CalculatorContext, Inputs, Outcome } from './types.ts';
import { rounded } from './units.ts';

const byTopic: ReadonlyMap<TopicId, Calculator> = new Map(
  CALCULATORS.map((calculator) => [calculator.topic, calculator]),
);

/** The topics that are answered by a sum. */
export function isCalculation(topic: TopicId): boolean {
  return byTopic.has(topic);
}

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
  const calculator = byTopic.get(topic);
  if (calculator === undefined) throw new Error(`no calculator for the topic '${topic}'`);
  const reading = readingOf(text, context, previous);
  const read = readTable(calculator.inputs, reading);
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

/** Words that carry no input: a follow-up holds nothing else beside its inputs. */
const EMPTY =
  /^(and|what|about|how|if|or|ok|okay|but|then|with|without|plus|only|just|same|for|on|in|at|the|a|an|is|it|it's|its|we|i|us|our|my|me|are|would|will|could|can|does|do|that|this|instead|too|also|as|well|say|so|now|of|to|have|had|got|were|was|be|make|there|when|please|thanks|hmm|no|yes|not|actually|sorry|mean|meant|should|said|use|used|using|run|running|turn|turned|off|up|down|all|both|still|fit|work|ok\?|\?|,|\.|!|-)$/;
const OPENER =
  /^(and|what about|how about|what if|but|or|ok and|then|if|with|without|plus|only|just|in|on|for|instead|no,|sorry|i meant?|actually)\b/;

/**
 * Whether `text` changes an input of the last sum rather than starting something new: 'what about 16 amps', 'and with
 * the kettle too', 'and in december'.
 *
 * @param previous The last sum's inputs; without them nothing can be changed.
 */
export function changesInput(
  text: string,
  topic: TopicId,
  previous: Inputs | null,
  context: CalculatorContext,
): boolean {
  const calculator = byTopic.get(topic);
  if (calculator === undefined || previous === null) return false;
  const reading = readingOf(text, context, previous);
  const read = readTable(calculator.inputs, reading);
  if (read.absurd === null && Object.keys(read.values).length === 0) return false;
  const strange = strangeWords(reading);
  return OPENER.test(reading.text) ? strange <= 3 : strange === 0;
}

/** Words that are neither empty nor part of a quantity. */
function strangeWords(reading: Reading): number {
  const { pieces, quantities } = reading.counted;
  return pieces.filter(
    (piece, i) =>
      piece.kind === 'word' &&
      !EMPTY.test(piece.text) &&
      !quantities.some((quantity) => i >= quantity.from && i < quantity.to),
  ).length;
}
