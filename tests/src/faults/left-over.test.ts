import { describe, expect, it } from 'vitest';
import { leavesOver } from '../../../src/faults/left-over.ts';
import { nextStep } from '../../../src/faults/next-step.ts';
import { openWalk } from '../../../src/faults/open-walk.ts';
import { put, tell } from '../../../src/faults/walk.ts';
import { A_VAN, aCause } from './a-cause.ts';

describe('leavesOver', () => {
  it.each([
    ['a trick', { trick: true }, true],
    ['a new fuse', { fuse: true }, true],
    ['a reset of the main safety switch', { reset: true }, true],
    ['an ordinary fix', {}, false],
  ] as const)('says whether %s leaves something to look at', (_, fix, expected) => {
    expect(leavesOver(aCause('it', 1, { fix }))).toBe(expected);
  });
});

describe('what works again while it was only looked at', () => {
  it('is fixed by no cause, so that it counts for none', () => {
    const causes = [aCause('low', 0.6), aCause('off', 0.4)];
    const start = openWalk('s', causes, { said: [], seen: {}, van: A_VAN, nowMs: 0 });
    const walk = tell(put(start, { kind: 'check', cause: 'low' }), { kind: 'works' });
    expect(nextStep(walk, causes, { passMinutes: 30 })).toEqual({ kind: 'fixed', cause: null });
  });
});
