import { describe, expect, it } from 'vitest';
import { stem } from '../../../src/language/stems.ts';
import { createSenses } from '../../../src/safety/senses.ts';

const find = createSenses(
  { dizzy: "light headed, woozy, can't stand up", body: 'head, heads', later: 'later on, later' },
  'written-out',
);
const sensesOf = (text: string) => find(text.split(' ').map(stem));

describe('the thesaurus', () => {
  it('names the senses of words and of phrases, sorted', () => {
    expect(sensesOf('she is light headed and woozy, her head'.replace(',', ''))).toEqual(['body', 'dizzy']);
    expect(sensesOf('the kettle')).toEqual([]);
  });

  it('knows every form of a word', () => {
    expect(sensesOf('heading')).toEqual(['body']);
    expect(sensesOf('ahead')).toEqual([]);
  });

  it('takes a contraction as it is written out', () => {
    expect(sensesOf('he can not stand up')).toEqual(['dizzy']);
  });

  it('finds a phrase only where its words stand together', () => {
    expect(sensesOf('can he stand up')).toEqual([]);
  });
});
