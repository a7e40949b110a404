import { describe, expect, it } from 'vitest';
import { checkKey, withSeen } from '../../../src/faults/seen.ts';
import type { Walk } from '../../../src/faults/types.ts';
import { A_VAN, aCause } from './a-cause.ts';

const CAUSES = [aCause('a', 0.5, { check: { ask: 'Are the sockets dead?' } }), aCause('b', 0.5, { check: null })];
const walk = (done: Walk['done']): Walk => ({ symptom: 's', leaning: {}, done, now: null, sinceMs: 0 });

describe('checkKey', () => {
  it('is the same for checks of different symptoms that ask the same', () => {
    const elsewhere = aCause('no-mains', 0.2, { check: { ask: 'are the sockets dead' } });
    expect(checkKey(elsewhere, A_VAN)).toBe(checkKey(CAUSES[0] ?? elsewhere, A_VAN));
  });

  it('is that of the clause that holds in this van', () => {
    const ask = [{ when: 'van:wren', say: 'Is breaker 1 down?' }, { say: 'Is breaker 3 down?' }];
    expect(checkKey(aCause('a', 1, { check: { ask } }), A_VAN)).toBe('is-breaker-3-down');
  });

  it('is null without a check', () => {
    expect(checkKey(aCause('b', 1, { check: null }), A_VAN)).toBeNull();
  });
});

describe('withSeen', () => {
  it('keeps answers, the last of them, and lets cannot-tell replace nothing', () => {
    const key = 'ar-the-socket-dead';
    const once = withSeen({}, walk([{ kind: 'check', cause: 'a', answer: 'yes' }]), CAUSES, A_VAN);
    expect(once).toEqual({ [key]: 'yes' });
    expect(withSeen(once, walk([{ kind: 'check', cause: 'a', answer: 'cannot-tell' }]), CAUSES, A_VAN)).toEqual(once);
    expect(withSeen(once, walk([{ kind: 'check', cause: 'a', answer: 'no' }]), CAUSES, A_VAN)).toEqual({ [key]: 'no' });
  });
});
