import { describe, expect, it } from 'vitest';
import { faultsDue } from '../../../src/review/faults-due.ts';
import { aFleet, anEnd, CAUSES } from './a-fleet.ts';

const stored = [
  { id: 3, atMs: 300, who: 'Pat', walk: anEnd('passed', 'pump') },
  { id: 1, atMs: 100, who: 'Sol', walk: anEnd('fixed', 'hose') },
  { id: 2, atMs: 200, who: 'Ana', walk: anEnd('fixed', 'empty') },
  { id: 4, atMs: 400, who: null, walk: anEnd('left', null) },
  { id: 5, atMs: 500, who: 'Joan', walk: anEnd('passed', null, 'wren') },
];
const due = (van: string | null, looked: number[] = []) => faultsDue(stored, van, new Set(looked), aFleet(CAUSES));

describe('faultsDue', () => {
  it('lists what was passed and what a trick fixed, oldest first, with who said what', () => {
    expect(due('dunlin')).toMatchObject([
      { id: 1, why: 'trick', say: 'Hose not home', who: 'Sol' },
      { id: 3, why: 'passed', say: 'Pump failed', who: 'Pat', tried: [{ did: 'Is the barrel low?', answered: 'no' }] },
    ]);
  });

  it('lists every van when none is named, and a pass without a likely cause', () => {
    expect(due(null).map(({ id }) => id)).toEqual([1, 3, 5]);
    expect(due('wren')).toMatchObject([{ cause: null, say: null }]);
  });

  it('leaves out what was looked at', () => {
    expect(due('dunlin', [3]).map(({ id }) => id)).toEqual([1]);
  });
});
