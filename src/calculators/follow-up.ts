import type { TopicId } from '../basics/ids.ts';
import type { Piece } from '../language/numbers.ts';
import type { Calculator } from './calculator.ts';
import { calculatorOf } from './calculators.ts';
import type { InputKind, Reading } from './input-spec.ts';
import { parseLoads } from './kept.ts';
import { batteryAppliances, mainsAppliances, singular } from './lexicon.ts';
import type { Unit } from './quantities.ts';
import { readingOf, readTable } from './reading.ts';
import type { CalculatorContext, Inputs } from './types.ts';

/** Words that ask nothing: beside its inputs a follow-up holds hardly any others. */
const EMPTY = new Set(
  (
    "and what about how if or ok okay but then with without plus only just same for on in at the a an is it it's its we i us our my me are would " +
    'will could can does do that this instead too also as well say so now of to have had got were was be make there please thanks thank hmm no yes not each everyone site farm pitch place post here today time now re measured remeasured checked recounted again correction make changed update wait other one wrong car need needs want wants prefer might may get getting take takes limit allows move moved ' +
    "actually sorry mean meant should said use used using run running turn turned off up down all both still fit work more less it'd that's " +
    'outside inside degrees tonight overnight adults adult kids kid children people person amp amps night nights day days week hours hour gas electric ' +
    'january february march april may june july august september october november december summer winter spring autumn'
  ).split(' '),
);
const OPENER =
  /^(and|what about|how about|what if|but|or|ok and|then|so|if|with|without|plus|only|just|in|on|at|for|instead|now|no|when|once|sorry|i meant?|actually)\b/;
/** A question of its own: 'where', 'how do I'. 'When we are only two' is a condition. */
const QUESTION =
  /\b(where|why|who|which|when (will|is|do|does|did|can|should|must)|how (do|can|to|should|does|long|many|much|often|far|big))\b/;
/** The last question again: 'how many days is that when we are only two?'. */
const AGAIN =
  /\bhow (long|much|many (days|nights|minutes|litres|fills))\b( (is|would|will|does|do|are) (that|it|this|they)( (be|take|last))?)\b/i;
/** Puts the change first: 'my sister prefers December, how about then'. */
const TRAILER =
  /\b(how|what) about (then|that|it)\b|\binstead\W*$|\bwhat then\b|\b(would|will|is|does|could|can) (it|that|they|this|we|those|both) (all )?still\b/;
/** What is said before a change: thanks, an apology, news. */
const COURTESY =
  /\b(thanks?|thank you|cheers|ta|ok|okay|great|lovely|brilliant|perfect|good|right|sorry|silly|wrong|mistake|misread|oops|wait|hang on|actually|ah|oh|hmm|no|yes)\b/;

/** Subjects, and the topics in which naming them is no change of subject. */
const SUBJECTS: readonly (readonly [RegExp, RegExp])[] = [
  [/(?<!\bhot )\bwater\b(?! heater)/, /^(water|hotwater|load)-/],
  [/\b(toilet|loo|cassette)\b/, /^(toilet|water)-/],
  [/\bbattery\b/, /^dc-/],
  [/\b(solar|panel)\b/, /^dc-/],
  [/\bgas\b/, /^(gas|heating|hotwater|mains|load)-/],
  [/\bshowers?\b/, /^(water|hotwater|gas|dc)-/],
  [/\b(car|towing|tow)\b/, /^towing-/],
  [/\bramps?\b/, /^setup-/],
];

/** Strange words that a follow-up may still hold after its 'and' or 'what about'. */
const MOST_STRANGE = 2;
/** Strange words from which a message that does not answer the open question is about something else. */
const ASIDE = 3;

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
  const calculator = calculatorOf(topic);
  if (calculator === null || previous === null) return false;
  const reading = readingOf(text.replace(AGAIN, ' '), context, previous);
  if (QUESTION.test(reading.text)) return false;
  if (SUBJECTS.some(([subject, at]) => subject.test(reading.text) && !at.test(topic))) return false;
  const read = readTable(calculator.inputs, reading);
  if (read.absurd === null && Object.keys(read.values).length === 0) return false;
  return strangeWords(reading) <= (opensChange(reading) ? MOST_STRANGE : 0) || changesAtLast(reading, calculator);
}

