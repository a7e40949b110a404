import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/index.ts';
import { packedScorer } from '../../../src/match/model.ts';
import { createSee } from '../../../src/match/seen.ts';
import { touchUp } from '../../../src/match/touch-up.ts';
import { startTraining, train } from '../../../src/match/train.ts';
import { inputHash, type TrainingInput } from '../../../src/match/training-input.ts';
import type { TrainingLine } from '../../../src/match/training-lines.ts';
import { vectorOf } from '../../../src/match/vector.ts';

const THINGS = 'pump bed fridge hob awning step toilet heater mirror roof locker lamp socket hose cable table'.split(
  ' ',
);
const ASKED =
  'how do i open,where is,who mends,what size is,is it right that,please explain,why not use,when may i lift'.split(
    ',',
  );
const WITH =
  'the old,my,a broken,our big,this small,that loose,the other,any,one more,the nearest,some,the left,the right'.split(
    ',',
  );
const WHEN = ['', ' today', ' at night'];

/** 16 topics of 312 lines each: more than a small graph has, which is learnt in full. */
const LINES: readonly TrainingLine[] = THINGS.flatMap((thing) =>
  ASKED.flatMap((asked) =>
    WITH.flatMap((kind) =>
      WHEN.map((when) => ({ text: `${asked} ${kind} ${thing}${when}`, key: `topic/${thing}`, writer: 'ann' })),
    ),
  ),
);
const BEFORE: TrainingInput = {
  lines: LINES,
  glossary: [],
  namings: [],
  groups: Object.fromEntries(THINGS.map((thing) => [`topic/${thing}`, ['kind/fact']])),
  vans: {},
};
const SEED = 5;
const training = startTraining(BEFORE, SEED);
while (training.step());
const LEARNT = { model: training.model(), warm: training.warm(), before: BEFORE };

const asks = (key: string, ...texts: string[]) =>
  texts.map((text) => ({ text, key: `topic/${key}`, writer: 'hirers' }));
const touched = (after: TrainingInput): Model | null => touchUp({ ...LEARNT, after, hash: inputHash(after) }, SEED);
const withLines = (...more: readonly TrainingLine[]): TrainingInput => ({ ...BEFORE, lines: [...LINES, ...more] });

/** The scores of a text for the trained model's classes, around zero. */
function scoresOf(model: Model | null, input: TrainingInput, text: string): readonly number[] {
  if (model === null) throw new Error('nothing was learnt');
  const scores = new Float64Array(model.keys.length);
  packedScorer(model.weights).score(vectorOf(createSee(input, model.vocabulary)(text), model.space), scores);
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  return [...scores].map((score) => score - mean);
}

function bestOf(model: Model | null, input: TrainingInput, text: string): string | undefined {
  const scores = scoresOf(model, input, text);
  return model?.keys[scores.indexOf(Math.max(...scores))];
}

describe('learning a small change on from a trained model', () => {
  const wordings = withLines(...asks('roof', 'hatch wont budge', 'my hatch is shut tight', 'hatch, hatch, hatch'));

  it('takes new words to their topic, and leaves the others theirs, as the whole training does', () => {
    const [quick, whole] = [touched(wordings), train(wordings, SEED)];
    const texts = ['the hatch is stuck', ...LINES.filter((_, i) => i % 37 === 0).map(({ text }) => text)];
    expect(bestOf(quick, wordings, 'the hatch is stuck')).toBe('topic/roof');
    expect(texts.map((text) => bestOf(quick, wordings, text))).toEqual(
      texts.map((text) => bestOf(whole, wordings, text)),
    );
  });

  it('comes near to the whole training on the new words, which the model it begins with is far from', () => {
    const whole = train(wordings, SEED);
    const apart = (model: Model | null): number => {
      const texts = ['hatch wont budge', 'my hatch is shut tight', 'hatch, hatch, hatch'];
      return texts.reduce((sum, text) => {
        const [a, b] = [scoresOf(model, wordings, text), scoresOf(whole, wordings, text)];
        return sum + a.reduce((part, score, i) => part + (score - (b[i] as number)) ** 2, 0);
      }, 0);
    };
    expect(apart(touched(wordings))).toBeLessThan(0.1 * apart(LEARNT.model));
  });

  it('moves nothing by going on: the same lines give the same weights to the bit', () => {
    expect(touched(BEFORE)?.weights).toEqual(LEARNT.model.weights);
  });

  it('gives the same weights each time', () => {
    expect(touched(wordings)?.weights).toEqual(touched(wordings)?.weights);
  });

  it('learns a topic that is new, in its groups', () => {
    const after = {
      ...withLines(...asks('drone', 'may we fly a drone', 'drone flying allowed', 'is a drone ok', 'fly my drone')),
      groups: { ...BEFORE.groups, 'topic/drone': ['kind/fact'] },
    };
    expect(bestOf(touched(after), after, 'flying the drone')).toBe('topic/drone');
    expect(bestOf(touched(after), after, 'where is the old lamp')).toBe('topic/lamp');
  });

  it('reads lines anew that have a word of the glossary that is new', () => {
    const lines = withLines(...asks('fridge', 'the eskie hums', 'our eskie is loud'));
    const after = { ...lines, glossary: [{ says: 'eskie', means: 'fridge' }] };
    const model = touched(after);
    expect(bestOf(model, after, 'eskie')).toBe('topic/fridge');
    expect(model?.vocabulary.counts.has('eskie')).toBe(true);
  });

  it('leaves to the whole training a topic that went, a change of many lines, a small graph, and another model’s state', () => {
    expect(touched({ ...BEFORE, lines: LINES.filter(({ key }) => key !== 'topic/pump') })).toBeNull();
    expect(touched({ ...BEFORE, lines: LINES.slice(0, -250) })).toBeNull();
    const small = { ...BEFORE, lines: LINES.filter((_, i) => i % 2 === 0) };
    expect(touched(small)).toBeNull();
    const other = { ...LEARNT, warm: { ...LEARNT.warm, hash: 'other' } };
    expect(touchUp({ ...other, after: wordings, hash: 'h' }, SEED)).toBeNull();
  });
});
