import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';
import { type Model, packedScorer } from './model.ts';
import { roleOf } from './ranking.ts';
import type { See } from './seen.ts';
import type { TrainingInput } from './training-input.ts';
import { identities, identityOf, type TrainingLine } from './training-lines.ts';
import { vectorOf } from './vector.ts';

/** The lines that a change of the graph can bear on, as they were and as they will be. */
export type Neighbourhood = {
  /** Of the lines as they were, those that are gone or were read otherwise. */
  readonly gone: readonly TrainingLine[];
  /** Those that are there before and after, and read alike. */
  readonly stayed: readonly TrainingLine[];
  /** Of the lines as they will be, those that are new or will be read otherwise. */
  readonly come: readonly TrainingLine[];
  /** The classes of lines that came, went or are read otherwise. */
  readonly touched: ReadonlySet<string>;
};

/** More changed lines than this are no small change. */
const MOST_CHANGED = 200;
/** So many classes that a changed line is likeliest to go to are its rivals. */
const RIVALS = 4;
/** A word of no more lines than this is worth having all of them. */
const RARE = 10;

/** How texts will be read, and how often each word will stand in the lines. */
export type Reading = { readonly see: See; readonly counts: ReadonlyMap<string, number> };

/**
 * Lines that came or went, those that a new word of the firm makes read otherwise, all lines of their topics and of the
 * topics they are likeliest to be taken for, and all that share a rare word with them. Null: too much has changed.
 */
export function neighbourhoodOf(
  model: Model,
  before: TrainingInput,
  after: TrainingInput,
  { see, counts }: Reading,
): Neighbourhood | null {
  const isReread = rereadBy(before, after);
  const [was, will] = [identities(before.lines), identities(after.lines)];
  const gone = before.lines.filter((line) => !will.has(identityOf(line)) || isReread(line));
  const come = after.lines.filter((line) => !was.has(identityOf(line)) || isReread(line));
  const changed = [...gone, ...come];
  if (changed.length > MOST_CHANGED) return null;
  const touched = new Set(changed.map(({ key }) => key));
  const topics = new Set([...touched, ...rivalsOf(changed, model, see)].filter((key) => roleOf(key) === 'topic'));
  const own = new Set(changed.map(identityOf));
  const words = changed.flatMap(({ text }) => wordsOf(text));
  const hasRare = namingAny(words.filter((word) => (counts.get(word) ?? 0) <= RARE));
  const stayed = after.lines.filter((line) => !own.has(identityOf(line)) && (topics.has(line.key) || hasRare(line)));
  return { gone, stayed, come, touched };
}

function wordsOf(text: string): readonly string[] {
  return tokens(text).map((token) => token.text);
}

/** Whether a line has one of some words. Few lines are cut: most have not even the letters. */
function namingAny(words: readonly string[]): (line: TrainingLine) => boolean {
  const wanted = [...new Set(words)];
  return ({ text }) => {
    const letters = text.toLowerCase();
    const maybe = wanted.filter((word) => letters.includes(word));
    return maybe.length > 0 && wordsOf(text).some((word) => maybe.includes(word));
  };
}

/** Whether a line has the first word of something that the glossary or the names of parts have only before or only after. */
function rereadBy(before: TrainingInput, after: TrainingInput): (line: TrainingLine) => boolean {
  const terms = (input: TrainingInput) =>
    new Map([...input.glossary, ...input.namings].map((term) => [JSON.stringify(term), term.says]));
  const [was, will] = [terms(before), terms(after)];
  const moved = [...[...will].filter(([term]) => !was.has(term)), ...[...was].filter(([term]) => !will.has(term))];
  const firsts = [...new Set(moved.flatMap(([, says]) => wordsOf(says).slice(0, 1)).map(stem))];
  return ({ text }) => {
    const letters = text.toLowerCase();
    return (
      firsts.some((first) => letters.includes(beginning(first))) &&
      wordsOf(text).some((word) => firsts.includes(stem(word)))
    );
  };
}

/** What a stem has in common with its word: 'batteri' is of 'battery'. */
function beginning(stemmed: string): string {
  return stemmed.length > 3 ? stemmed.slice(0, -1) : stemmed;
}

function rivalsOf(lines: readonly TrainingLine[], { keys, space, weights }: Model, see: See): readonly string[] {
  const scorer = packedScorer(weights);
  const scores = new Float64Array(keys.length);
  return lines.flatMap(({ text }) => {
    scorer.score(vectorOf(see(text), space), scores);
    const order = [...scores.keys()].sort((a, b) => (scores[b] as number) - (scores[a] as number));
    return order.slice(0, RIVALS).map((label) => keys[label] as string);
  });
}
