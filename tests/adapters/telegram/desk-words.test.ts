import { describe, expect, it } from 'vitest';
import { talkText } from '../../../adapters/telegram/desk-words.ts';

describe('the whole talk in the staff group', () => {
  it('names hirer, bot and staff, the latest last', () => {
    const lines = [
      { who: 'hirer', text: 'no heat' },
      { who: 'bot', text: 'Is it on?' },
      { who: 'Nessa', text: 'I am coming' },
    ];
    expect(talkText(lines, 'Ada')).toBe('Ada: no heat\n\nThe bot: Is it on?\n\nNessa: I am coming');
  });

  it('says how much of a long talk is left out', () => {
    const lines = Array.from({ length: 33 }, (_, i) => ({ who: 'hirer', text: `line ${i}` }));
    const text = talkText(lines, 'Ada');
    expect(text).toMatch(/^\(3 more before this, on the yard page\)\n\nAda: line 3\n/);
    expect(text).toMatch(/line 32$/);
  });
});
