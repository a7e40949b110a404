import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Part } from '../../../src/knowledge/knowledge.ts';
import { scopeOf } from '../../../src/knowledge/scope.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const knowledge = smallKnowledge();
const van = (id: string) => {
  const scope = knowledge.vans.get(id);
  if (scope === undefined) throw new Error(`no van ${id}`);
  return scope;
};

describe('the scope of a van', () => {
  it('holds its parts, what belongs to them and the roles they play', () => {
    expect([...van('buttercup').parts].sort()).toEqual(['fridge', 'fridge-buttons', 'fridge-light']);
  });

  it('holds a topic exactly when it has every part the topic is about', () => {
    expect([...van('buttercup').topics].sort()).toEqual(['fridge-light-dead', 'fridge-modes', 'hours-contact']);
    expect([...van('daisy').topics].sort()).toEqual(['fridge-modes', 'hours-contact', 'oven-use']);
  });

  it('holds the causes whose part it has and for which it has a prior', () => {
    expect(
      van('buttercup')
        .causes('fridge-light-dead')
        .map((cause) => [cause.id, cause.prior]),
    ).toEqual([
      ['fuse', 0.7],
      ['lamp', 0.3],
    ]);
    expect(van('daisy').causes('fridge-light-dead')).toEqual([]);
  });

  it('agrees with a plain filter over the topics, whatever a van has', () => {
    const partIds = [...knowledge.parts.keys()];
    fc.assert(
      fc.property(fc.subarray(partIds), (own) => {
        const data = { ...van('daisy').data, has: Object.fromEntries(own.map((part) => [part, {}])) };
        const scope = scopeOf(data, knowledge.parts, knowledge.topics);
        const expected = [...knowledge.topics.values()].filter((topic) =>
          topic.about.every((part) => has(own, part, knowledge.parts)),
        );
        expect([...scope.topics]).toEqual(expected.map((topic) => topic.id));
      }),
    );
  });
});

/** The slow twin: asks for one part at a time whether some own part is it, plays it, or brings it along. */
function has(own: readonly string[], wanted: string, parts: ReadonlyMap<string, Part>): boolean {
  const plays = (id: string): boolean =>
    id === wanted || (parts.get(id)?.is !== undefined && plays(parts.get(id)?.is ?? ''));
  const comesWith = (id: string): boolean =>
    own.includes(id) || [...parts.values()].some((part) => part.id === id && part.of !== undefined && present(part.of));
  const present = (id: string): boolean =>
    comesWith(id) || [...parts.values()].some((part) => part.is === id && present(part.id));
  return [...parts.keys()].some((id) => comesWith(id) && plays(id));
}
