import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';
import { type Model, packedScorer } from './model.ts';
import { roleOf } from './ranking.ts';
import type { See } from './seen.ts';
import type { TrainingInput } from './training-input.ts';
import type { TrainingLine } from './training-lines.ts';
import { vectorOf } from './vector.ts';

/** The lines that a change of the graph can bear on, as they were and as they will be. */
export type Neighbourhood = {
  readonly before: readonly TrainingLine[];
  readonly after: readonly TrainingLine[];
  /** The classes of lines that came, went or are read otherwise. */
  readonly touched: ReadonlySet<string>;
};

/** More changed lines than this are no small change. */
const MOST_CHANGED = 200;
/** So many classes that a changed line is likeliest to go to are its rivals. */
const RIVALS = 4;
/** A word of no more lines than this is worth having all of them. */
const RARE = 10;

/**
 * Lines that came or went, those that a new word of the firm makes read otherwise, all lines of their topics and of the
 * topics they are likeliest to be taken for, and all that share a rare word with them. Null: too much has changed.
 */
export function neighbourhoodOf(
  model: Model,
  before: TrainingInput,
  after: TrainingInput,
  see: See,
): Neighbourhood | null {
  const isReread = rereadBy(before, after);
  const [was, will] = [identities(before), identities(after)];
  const changed = [
    ...after.lines.filter((line) => !was.has(identity(line)) || isReread(line)),
    ...before.lines.filter((line) => !will.has(identity(line))),
  ];
  if (changed.length > MOST_CHANGED) return null;
  const touched = new Set(changed.map(({ key }) => key));
  const topics = new Set([...touched, ...rivalsOf(changed, model, see)].filter((key) => roleOf(key) === 'topic'));
  const own = new Set(changed.map(identity));
  const rare = rareWords(changed, after);
  const isNear = (line: TrainingLine): boolean =>
    topics.has(line.key) || own.has(identity(line)) || wordsOf(line).some((word) => rare.has(word));
  return { before: before.lines.filter(isNear), after: after.lines.filter(isNear), touched };
}

function identity({ key, text }: TrainingLine): string {
  return `${key}\t${text}`;
}

function identities({ lines }: TrainingInput): ReadonlySet<string> {
  return new Set(lines.map(identity));
}

function wordsOf({ text }: TrainingLine): readonly string[] {
  return tokens(text).map((token) => token.text);
}

/** Whether a line has a word that the glossary or the names of parts have only before or only after. */
function rereadBy(before: TrainingInput, after: TrainingInput): (line: TrainingLine) => boolean {
  const terms = (input: TrainingInput) =>
    new Map([...input.glossary, ...input.namings].map((term) => [JSON.stringify(term), term.says]));
  const [was, will] = [terms(before), terms(after)];
  const moved = [...[...will].filter(([term]) => !was.has(term)), ...[...was].filter(([term]) => !will.has(term))];
  const firsts = new Set(moved.flatMap(([, says]) => tokens(says).slice(0, 1)).map(({ text }) => stem(text)));
  return (line) => firsts.size > 0 && wordsOf(line).some((word) => firsts.has(stem(word)));
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

function rareWords(changed: readonly TrainingLine[], { lines }: TrainingInput): ReadonlySet<string> {
  const counts = new Map(changed.flatMap(wordsOf).map((word) => [word, 0]));
  for (const line of lines) {
    for (const word of new Set(wordsOf(line))) {
      const count = counts.get(word);
      if (count !== undefined) counts.set(word, count + 1);
    }
  }
  return new Set([...counts].filter(([, count]) => count <= RARE).map(([word]) => word));
}