function opensChange({ text }: Reading): boolean {
  return OPENER.test(text) || TRAILER.test(text);
}

/**
 * Whether the last sentence changes an input by itself and what stands before it is thanks, an apology or news: 'Thank you.
 * And on 6 amps, at the farm?', 'Silly me, I read the wrong line. It is 2,120.'
 */
function changesAtLast({ counted, context, previous }: Reading, { inputs }: Calculator): boolean {
  const { pieces } = counted;
  const read = (part: readonly Piece[]) =>
    readingOf(part.map(({ typed, glued }) => (glued ? typed : ` ${typed}`)).join(''), context, previous);
  return pieces.some((piece, stop) => {
    if (stop === 0 || stop >= pieces.length - 2 || !/^([.,;!]|so|but)$/.test(piece.text)) return false;
    const [before, last] = [read(pieces.slice(0, stop)), read(pieces.slice(stop + 1))];
    const { values, absurd } = readTable(inputs, last);
    if (absurd === null && Object.keys(values).length === 0) return false;
    const opens = opensChange(last);
    if (strangeWords(last) > (opens ? MOST_STRANGE : 0)) return false;
    return COURTESY.test(before.text) || (opens && strangeWords(before) <= MOST_STRANGE);
  });
}

/** What hirers measure or read off a plate: words that give it want a sum. */
const MEASURED = new Set<InputKind>(['slope', 'mm', 'weight', 'volts', 'ampHours']);

/** Whether a text gives any input at all of the sum of `topic`, or an absurd one. */
export function tellsAny(topic: TopicId, text: string, context: CalculatorContext): boolean {
  const calculator = calculatorOf(topic);
  if (calculator === null) return false;
  const { values, absurd } = readTable(calculator.inputs, readingOf(text, context, null));
  return absurd !== null || calculator.inputs.some(({ name, as }) => as !== 'flag' && Object.hasOwn(values, name));
}

/**
 * Whether a text gives what the sum of `topic` works from: a measure, several things that draw power, or things with a
 * number. A thing alone may be spoken of for any reason.
 */
export function tellsInput(topic: TopicId, text: string, context: CalculatorContext): boolean {
  const calculator = calculatorOf(topic);
  if (calculator === null) return false;
  const reading = readingOf(text, context, null);
  const { values, absurd } = readTable(calculator.inputs, reading);
  if (absurd !== null) return true;
  return calculator.inputs.some(({ name, as }) => {
    const value = values[name];
    if (value === undefined) return false;
    if (MEASURED.has(as)) return true;
    if (as === 'appliances') return parseLoads(value).length > 1 || counts(reading, ['watts', 'amps']);
    return as === 'things' && counts(reading, ['kg', 'litres', 'bare']);
  });
}

function counts({ counted }: Reading, units: readonly Unit[]): boolean {
  return counted.quantities.some(({ unit }) => units.includes(unit));
}

/**
 * Whether a message leaves the open question aside: it answers nothing that was asked and speaks of other things, so
 * that what it seems to give ('where do four of us shower?') is not an input.
 */
export function isAside(reading: Reading, values: Inputs): boolean {
  if (reading.asked === null || Object.hasOwn(values, reading.asked)) return false;
  if (reading.asked === 'watts' && Object.hasOwn(values, 'appliances')) return false;
  return strangeWords(reading) >= ASIDE || QUESTION.test(reading.text);
}

/** Words that are neither empty, nor part of a quantity, nor the name of something that draws power. */
function strangeWords({ counted, context }: Reading): number {
  const names = namesIn(context);
  return counted.pieces.filter(
    (piece, i) =>
      piece.kind === 'word' &&
      !EMPTY.has(piece.text) &&
      !names.has(singular(piece.text)) &&
      !counted.quantities.some((quantity) => i >= quantity.from && i < quantity.to),
  ).length;
}

const cache = new WeakMap<CalculatorContext['figures'], ReadonlySet<string>>();

function namesIn({ figures, constants }: CalculatorContext): ReadonlySet<string> {
  const known = cache.get(figures);
  if (known !== undefined) return known;
  const all = [...mainsAppliances(figures, constants), ...batteryAppliances(figures, constants)];
  const names = new Set(all.flatMap((appliance) => appliance.phrases.flat()));
  cache.set(figures, names);
  return names;
}
