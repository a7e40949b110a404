import { describe, expect, it } from 'vitest';
import { codeNameOf } from '../../../src/basics/learning.ts';
import { calibrate } from '../../../src/match/calibrate.ts';
import { SIGNALS } from '../../../src/match/calibration.ts';
import { train } from '../../../src/match/train.ts';
import { optionsFor, TRAIN } from '../../../src/match/train-options.ts';
import { inputHash, type TrainingInput } from '../../../src/match/training-input.ts';

const lines = (key: string, writer: string, ...texts: readonly string[]) =>
  texts.map((text) => ({ text, key: `topic/${key}`, writer }));

const INPUT: TrainingInput = {
  lines: [
    ...lines('pump', 'ann', 'the pump is silent', 'pump will not run', 'no sound from the pump'),
    ...lines('pump', 'bob', 'pump dead', 'is the pump broken', 'water pump does nothing'),
    ...lines('pump', 'cat', 'pump stopped', 'why does the pump not work', 'the pump has died'),
    ...lines('bed', 'ann', 'how do I make the bed', 'bed from the sofa', 'turn the seats into a bed'),
    ...lines('bed', 'bob', 'making up the double bed', 'where do the bed slats go', 'bed for tonight'),
    ...lines('bed', 'cat', 'fold the bed out', 'the bed pulls out how', 'set up the bed'),
    { text: 'who won the football', key: 'background', writer: 'zoe' },
    { text: 'what a lovely day', key: 'background', writer: 'zoe' },
  ],
  glossary: [],
  namings: [],
  groups: {},
  vans: { one: { keys: ['topic/pump', 'topic/bed'], parts: [] }, two: { keys: ['topic/bed'], parts: [] } },
};

describe('training', () => {
  it('gives the same model to the bit for the same input and seed, and another for another seed', () => {
    expect([...train(INPUT, 5).weights.rows]).toEqual([...train(INPUT, 5).weights.rows]);
    expect([...train(INPUT, 5).weights.rows]).not.toEqual([...train(INPUT, 6).weights.rows]);
  });

  it('names its input by its content: every word counts, what vans have does not', () => {
    const [first, ...rest] = INPUT.lines;
    const edited = {
      ...INPUT,
      lines: [{ ...(first as (typeof INPUT.lines)[number]), text: 'the pump is quiet' }, ...rest],
    };
    expect(inputHash(edited)).not.toBe(inputHash(INPUT));
    expect(inputHash({ ...INPUT, vans: {} })).toBe(inputHash(INPUT));
    expect(train(INPUT, 1).hash).toBe(inputHash(INPUT));
  });

  it('names its input anew when the code that learns is another', () => {
    expect(inputHash(INPUT, 'older')).not.toBe(inputHash(INPUT, 'newer'));
    expect(inputHash(INPUT)).toBe(inputHash(INPUT, codeNameOf('match')));
  });

  it('takes a word for the more telling the fewer topics share it, however many lines of a topic do', () => {
    const { names, idf } = train(INPUT, 1).space;
    const tells = (feature: string) => idf[names.indexOf(feature)] as number;
    // 'bed' stands in nine lines of one topic, 'silent' in one line of one, 'the' in lines of both.
    expect(tells('w:bed')).toBe(tells('w:silent'));
    expect(tells('w:the')).toBeLessThan(tells('w:bed'));
  });

  it('reads a small graph more often over than a large one', () => {
    expect(optionsFor(300, TRAIN).epochs).toBeGreaterThan(optionsFor(3000, TRAIN).epochs);
    expect(optionsFor(100_000, TRAIN)).toEqual(TRAIN);
  });
});

describe('calibrating', () => {
  const { calibration, confusions } = calibrate(INPUT, 1);

  it('weighs every signal, from the wordings alone', () => {
    for (const weights of Object.values(calibration)) {
      expect(weights).toHaveLength(SIGNALS.length);
      expect(weights.every(Number.isFinite)).toBe(true);
    }
  });

  it('repeats exactly', () => {
    expect(calibrate(INPUT, 1)).toEqual({ calibration, confusions });
  });

  it('tells which wordings would go to another topic had their writer not written', () => {
    for (const { key, goesTo } of confusions) expect(goesTo).not.toBe(key);
  });
});
