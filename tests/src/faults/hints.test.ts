import { describe, expect, it } from 'vitest';
import { leaningOf } from '../../../src/faults/hints.ts';
import { nextStep } from '../../../src/faults/next-step.ts';
import { openWalk } from '../../../src/faults/open-walk.ts';
import { A_VAN, aCause } from './a-cause.ts';

const NO_WATER = [
  aCause('barrel', 0.4, {
    say: 'Barrel empty or the pump is not in the water',
    check: { ask: 'Is the barrel low, or the pump lying on its side?' },
  }),
  aCause('switch', 0.3, {
    say: 'Pump switch off or its fuse blown',
    check: { ask: 'Is the pump silent when a tap is open?' },
  }),
  aCause('air', 0.2, { say: 'Air trapped in the pump', check: { ask: 'Can you hear it run but no water?' } }),
  aCause('frozen', 0.1, { say: 'Pipe frozen', check: { ask: 'Was the night below 0?' } }),
];
const leaning = (...said: string[]) => leaningOf(said, 'water-none', NO_WATER, A_VAN);

describe('leaningOf', () => {
  it('reads what was said of the thing a check asks about as its answer in passing', () => {
    const { switch: silent, air } = leaning('pump is humming but nothing comes out');
    expect(silent).toBeLessThan(1);
    expect(air).toBeGreaterThan(1);
  });

  it('leans away from what is denied', () => {
    expect(leaning('the barrel is full').barrel).toBeLessThan(1);
  });

  it('takes the words of the symptom itself for no evidence', () => {
    expect(leaning('no water', 'water does not come out')).toEqual({});
  });

  it('says nothing of causes the words do not touch', () => {
    expect(leaning('we arrived this afternoon and the kids are thirsty')).toEqual({});
    expect(leaning('')).toEqual({});
  });

  it('never leans further than six to one, however often a thing is said', () => {
    const { air } = leaning(...Array.from({ length: 9 }, () => 'I can hear the pump run'));
    expect(air).toBe(6);
  });

  it('changes the first step of the walk', () => {
    const start = { seen: {}, van: A_VAN, nowMs: 0 };
    const first = (said: string) =>
      nextStep(openWalk('water-none', NO_WATER, { ...start, said: [said] }), NO_WATER, { passMinutes: 30 });
    expect(first('no water')).toEqual({ kind: 'check', cause: 'barrel' });
    expect(first('barrel is full and I can hear the pump running')).not.toEqual({ kind: 'check', cause: 'barrel' });
  });
});
