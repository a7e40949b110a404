import type { PartId } from '../basics/ids.ts';
import { type Calibration, type Signals, signalsOf } from './calibration.ts';
import { fitLogistic, type Row } from './logistic.ts';
import { type Model, packedScorer } from './model.ts';
import { createRanker, type Ranking, roleOf } from './ranking.ts';
import { createSee } from './seen.ts';
import { startTraining } from './train.ts';
import { TRAIN, type TrainOptions } from './train-options.ts';
import type { TrainingInput } from './training-input.ts';
import { FIRM, type TrainingLine } from './training-lines.ts';
import { vectorOf } from './vector.ts';

/** One wording that would go elsewhere, had its writer never written. */
export type Confusion = {
  readonly text: string;
  readonly key: string;
  readonly goesTo: string;
  readonly probability: number;
};

/** What the held-out lines told. */
export type Calibrated = { readonly calibration: Calibration; readonly confusions: readonly Confusion[] };

/** Goes in steps of one epoch of one fold; `result` after the last. */
export type Calibrating = { readonly step: () => boolean; readonly result: () => Calibrated };

const FOLDS = 5;
/** Of all the rows' weight: questions of the business that no topic answers, and what is none of ours. */
const UNANSWERABLE = { leftOutTopics: 0.1, background: 0.4 };
const RIDGE = 1;

/** A held-out line scored: its signals, and whether the best, or one of three, was right. */
type Held = {
  readonly signals: Signals;
  readonly sort: 'topic' | 'left-out' | 'background' | 'lacking';
  readonly best: boolean;
  readonly among: boolean;
};

/**
 * Fits the calibration on the wordings alone. Each fold leaves out one writer, so that the rest must understand a
 * stranger, and with them a fifth of the topics, whose lines then stand for questions that nobody wrote a topic for.
 */
export function startCalibrating(input: TrainingInput, seed: number, options: TrainOptions = TRAIN): Calibrating {
  const foldOf = foldsOf(input.lines);
  const topics = [...new Set(input.lines.map((line) => line.key).filter((key) => roleOf(key) === 'topic'))];
  const topicFold = new Map(topics.map((key, i) => [key, i % FOLDS]));
  const held: Held[] = [];
  const confusions: Confusion[] = [];
  let fold = 0;
  let training = startTraining(without(0), seed, options);

  function without(number: number): TrainingInput {
    const stays = (line: TrainingLine) => foldOf(line) !== number && topicFold.get(line.key) !== number;
    return { ...input, lines: input.lines.filter(stays) };
  }

  return {
    step: () => {
      if (fold === FOLDS || training.step()) return fold < FOLDS;
      const out = input.lines.filter((line) => foldOf(line) === fold || topicFold.get(line.key) === fold);
      scoreFold(out, training.model(), input, held, confusions);
      fold++;
      if (fold < FOLDS) training = startTraining(without(fold), seed, options);
      return fold < FOLDS;
    },
    result: () => ({ calibration: fitted(held), confusions }),
  };
}

/** All steps at once. */
export function calibrate(input: TrainingInput, seed: number, options: TrainOptions = TRAIN): Calibrated {
  const calibrating = startCalibrating(input, seed, options);
  while (calibrating.step());
  return calibrating.result();
}

/** Lines of one writer share a fold; with fewer than two writers the lines are dealt out. What the firm says stays in. */
function foldsOf(lines: readonly TrainingLine[]): (line: TrainingLine) => number {
  const writers = [...new Set(lines.filter((line) => roleOf(line.key) === 'topic').map((line) => line.writer))];
  const others = [...new Set(lines.map((line) => line.writer))].filter((writer) => !writers.includes(writer));
  const hands = [...writers.filter((writer) => writer !== FIRM), ...others];
  const dealt = new Map(lines.map((line, i) => [line, i % FOLDS]));
  return (line) => {
    if (line.writer === FIRM) return -1;
    return writers.length > 2 ? hands.indexOf(line.writer) % FOLDS : (dealt.get(line) as number);
  };
}

/** A van as the fold's model sees it. */
type FoldVan = {
  readonly has: ReadonlySet<string>;
  readonly parts: ReadonlySet<PartId>;
  readonly inScope: readonly boolean[];
};

function scoreFold(
  out: readonly TrainingLine[],
  { keys, space, vocabulary, weights }: Model,
  input: TrainingInput,
  held: Held[],
  confusions: Confusion[],
): void {
  const see = createSee(input, vocabulary);
  const rank = createRanker({ scorer: packedScorer(weights), roles: keys.map(roleOf), temperature: 1 });
  const known = new Set(keys);
  const vans: FoldVan[] = Object.values(input.vans).map((van) => {
    const has = new Set(van.keys);
    return { has, parts: new Set(van.parts), inScope: keys.map((key) => roleOf(key) !== 'topic' || has.has(key)) };
  });
  for (const [i, { text, key }] of out.entries()) {
    const role = roleOf(key);
    if (role === 'chat' || role === 'person') continue;
    const sort = role === 'background' ? role : known.has(key) ? 'topic' : 'left-out';
    const seen = see(text);
    const vector = vectorOf(seen, space);
    const scoreIn = (among: readonly FoldVan[], as: Held['sort']): Ranking | null => {
      const van = among[i % Math.max(1, among.length)];
      if (van === undefined) return null;
      const ranking = rank(vector, van.inScope, null);
      const right = ranking.inScope.slice(0, 3).findIndex(({ label }) => keys[label] === key);
      held.push({ signals: signalsOf(ranking, seen, van.parts), sort: as, best: right === 0, among: right >= 0 });
      return ranking;
    };
    const best = scoreIn(sort === 'topic' ? vans.filter(({ has }) => has.has(key)) : vans, sort)?.inScope[0];
    if (sort !== 'topic') continue;
    scoreIn(
      vans.filter(({ has }) => !has.has(key)),
      'lacking',
    );
    const goesTo = keys[best?.label ?? -1];
    if (best !== undefined && goesTo !== undefined && goesTo !== key) {
      confusions.push({ text, key, goesTo, probability: best.probability });
    }
  }
}

function fitted(held: readonly Held[]): Calibration {
  const counts = { topic: 0, 'left-out': 0, background: 0, lacking: 0 };
  for (const { sort } of held) counts[sort]++;
  const answerable = 1 - UNANSWERABLE.leftOutTopics - UNANSWERABLE.background;
  const weights = {
    topic: 1,
    'left-out': (UNANSWERABLE.leftOutTopics / answerable) * (counts.topic / Math.max(1, counts['left-out'])),
    background: (UNANSWERABLE.background / answerable) * (counts.topic / Math.max(1, counts.background)),
    lacking: 0,
  };
  const rows = (y: (one: Held) => boolean): Row[] =>
    held
      .filter(({ sort }) => weights[sort] > 0)
      .map((one) => ({ x: one.signals, y: y(one), weight: weights[one.sort] }));
  // What is none of ours is no lack either.
  const lacking = held
    .filter(({ sort }) => sort !== 'left-out')
    .map((one) => ({
      x: one.signals,
      y: one.sort === 'lacking',
      weight: one.sort === 'background' ? weights.background : 1,
    }));
  return {
    best: fitLogistic(
      rows((one) => one.best),
      RIDGE,
    ),
    among: fitLogistic(
      rows((one) => one.among),
      RIDGE,
    ),
    lacks: fitLogistic(lacking, RIDGE),
  };
}
