import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/index.ts';
import { packedScorer } from '../../../src/match/model.ts';
import { createSee } from '../../../src/match/seen.ts';
import { takeOver } from '../../../src/match/take-over.ts';
import { train } from '../../../src/match/train.ts';
import type { TrainingInput } from '../../../src/match/training-input.ts';
import type { TrainingLine } from '../../../src/match/training-lines.ts';
import { vectorOf } from '../../../src/match/vector.ts';

const THINGS = 'pump bed fridge hob awning step toilet heater mirror roof locker lamp'.split(' ');
const ASKED = 'how do i open the,where is the,who mends the,what size is the,explain the,when may i lift the'.split(
  ',',
);
const LINES: readonly TrainingLine[] = THINGS.flatMap((thing) =>
  ASKED.map((asked) => ({ text: `${asked} ${thing}`, key: `topic/${thing}`, writer: 'ann' })),
);
const BEFORE: TrainingInput = { lines: LINES, glossary: [], namings: [], groups: {}, vans: {} };
const MODEL = train(BEFORE, 5);

const asks = (key: string, ...texts: string[]) =>
  texts.map((text) => ({ text, key: `topic/${key}`, writer: 'hirers' }));
const withLines = (...more: readonly TrainingLine[]): TrainingInput => ({ ...BEFORE, lines: [...LINES, ...more] });

function takenTo(after: TrainingInput): Model {
  const model = takeOver({ model: MODEL, before: BEFORE, after, hash: 'after' });
  if (model === null) throw new Error('too much was new');
  return model;
}

function chances(model: Model, input: TrainingInput, text: string): ReadonlyMap<string, number> {
  const scores = new Float64Array(model.keys.length);
  packedScorer(model.weights).score(vectorOf(createSee(input, model.vocabulary)(text), model.space), scores);
  const raised = scores.map(Math.exp);
  const sum = raised.reduce((all, one) => all + one, 0);
  return new Map(model.keys.map((key, label) => [key, (raised[label] as number) / sum]));
}

function bestOf(model: Model, input: TrainingInput, text: string): string | undefined {
  return [...chances(model, input, text)].sort(([, a], [, b]) => b - a)[0]?.[0];
}

describe('taking a trained model over to an edited graph', () => {
  const wordings = withLines(...asks('roof', 'hatch wont budge', 'my hatch is shut tight'));

  it('makes what is new likely for its topic at once', () => {
    const model = takenTo(wordings);
    for (const text of ['hatch wont budge', 'my hatch is shut tight']) {
      expect(chances(model, wordings, text).get('topic/roof')).toBeGreaterThan(0.9);
    }
    expect(bestOf(model, wordings, 'the hatch is stuck')).toBe('topic/roof');
    expect(model.hash).toBe('after');
  });

  it('leaves every line that was there its topic', () => {
    const model = takenTo(wordings);
    expect(LINES.filter(({ text, key }) => bestOf(model, wordings, text) !== key)).toEqual([]);
  });

  it('scores what shares nothing with the new lines as before, to the bit', () => {
    const after = withLines(...asks('roof', 'zzyzx qwrt'));
    const model = takenTo(after);
    const scores = (one: Model) => {
      const out = new Float64Array(one.keys.length);
      packedScorer(one.weights).score(vectorOf(createSee(after, one.vocabulary)('where is the pump'), one.space), out);
      return [...out];
    };
    expect(scores(model)).toEqual(scores(MODEL));
  });

  it('answers on a topic that is new, and takes nothing from the others for it', () => {
    const after = withLines(...asks('drone', 'may we fly a drone', 'drone flying allowed', 'is a drone ok'));
    const model = takenTo(after);
    expect(bestOf(model, after, 'flying the drone')).toBe('topic/drone');
    expect(LINES.filter(({ text, key }) => bestOf(model, after, text) !== key)).toEqual([]);
  });

  it('moves a wording that went from one topic to another', () => {
    const [first, ...rest] = LINES;
    const moved = { ...(first as TrainingLine), key: 'topic/bed' };
    const after = { ...BEFORE, lines: [moved, ...rest] };
    expect(bestOf(takenTo(after), after, moved.text)).toBe('topic/bed');
  });

  it('keeps the weights where only answers changed, and the confidence always', () => {
    const calibration = { best: [1], among: [2], lacks: [3] };
    const model = { ...MODEL, calibration };
    expect(takeOver({ model, before: BEFORE, after: BEFORE, hash: 'h' })?.weights).toBe(MODEL.weights);
    expect(takeOver({ model, before: BEFORE, after: wordings, hash: 'h' })?.calibration).toBe(calibration);
  });

  it('leaves another graph to be learnt anew', () => {
    const many = asks('bed', ...Array.from({ length: 201 }, (_, i) => `bunk number ${i}`));
    expect(takeOver({ model: MODEL, before: BEFORE, after: withLines(...many), hash: 'h' })).toBeNull();
  });
});
