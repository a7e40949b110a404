import { bench, describe } from 'vitest';
import { nextStep } from '../../src/faults/next-step.ts';
import { openWalk } from '../../src/faults/open-walk.ts';
import { readStepAnswer } from '../../src/faults/read-step-answer.ts';
import { A_VAN, aCause } from '../src/faults/a-cause.ts';

/** As large as the walks of the demo get: six causes, five of them the hirer's to mend. */
const CAUSES = [
  aCause('post', 0.38, { fix: { minutes: 5, success: 0.92 } }),
  aCause('lead', 0.24, { fix: { minutes: 3, success: 0.95 } }),
  aCause('rcd', 0.22, { fix: { minutes: 5, success: 0.78, reset: true } }),
  aCause('breaker', 0.06, { fix: { minutes: 2, success: 0.85 } }),
  aCause('damaged', 0.06, { fix: { minutes: 45, success: 0.95 } }),
  aCause('inlet', 0.04, { fix: { who: 'staff', minutes: 90 } }),
];
const start = { said: ['no electric in the van since it rained'], seen: {}, van: A_VAN, nowMs: 0 };
const opened = openWalk('mains-no-power', CAUSES, start);
const [first] = CAUSES;

describe('fault finding, one message (to hold: under 1 ms)', () => {
  bench('the first step of a walk of six causes', () => {
    nextStep(opened, CAUSES, { passMinutes: 30 });
  });

  bench('the same at night, when a pass is dear and more is worth trying', () => {
    nextStep(opened, CAUSES, { passMinutes: 240 });
  });

  bench('opening a walk with the words of the first message', () => {
    openWalk('mains-no-power', CAUSES, start);
  });

  bench('reading an answer', () => {
    if (first !== undefined) readStepAnswer('no its up, all three are', 'check', first, A_VAN);
  });
});
