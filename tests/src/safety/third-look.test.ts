import { describe, expect, it } from 'vitest';
import { thirdLook } from '../../../src/safety/third-look.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { safety } = realKnowledge();
const look = (...ranked: [string, number][]) =>
  thirdLook(
    ranked.map(([topic, probability]) => ({ topic, probability })),
    safety,
  );

describe('the third look', () => {
  it('finds nothing in a message about something else', () => {
    expect(look(['bed-bunk', 0.9], ['safety-fire', 0.1])).toBeNull();
    expect(look()).toBeNull();
  });

  it('asks about the likeliest danger where dangers together are nearly sure', () => {
    const danger = look(['safety-fire', 0.3], ['safety-burning-smell', 0.55], ['bed-bunk', 0.15]);
    expect(danger).toMatchObject({ hazard: 'safety-burning-smell', level: 'ask', language: 'en' });
    expect(danger?.why[0]).toMatch(/85 % danger/);
  });

  it('does not count whether one may have a barbecue', () => {
    expect(look(['hire-barbecue', 0.95])).toBeNull();
  });
});
