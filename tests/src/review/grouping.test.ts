import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createGlossary } from '../../../src/language/glossary.ts';
import { communities } from '../../../src/review/communities.ts';
import { createGrouping } from '../../../src/review/grouping.ts';

const KETTLE = [
  'where is the kettle',
  'kettle where is it kept',
  'cannot find the kettle',
  'which locker is the kettle in',
];
const DOGS = ['may our dog sleep inside', 'dog sleeping in the van ok', 'can the dog sleep in the van'];
const none = createGlossary([]);
/** Tells that these words are common; graphs have thousands of such lines. */
const COMMON = [
  'where is the tap in the van',
  'can the heater run in the night',
  'is the step in the locker',
  'our bed is the wet one',
  'may the fridge run on',
];

function grouped(texts: readonly string[], how: 'joined' | 'regrouped', glossary = none) {
  const grouping = createGrouping(glossary, COMMON);
  for (const [i, text] of texts.entries()) grouping.join(i, text);
  if (how === 'regrouped') grouping.regroup();
  return grouping.groups();
}

describe('grouping', () => {
  it.each(['joined', 'regrouped'] as const)('puts together what asks the same, %s', (how) => {
    expect(grouped([...KETTLE, ...DOGS], how)).toEqual([
      [0, 1, 2, 3],
      [4, 5, 6],
    ]);
  });

  it('joins a newcomer to the group it belongs to', () => {
    const grouping = createGrouping(none, COMMON);
    for (const [i, text] of [...KETTLE, ...DOGS].entries()) grouping.join(i, text);
    grouping.regroup();
    grouping.join(7, 'where do you keep the kettle');
    expect(grouping.groups()[0]).toContain(7);
  });

  it('takes a word of the glossary for what it means', () => {
    const glossary = createGlossary([{ says: 'bog', means: 'toilet' }]);
    const texts = ['bog stuck shut', 'toilet stuck shut', 'stereo volume'];
    expect(grouped(texts, 'regrouped', glossary)[0]).toEqual([0, 1]);
  });

  it('leaves words that share nothing alone', () => {
    expect(grouped(['kettle', 'awning', 'xylophone'], 'regrouped')).toHaveLength(3);
  });

  it('loses no gap and doubles none, whatever is written', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 40 }), { maxLength: 25 }), (texts) => {
        for (const how of ['joined', 'regrouped'] as const)
          expect(
            grouped(texts, how)
              .flat()
              .sort((a, b) => a - b),
          ).toEqual(texts.map((_, i) => i));
      }),
    );
  });
});

describe('communities', () => {
  it('part two rings that one weak link joins', () => {
    const links = Array.from({ length: 6 }, () => new Map<number, number>());
    const link = (a: number, b: number, weight: number) => {
      links[a]?.set(b, weight);
      links[b]?.set(a, weight);
    };
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [0, 2],
      [3, 4],
      [4, 5],
      [3, 5],
    ] as const)
      link(a, b, 0.6);
    link(2, 3, 0.1);
    expect(communities(links, 0.05)).toEqual([0, 0, 0, 1, 1, 1]);
  });
});
