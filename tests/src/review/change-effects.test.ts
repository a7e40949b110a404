import { describe, expect, it } from 'vitest';
import { effectsOf, LATEST_CHANGES } from '../../../src/review/change-effects.ts';
import type { ChangeRecord } from '../../../src/review/changes.ts';
import { summaryOf } from '../../../src/review/trial.ts';
import type { Event } from '../../../src/thread/thread.ts';

const sums = summaryOf([]);
function aChange(change: Partial<ChangeRecord> = {}): ChangeRecord {
  return {
    id: 1,
    atMs: 100,
    by: 'Nessa',
    why: '',
    decision: { kind: 'add-wordings', topic: 'oven-use', wordings: ['pie'] },
    gaps: [],
    splices: [],
    figures: { before: sums, after: sums, better: [], worse: [], changed: [] },
    undone: null,
    ...change,
  };
}
const EVENTS: readonly { readonly atMs: number; readonly event: Event }[] = [
  { atMs: 50, event: { kind: 'answered', topic: 'oven-use', probability: 1 } },
  { atMs: 150, event: { kind: 'answered', topic: 'oven-use', probability: 1 } },
  { atMs: 151, event: { kind: 'helped', topic: 'oven-use', yes: true } },
  { atMs: 160, event: { kind: 'answered', topic: 'fridge-modes', probability: 1 } },
  { atMs: 170, event: { kind: 'answered', topic: 'oven-use', probability: 1 } },
  { atMs: 171, event: { kind: 'helped', topic: 'oven-use', yes: false } },
];

describe('what a change did', () => {
  it('is what its topic answered since, and until it was taken back', () => {
    const undone = aChange({ undone: { atMs: 155, by: 'Nessa' } });
    expect(effectsOf([aChange(), undone], EVENTS).map(({ since }) => since)).toEqual([
      { answered: 2, helped: 1, stillStuck: 1 },
      { answered: 1, helped: 1, stillStuck: 0 },
    ]);
  });

  it('is nothing to count where no answer was taught', () => {
    const aside = aChange({ decision: { kind: 'set-aside', wordings: ['pool'] } });
    expect(effectsOf([aside], EVENTS)[0]?.since).toBeNull();
  });

  it('is told of the latest ten', () => {
    expect(
      effectsOf(
        Array.from({ length: 12 }, () => aChange()),
        EVENTS,
      ),
    ).toHaveLength(LATEST_CHANGES);
  });
});
