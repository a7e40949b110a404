import type { Knowledge } from '../../../src/knowledge/knowledge.ts';
import { packedScorer } from '../../../src/match/model.ts';
import { createRanker, roleOf } from '../../../src/match/ranking.ts';
import { createSee } from '../../../src/match/seen.ts';
import { train } from '../../../src/match/train.ts';
import { TRAIN, type TrainOptions } from '../../../src/match/train-options.ts';
import { type TrainingInput, trainingInput } from '../../../src/match/training-input.ts';
import { vectorOf } from '../../../src/match/vector.ts';
import type { Recorded } from './recorded.ts';

type Variant = { readonly name: string; readonly input: TrainingInput; readonly options: TrainOptions };

/** The way it is, and with one thing left out at a time. */
function variants(input: TrainingInput): readonly Variant[] {
  const without = (name: string, over: Partial<TrainingInput>): Variant => ({
    name: `without ${name}`,
    input: { ...input, ...over },
    options: TRAIN,
  });
  const set = (name: string, over: Partial<TrainOptions>): Variant => ({ name, input, options: { ...TRAIN, ...over } });
  const writers = [...new Set(input.lines.filter((line) => roleOf(line.key) === 'topic').map((line) => line.writer))];
  const someWriters = (count: number) => {
    const out = new Set(writers.slice(count + 1));
    return input.lines.filter((line) => !out.has(line.writer));
  };
  return [
    { name: 'as it is', input, options: TRAIN },
    without('weights shared by system and kind', { groups: {} }),
    without('the glossary', { glossary: [] }),
    without('parts named', { namings: [] }),
    without('background, chat and person', { lines: input.lines.filter((line) => roleOf(line.key) === 'topic') }),
    set('without naive Bayes mixed in', { bayes: 0 }),
    set('no features dropped in training', { dropped: 0, epochs: 3 }),
    set('features of single lines kept', { fewestLines: 1 }),
    { name: 'one writer’s wordings', input: { ...input, lines: someWriters(1) }, options: TRAIN },
    { name: 'three writers’ wordings', input: { ...input, lines: someWriters(3) }, options: TRAIN },
  ];
}

/** Accuracy and share among the three best on recorded single questions, by half, for each variant. */
export function ablation(knowledge: Knowledge, questions: readonly Recorded[]): readonly string[] {
  return variants(trainingInput(knowledge)).map(({ name, input, options }) => {
    const { keys, vocabulary, space, weights } = train(input, 1, options);
    const see = createSee(input, vocabulary);
    const rank = createRanker({ scorer: packedScorer(weights), roles: keys.map(roleOf), temperature: 1 });
    const cells = (['tuning', 'aside'] as const).map((half) => {
      const some = questions.filter((one) => one.half === half);
      const places = some.map(({ text, van, topics }) => {
        const has = new Set(input.vans[van]?.keys);
        const inScope = keys.map((key) => roleOf(key) !== 'topic' || has.has(key));
        const { inScope: ranked } = rank(vectorOf(see(text), space), inScope, null);
        return ranked.findIndex(({ label }) => keys[label] === `topic/${topics[0]}`);
      });
      const share = (within: number) =>
        ((100 * places.filter((at) => at >= 0 && at < within).length) / some.length).toFixed(1);
      return `${share(1)} / ${share(3)}`;
    });
    return `| ${name} | ${cells.join(' | ')} |`;
  });
}
