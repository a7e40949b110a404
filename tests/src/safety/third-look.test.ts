import { describe, expect, it } from 'vitest';
import { thirdLook } from '../../../src/safety/third-look.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const { safety } = realKnowledge();
const look = (chance: number, answered: readonly string[], setAside = false) =>
  thirdLook({ chance, setAside }, answered, safety);

describe('the third look', () => {
  it('finds nothing in a message about something else', () => {
    expect(look(0.1, ['bed-bunk'])).toBeNull();
    expect(look(0.1, [])).toBeNull();
  });

  it('takes a topic whose text is a notice for a danger when the matcher would answer it', () => {
    const danger = look(0, ['bed-bunk', 'safety-fire']);
    expect(danger).toMatchObject({ hazard: 'safety-fire', level: 'ask', language: 'en' });
    expect(danger?.why[0]).toMatch(/0 % danger by the second net/);
  });

  it('believes the reader that saw the words of a danger and set them aside, where the net agrees', () => {
    expect(look(0.01, ['safety-fire'], true)).toBeNull();
    expect(look(0.1, ['safety-fire'], true)).not.toBeNull();
  });

  it('does not count whether one may have a barbecue', () => {
    expect(look(0.25, ['hire-barbecue'])).toBeNull();
  });
});
