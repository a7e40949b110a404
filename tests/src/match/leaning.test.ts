import { describe, expect, it } from 'vitest';
import { leaningOn } from '../../../src/match/leaning.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { topics } = realKnowledge();
const keys = ['topic/fridge-modes', 'topic/fridge-light-on-gas', 'topic/media-radio', 'topic/heating-time', 'person'];
const silent = new Float64Array(keys.length);
const leans = (last: string, how: 'follows' | 'corrects' | 'none') => {
  const add = leaningOn(last, silent, keys, topics, how);
  return Object.fromEntries(keys.map((key, i) => [key, add[i] as number])) as Record<string, number>;
};

describe('a message that leans on the one before', () => {
  it('leans towards the last topic’s kin, and not towards what has nothing to do with it', () => {
    const after = leans('fridge-modes', 'follows');
    expect(after['topic/fridge-light-on-gas']).toBeGreaterThan(2);
    expect(after['topic/media-radio']).toBe(0);
  });

  it('leans the same way, but less, when it does not point back', () => {
    const little = leans('fridge-modes', 'none')['topic/fridge-light-on-gas'] as number;
    expect(little).toBeGreaterThan(0);
    expect(little).toBeLessThan(leans('fridge-modes', 'follows')['topic/fridge-light-on-gas'] as number);
  });

  it('may ask a sum again with another figure, and leans away from the topic that it takes back', () => {
    const again = leans('heating-time', 'follows')['topic/heating-time'] as number;
    const howTo = leans('fridge-modes', 'follows')['topic/fridge-modes'] as number;
    expect(again).toBeGreaterThan(howTo);
    expect(leans('heating-time', 'corrects')['topic/heating-time']).toBeLessThan(again - 3);
  });

  it('carries what was said before', () => {
    const said = Float64Array.from([0, 0, 5, 0, 0]);
    expect(leaningOn(null, said, keys, topics, 'follows')[2]).toBeGreaterThan(0);
    expect(leaningOn(null, said, keys, topics, 'follows')[1]).toBe(0);
  });
});
