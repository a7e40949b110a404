import { describe, expect, it } from 'vitest';
import { createNetReader, type Example, learn } from '../../../src/safety/second-net.ts';

const example = (hazard: string | null, ...features: string[]): Example => ({
  text: features.join(' '),
  features,
  hazard,
  weight: 1,
});
const EXAMPLES = Array.from({ length: 20 }, (_, i) => [
  example('safety-fire', 'flames', `filler${i}`),
  example('safety-storm', 'gale', `filler${i}`),
  example(null, 'kettle', `filler${i}`),
  example(null, 'tap', `filler${i}`),
]).flat();

describe('the second net', () => {
  const read = createNetReader(learn(EXAMPLES));

  it('tells danger from no danger', () => {
    expect(read(['flames']).chance).toBeGreaterThan(0.9);
    expect(read(['kettle']).chance).toBeLessThan(0.1);
  });

  it('leans to the hazard that the features speak for', () => {
    const { leaning } = read(['gale']);
    expect(leaning('safety-storm')).toBeGreaterThan(leaning('safety-fire'));
    expect(leaning('no-such-hazard')).toBe(0);
  });

  it('names the features that spoke loudest', () => {
    expect(read(['kettle', 'flames']).loudest[0]).toBe('flames');
  });

  it('passes over features it never saw', () => {
    expect(read(['never seen']).chance).toBeLessThan(0.6);
  });

  it('learns the same from the same examples', () => {
    expect(learn(EXAMPLES)).toEqual(learn(EXAMPLES));
  });

  it('does not shuffle the others when an example is added', () => {
    const silent = { ...example(null, 'awning', 'pole'), weight: 0 };
    const more = createNetReader(learn([silent, ...EXAMPLES]));
    for (const features of [
      ['flames', 'filler3'],
      ['kettle', 'filler3'],
      ['gale', 'filler7'],
    ])
      expect(more(features).chance).toBe(read(features).chance);
  });

  it('is plain data that survives a copy', () => {
    const copy = structuredClone(learn(EXAMPLES));
    expect(createNetReader(copy)(['flames']).chance).toBe(read(['flames']).chance);
  });
});
