import { describe, expect, it } from 'vitest';
import { groupOf } from '../../../src/review/gap-groups.ts';
import type { Gap } from '../../../src/review/gaps.ts';
import { topicDraft } from '../../../src/review/topic-draft.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const knowledge = smallKnowledge();

function draftOf(texts: readonly string[], nearest: readonly string[] = [], staffSaid: string | null = null) {
  const gaps = texts.map(
    (text, i): Gap => ({
      id: i + 1,
      threadId: `t${i}`,
      atMs: i,
      van: 'daisy',
      text,
      why: 'no-such-topic',
      nearest,
      staffSaid,
      ended: 'open',
    }),
  );
  const group = groupOf(
    gaps.map(({ id }) => id),
    new Map(gaps.map((gap) => [gap.id, gap])),
  );
  if (group === null) throw new Error('a group has gaps');
  return topicDraft(group, knowledge);
}

describe('a new topic as the operator begins with it', () => {
  it('has staff’s words without names, the parts that are named, and an id of its own', () => {
    const draft = draftOf(['oven smells of fish', 'the oven smells', 'fishy smell'], [], 'Ask [name] for a cloth.');
    expect(draft).toMatchObject({ system: 'fridge', about: ['oven'], first: 'Ask for a cloth.' });
    expect(draft.title).toMatch(/^The oven smells\?$|^Oven smells of fish\?$/);
    expect(draft.id).toMatch(/^fridge-oven-smells/);
    expect(draft.wordings).toHaveLength(3);
  });

  it('says of a role that it is about all its variants', () => {
    expect(draftOf(['fridge with a dial hums', 'my fridge with a dial hums']).about).toEqual(['fridge']);
  });

  it('is about no part that few have named, and belongs to what the bot thought of', () => {
    const draft = draftOf(['is there a pool', 'pool nearby', 'oven or pool'], ['oven-use']);
    expect([draft.about, draft.system]).toEqual([[], 'fridge']);
    expect(draftOf(['is there a pool']).system).toBe('hire');
  });

  it.each([
    ['where is the corkscrew', 'where'],
    ['how do I open the blind', 'how-to'],
    ['may we fly a drone', 'hire-rule'],
    ['the blind won’t open', 'symptom'],
    ['pool opening times', 'fact'],
  ])('takes the kind from how it is asked: %s', (text, kind) => {
    expect(draftOf([text]).kind).toBe(kind);
  });
});
