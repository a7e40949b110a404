import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choiceId, type Pressed, pickTyped, readChoice, STEP_PRESSES } from '../../../src/dialogue/choices.ts';
import { readHelped, saysNeverMind, saysNone } from '../../../src/dialogue/words-read.ts';

const LABELS = ['How do I set the fridge?', 'The fridge is not cooling on gas', 'The fridge beeps', 'None of these'];

describe('what is typed to a list of choices', () => {
  it.each([
    ['2', 1],
    ['the second one', 1],
    ['2nd', 1],
    ['option 3', 2],
    ['last', 3],
    ['the fridge beeps', 2],
    ['beeps', 2],
    ['not cooling', 1],
    ['first one', 0],
    ['the first please', 0],
    ['it is the second one I suppose', 1],
    ['number 3 I think', 2],
    ['the top one', 0],
  ])('"%s" picks number %i', (text, expected) => {
    expect(pickTyped(text, LABELS)).toBe(expected);
  });

  it.each(['5', 'fridge', '', 'my fridge is making a noise', '2 kettles and a toaster'])(
    '"%s" picks nothing',
    (text) => {
      expect(pickTyped(text, LABELS)).toBeNull();
    },
  );
});

describe('a button', () => {
  it('is read back as it was written', () => {
    const word = fc.stringMatching(/^[a-z]+(-[a-z]+)*$/);
    const pressed: fc.Arbitrary<Pressed> = fc.oneof(
      word.map((topic): Pressed => ({ kind: 'topic', topic })),
      fc.tuple(word, fc.boolean()).map(([topic, yes]): Pressed => ({ kind: 'helped', topic, yes })),
      fc
        .tuple(word, fc.constantFrom(...STEP_PRESSES))
        .map(([symptom, answer]): Pressed => ({ kind: 'step', symptom, answer })),
      fc.string().map((value): Pressed => ({ kind: 'input', value })),
      fc.constantFrom<Pressed>(
        { kind: 'person' },
        { kind: 'resume' },
        { kind: 'never-mind' },
        { kind: 'none-of-these' },
        { kind: 'danger', answer: 'no' },
      ),
    );
    fc.assert(
      fc.property(pressed, (one) => {
        expect(readChoice(choiceId(one))).toEqual(one);
      }),
    );
  });

  it('of somebody else is none of ours', () => {
    expect(readChoice('buy:now')).toBeNull();
    expect(readChoice('s:explode:water-none')).toBeNull();
  });
});

describe('short answers', () => {
  it.each(['that worked', 'yes it works now', 'brilliant, sorted', 'all working thanks', 'it did the trick'])(
    '"%s" says that it helped',
    (text) => {
      expect(readHelped(text)).toBe(true);
    },
  );
  it.each(['still stuck', 'nope', "that didn't work", 'no joy', 'still not working', 'tried that already'])(
    '"%s" says that it did not',
    (text) => {
      expect(readHelped(text)).toBe(false);
    },
  );
  it.each(['where is the corkscrew', 'the heating works but the fridge is dead', 'thanks'])(
    '"%s" says neither',
    (text) => {
      expect(readHelped(text)).toBeNull();
    },
  );
  it('never mind and none are understood', () => {
    expect(['never mind', 'forget it', "don't worry"].every(saysNeverMind)).toBe(true);
    expect(['none of these', 'neither', 'something else'].every(saysNone)).toBe(true);
    expect(saysNone('none of the sockets work')).toBe(false);
  });
});
