import { describe, expect, it } from 'vitest';
import { peopleIn } from '../../../src/calculators/people.ts';
import { countedIn } from '../../../src/calculators/quantities.ts';

describe('people in words', () => {
  it.each([
    ['mum dad and two kids', 4, 2],
    ['me, hubby, two kids and everyone has a shower', 4, 2],
    ['just me and my little boy', 2, 1],
    ['four kids + us two = one very busy loo', 6, 4],
    ['the two of us and two kids', 4, 2],
    ['two adults, two kids and a baby', 5, 3],
    ['four of us, 2 adults and 2 kids', 4, 2],
    ['my wife and I plus our 3 grandchildren', 5, 3],
    ['my mother-in-law and I', 2, null],
    ['me my wife and 2 kids', 4, 2],
    ['us 2 and the twins', 4, 2],
    ['gas q: couple, fridge on gas', 2, null],
    ['three skint students', 3, null],
    ['and when we are only two', 2, null],
    ['for four poeple', 4, null],
  ])('of "%s" are %s, of them %s children', (text, people, children) => {
    expect(peopleIn(countedIn(text))).toMatchObject({ people, children });
  });

  it.each(['me and the kids', 'tell me how long the gas lasts', 'my husband would like to know'])(
    'of "%s" are not counted',
    (text) => {
      expect(peopleIn(countedIn(text))).toBeNull();
    },
  );
});
