import { describe, expect, it } from 'vitest';
import { thirdLook } from '../../../src/safety/third-look.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { safety } = realKnowledge();
const look = (
  chance: number,
  ranked: readonly [string, number][],
  answered: readonly string[] = [],
  setAside = false,
) =>
  thirdLook(
    { chance, setAside },
    { ranked: ranked.map(([topic, probability]) => ({ topic, probability })), answered },
    safety,
  );

describe('the third look', () => {
  it('finds nothing in a message about something else', () => {
    expect(
      look(0.02, [
        ['bed-bunk', 0.9],
        ['safety-fire', 0.1],
      ]),
    ).toBeNull();
    expect(look(0.02, [])).toBeNull();
  });

  it('asks about the likeliest danger where net and matcher together make one likely', () => {
    const danger = look(0.2, [
      ['safety-fire', 0.3],
      ['safety-burning-smell', 0.55],
      ['bed-bunk', 0.15],
    ]);
    expect(danger).toMatchObject({ hazard: 'safety-burning-smell', level: 'ask', language: 'en' });
    expect(danger?.why[0]).toMatch(/20 % danger by the second net, 85 % by the matcher/);
  });

  it('heeds neither of them alone', () => {
    expect(look(0.01, [['safety-fire', 0.9]])).toBeNull();
    expect(look(0.25, [['bed-bunk', 0.99]])).toBeNull();
  });

  it('takes a topic whose text is a notice for a danger when the matcher would answer it', () => {
    expect(look(0, [['safety-fire', 0.6]], ['safety-fire'])).toMatchObject({ hazard: 'safety-fire', level: 'ask' });
    expect(look(0, [['bed-bunk', 0.6]], ['bed-bunk'])).toBeNull();
  });

  it('believes the reader that saw the words of a danger and set them aside, where the net agrees', () => {
    expect(look(0.01, [['safety-fire', 0.6]], ['safety-fire'], true)).toBeNull();
    expect(look(0.1, [['safety-fire', 0.6]], ['safety-fire'], true)).not.toBeNull();
  });

  it('does not count whether one may have a barbecue', () => {
    expect(look(0.25, [['hire-barbecue', 0.95]], ['hire-barbecue'])).toBeNull();
  });
});
