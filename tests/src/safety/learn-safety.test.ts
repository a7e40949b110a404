import { describe, expect, it } from 'vitest';
import { learnSafety, safetyLines } from '../../../src/safety/learn-safety.ts';
import { createSafetyReader } from '../../../src/safety/reader.ts';
import { ALONE, aSafety } from './small-reading.ts';

const safety = aSafety({
  examples: { danger: { 'safety-gas-smell': ['it hits you at the door'] }, plain: ['the door sticks'] },
});
const topics: readonly (readonly [string, { readonly wordings: Record<string, string[]> }])[] = [
  ['safety-gas-smell', { wordings: { ann: ['nose says gas'] } }],
  ['hire-barbecue', { wordings: { ann: ['may we grill'] } }],
  ['water-fill', { wordings: { ann: ['fill the tank'], bob: ['where do i fill'] } }],
];
const talk = {
  chat: { thanks: { reply: 'Gladly.', wordings: { ann: ['ta'] } } },
  person: { ann: ['a person please'] },
  background: { ann: ['nice weather'] },
};

describe('what the second net learns from', () => {
  it('is the examples, the wordings of all topics, and talk', () => {
    const lines = safetyLines(safety, topics, talk);
    expect(lines.map(({ text, hazard }) => [text, hazard])).toEqual([
      ['it hits you at the door', 'safety-gas-smell'],
      ['the door sticks', null],
      ['nose says gas', 'safety-gas-smell'],
      ['may we grill', null],
      ['fill the tank', null],
      ['where do i fill', null],
      ['ta', null],
      ['a person please', null],
      ['nice weather', null],
    ]);
  });

  it('counts hard examples for more than wordings', () => {
    const weights = safetyLines(safety, [], null).map(({ weight }) => weight);
    expect(weights).toEqual([2, 3]);
  });

  it('lets the reader show a notice where no rule was met', () => {
    const lines = Array.from({ length: 30 }, () => safetyLines(safety, [], null)).flat();
    const read = createSafetyReader(safety, learnSafety(safety, lines));
    expect(read('it hits you at the door', ALONE).danger).toMatchObject({ hazard: 'safety-gas-smell', language: 'en' });
    expect(read('the door sticks', ALONE).danger).toBeNull();
  });
});
