import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/match/decide.ts';
import { createLastTry } from '../../../src/match/last-try.ts';
import { createLinker } from '../../../src/match/links.ts';
import { readReference } from '../../../src/match/refer-back.ts';
import { splits } from '../../../src/match/split.ts';

describe('deciding', () => {
  const costs = { wrongAnswer: 4, wrongAnswerHazard: 40, wrongChoice: 0.5, look: 3, pass: 10 };
  const ranked = (...list: number[]) => list.map((probability, i) => ({ topic: `t${i}`, probability }));
  const kind = (list: number[], hazard = false) => decide(ranked(...list), costs, () => hazard).decision.kind;

  it('answers when sure, offers when it is one of three, passes when it is none', () => {
    expect(kind([0.95, 0.02])).toBe('answer');
    expect(kind([0.5, 0.3, 0.15])).toBe('choose');
    expect(kind([0.1, 0.05, 0.02])).toBe('pass');
    expect(kind([])).toBe('pass');
  });

  it('needs to be far surer of a topic where people can be hurt', () => {
    expect(kind([0.9, 0.05, 0.02])).toBe('answer');
    expect(kind([0.9, 0.05, 0.02], true)).toBe('choose');
    expect(kind([0.99, 0.005], true)).toBe('answer');
  });

  it('never answers with what is likelier wrong than right', () => {
    const free = { ...costs, wrongAnswer: 0.001, pass: 100 };
    expect(decide(ranked(0.45, 0.01), free, () => false).decision.kind).not.toBe('answer');
  });

  it('shows the minutes it weighed', () => {
    const { costs: minutes } = decide(ranked(0.8, 0.1), costs, () => false);
    const shown = Object.fromEntries(minutes.map((each) => [each.decision, each.minutes]));
    expect(shown['answer']).toBeCloseTo(0.2 * 14, 9);
    expect(shown['choose']).toBeCloseTo(3 + 0.1 * 10.5, 9);
    expect(shown['pass']).toBe(10);
  });
});

describe('two questions in one message', () => {
  const first = (text: string) => splits(text)[0];

  it('are cut where the message says that a second thing begins', () => {
    expect(first('how do I light the hob and where is the bin')).toEqual({
      halves: ['how do I light the hob', 'where is the bin'],
      outright: true,
    });
    expect(first('two things: where is the corkscrew, and how do I get the telly on')?.halves).toEqual([
      'where is the corkscrew',
      'how do I get the telly on',
    ]);
    expect(first('Is the dog allowed? Where is the vet?')?.halves).toEqual(['Is the dog allowed', 'Where is the vet?']);
  });

  it('may be cut at the end of a sentence, which says less', () => {
    expect(first('The pump is humming. No water comes out')?.outright).toBe(false);
  });

  it('are not looked for inside a single question', () => {
    expect(splits('where do I find the spare fuse')).toEqual([]);
    expect(splits('')).toEqual([]);
  });
});

describe('what a message says of the one before', () => {
  it('follows it when it says less than a whole question', () => {
    for (const text of ['and on gas?', 'and the oven', 'ok how do i put it on electric instead']) {
      expect(readReference(text).kind).toBe('follows');
    }
  });

  it('only points at it when it names nothing of its own', () => {
    for (const text of ['where is that', 'how long will it take', 'what size']) {
      expect(readReference(text).kind).toBe('points');
    }
  });

  it('takes it back', () => {
    expect(readReference('sorry I meant the fridge')).toEqual({ kind: 'corrects', text: 'the fridge' });
    expect(readReference('No, I meant for the shower, not the room')).toEqual({
      kind: 'corrects',
      text: 'for the shower',
    });
  });

  it('is nothing when it stands on its own', () => {
    expect(readReference('how do I empty the toilet cassette on the curlew').kind).toBe('none');
  });
});

describe('linking', () => {
  const link = createLinker([
    { says: 'water pump', part: 'pump-a', role: 'water-pump' },
    { says: 'water pump', part: 'pump-b', role: 'water-pump' },
    { says: 'water', part: 'tank', role: 'fresh-water' },
    { says: 'flap in the toilet', part: 'blade', role: 'blade' },
  ]);

  it('takes the longest name at each place and all parts that bear it', () => {
    expect(link(['the', 'water', 'pump'])).toEqual([{ parts: ['pump-a', 'pump-b'], roles: ['water-pump'] }]);
    expect(link(['water'])).toEqual([{ parts: ['tank'], roles: ['fresh-water'] }]);
  });

  it('passes over articles', () => {
    expect(link(['flap', 'in', 'our', 'toilet'])[0]?.parts).toEqual(['blade']);
  });
});

describe('the last try', () => {
  const lastTry = createLastTry([
    { says: 'regulator', part: 'gas-regulator', role: 'gas-regulator' },
    { says: 'jockey wheel', part: 'jockey', role: 'jockey' },
  ]);

  it('finds parts by names that are like a word nobody knows', () => {
    expect([...lastTry('reguletter')]).toEqual(['gas-regulator']);
    expect([...lastTry('jokky')]).toEqual(['jockey']);
    expect([...lastTry('zzzz')]).toEqual([]);
  });
});
