import { describe, expect, it } from 'vitest';
import { lackNamed, nameSearchOf, topicsNamed } from '../../../src/match/name-search.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const knowledge = smallKnowledge();
const van = (id: string) => {
  const scope = knowledge.vans.get(id);
  if (scope === undefined) throw new Error(id);
  return scope;
};

describe('names of parts in a text', () => {
  it.each(['something with the fridge', 'the frdge thing', 'our cooler'])(
    'are found in "%s", however they are spelt',
    (text) => {
      expect(nameSearchOf(knowledge)(text)).toEqual(expect.arrayContaining([expect.stringMatching(/^fridge/)]));
    },
  );

  it('are not seen in words that name nothing', () => {
    expect(nameSearchOf(knowledge)('who won the football with the white shirts')).toEqual([]);
  });

  it('are not seen in a word that is spelt right and is another', () => {
    expect(nameSearchOf(knowledge)('we walked along the ridge')).toEqual([]);
  });

  it('lead to the topics of the van about them', () => {
    expect(topicsNamed('the fridge is odd', van('buttercup'), knowledge, 3)).toEqual(['fridge-modes']);
  });

  it('tell what a van has not, in a short message only', () => {
    expect(lackNamed('the oven', [], van('buttercup'), knowledge)).toEqual({ part: 'oven', topic: 'oven-use' });
    expect(lackNamed('the oven', [], van('daisy'), knowledge)).toBeNull();
    expect(
      lackNamed('my neighbour at home says that her new oven is far too hot', [], van('buttercup'), knowledge),
    ).toBeNull();
  });

  it('tell what a van has not by names already seen, and never by half a name', () => {
    expect(lackNamed('that thing', ['oven'], van('buttercup'), knowledge)).toEqual({ part: 'oven', topic: 'oven-use' });
    const real = realKnowledge();
    const dunlin = real.vans.get('dunlin');
    if (dunlin === undefined) throw new Error('dunlin');
    expect(lackNamed('test test 123', [], dunlin, real)).toBeNull();
  });
});
