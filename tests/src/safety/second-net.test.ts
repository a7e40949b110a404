import { serialize } from 'node:v8';
import { describe, expect, it } from 'vitest';
import { placeOfStem } from '../../../src/safety/features.ts';
import {
  createNetReader,
  type Example,
  learn,
  learnOn,
  learnPaced,
  type SecondNet,
} from '../../../src/safety/second-net.ts';

const example = (hazard: string | null, ...features: string[]): Example => ({
  text: features.join(' '),
  features: { words: features.map(placeOfStem), apart: [], letters: [], rules: [], senses: [] },
  hazard,
  weight: 1,
});
const words = (...features: string[]) => example(null, ...features).features;
const EXAMPLES = Array.from({ length: 20 }, (_, i) => [
  example('safety-fire', 'flames', `filler${i}`),
  example('safety-storm', 'gale', `filler${i}`),
  example(null, 'kettle', `filler${i}`),
  example(null, 'tap', `filler${i}`),
]).flat();

/** Millions of weights are compared as bytes: one by one takes a quarter of a minute. */
const bytesOf = (net: SecondNet): Buffer => serialize(net);

describe('the second net', () => {
  const { read, weightOf } = createNetReader(learn(EXAMPLES));

  it('tells danger from no danger', () => {
    expect(read(words('flames')).chance).toBeGreaterThan(0.9);
    expect(read(words('kettle')).chance).toBeLessThan(0.1);
  });

  it('leans to the hazard that the features speak for', () => {
    const { leaning } = read(words('gale'));
    expect(leaning('safety-storm')).toBeGreaterThan(leaning('safety-fire'));
    expect(leaning('no-such-hazard')).toBe(0);
  });

  it('says how much one feature speaks for danger', () => {
    expect(weightOf(placeOfStem('flames'))).toBeGreaterThan(0);
    expect(weightOf(placeOfStem('kettle'))).toBeLessThan(0);
  });

  it('passes over features it never saw', () => {
    expect(read(words('never seen')).chance).toBeLessThan(0.6);
  });

  it('learns the same from the same examples', () => {
    expect(bytesOf(learn(EXAMPLES)).equals(bytesOf(learn(EXAMPLES)))).toBe(true);
  });

  it('does not shuffle the others when an example is added', () => {
    const silent = { ...example(null, 'awning', 'pole'), weight: 0 };
    const more = createNetReader(learn([silent, ...EXAMPLES])).read;
    for (const features of [
      ['flames', 'filler3'],
      ['kettle', 'filler3'],
      ['gale', 'filler7'],
    ])
      expect(more(words(...features)).chance).toBe(read(words(...features)).chance);
  });

  it('is plain data that survives a copy', () => {
    const copy = structuredClone(learn(EXAMPLES));
    expect(createNetReader(copy).read(words('flames')).chance).toBe(read(words('flames')).chance);
  });

  describe('learnt on from', () => {
    const learnt = learnPaced(EXAMPLES);
    const near = [example('safety-fire', 'flames', 'filler1'), example(null, 'kettle', 'filler1')];

    it('is the same net where nothing came', () => {
      expect(bytesOf(learnOn(learnt, { before: near, after: near })).equals(bytesOf(learnt.net))).toBe(true);
    });

    it('takes in what came, with words it never saw, and goes on telling the others', () => {
      const came = [example(null, 'flames', 'painted'), example(null, 'flames', 'painted', 'mug')];
      const more = createNetReader(learnOn(learnt, { before: near, after: [...near, ...came] })).read;
      expect(more(words('flames', 'painted')).chance).toBeLessThan(read(words('flames', 'painted')).chance);
      expect(more(words('flames')).chance).toBeGreaterThan(0.9);
      expect(more(words('gale', 'painted')).leaning('safety-storm')).toBeGreaterThan(0);
    });
  });
});
