import type { TopicId } from '../basics/ids.ts';
import { CALCULATORS } from './calculators.ts';
import { TROUBLE } from './plainly.ts';
import { countedIn } from './quantities.ts';
import { readingOf } from './reading.ts';
import type { CalculatorContext } from './types.ts';

/** From here on the subject is looked for first. */
const ASKS = /\b(how (long|many|often|quick|quickly|soon|fast)|will|would|does|enough|good for)\b/;

/**
 * The sum that a message asks for by its subject: the first one named after the words that ask ('the battery is fine but
 * how long will the gas last'), or else the last one before them ('gas how long off grid').
 *
 * @returns Null when no subject is named with a question of its kind.
 */
export function sumAsked(text: string): TopicId | null {
  const said = countedIn(text)
    .pieces.map((piece) => piece.text)
    .join(' ');
  const asking = Math.max(0, said.search(ASKS));
  const named = CALCULATORS.flatMap(({ topic, subject }) =>
    subject === undefined || !subject.asks.test(said)
      ? []
      : [...said.matchAll(new RegExp(subject.named, 'g'))].map(({ index }) => ({ topic, at: index - asking })),
  );
  const after = named.filter(({ at }) => at >= 0).sort((a, b) => a.at - b.at)[0];
  const before = named.filter(({ at }) => at < 0).sort((a, b) => b.at - a.at)[0];
  return (after ?? before)?.topic ?? null;
}

/** Where a question begins: 'the post is 10 amps' holds none. */
const BEGINS_QUESTION =
  /(^|[.,;!] ?|\b(and|but|so|also|or|then|please|if|whether|know|tell me|wonder\w*) )(can|could|may|might|is|are|will|would|shall|should|does|do|how|what|which|where|when|why|who)\b/;

/** Whether a question begins in a text; a mark at its end may belong to what stood before it. */
export function asks(text: string): boolean {
  return BEGINS_QUESTION.test(text.toLowerCase());
}

/** Whether a text tells of something that has gone wrong. */
export function tellsFault(text: string): boolean {
  return TROUBLE.test(text.toLowerCase());
}

/**
 * The sums that a message asks for so plainly, with what they work from, that nothing else can be meant: 'kettle and
 * toaster together on ten amps?'. Mostly none or one.
 */
export function sumsPlainlyAsked(text: string, context: CalculatorContext): readonly TopicId[] {
  const reading = readingOf(text, context, null);
  return CALCULATORS.flatMap(({ topic, plainly }) => (plainly?.(reading) === true ? [topic] : []));
}
