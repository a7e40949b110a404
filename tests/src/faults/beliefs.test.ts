import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { massesOf, sum } from '../../../src/faults/beliefs.ts';
import { openWalk } from '../../../src/faults/open-walk.ts';
import { problemOf } from '../../../src/faults/problem.ts';
import type { Done, Walk } from '../../../src/faults/types.ts';
import { A_VAN, aCause } from './a-cause.ts';

const CAUSES = [
  aCause('a', 0.5),
  aCause('b', 0.3, { fix: { success: 0.8 } }),
  aCause('c', 0.2, { check: { also: ['a'] } }),
];
const OPENED = openWalk('no-water', CAUSES, { said: [], seen: {}, van: A_VAN, nowMs: 0 });
const having = (...done: Done[]): Walk => ({ ...OPENED, done });
/** Beliefs as probabilities: by cause, and of something else. */
function believed(walk: Walk, causes = CAUSES) {
  const masses = massesOf(problemOf(causes, 30), causes, walk);
  const shares = [...masses].map((mass) => mass / sum(masses));
  return { causes: shares.slice(0, -1), other: shares.at(-1) ?? 0 };
}
const check = (cause: string, answer: 'yes' | 'no' | 'cannot-tell'): Done => ({ kind: 'check', cause, answer });

describe('massesOf', () => {
  it('begin with the priors, and keep a share for something else', () => {
    const { causes, other } = believed(OPENED);
    expect(causes.map((each) => each / 0.93)).toEqual([0.5, 0.3, 0.2].map((each) => expect.closeTo(each, 12)));
    expect(other).toBeCloseTo(0.07, 12);
  });

  it('turn to a cause whose check says yes, and from one whose check says no', () => {
    expect(believed(having(check('b', 'yes'))).causes[1]).toBeGreaterThan(0.8);
    expect(believed(having(check('a', 'no'))).causes[0]).toBeLessThan(0.06);
  });

  it('rise for every cause that the check points to', () => {
    const { causes } = believed(having(check('c', 'yes')));
    expect(causes[0]).toBeGreaterThan(0.6);
    expect(causes[2]).toBeGreaterThan(0.25);
  });

  it('stay as they were when the hirer cannot tell or skips a fix', () => {
    expect(believed(having(check('a', 'cannot-tell'), { kind: 'fix', cause: 'b', worked: null }))).toEqual(
      believed(OPENED),
    );
  });

  it('leave a cause whose fix failed as likely as the fix is fallible', () => {
    const { causes, other } = believed(having({ kind: 'fix', cause: 'b', worked: false }));
    const left = 0.3 * 0.93 * 0.2;
    expect(causes[1]).toBeCloseTo(left / (0.93 * 0.7 + left + 0.07), 12);
    expect(other).toBeGreaterThan(0.07);
  });

  it('survive sure answers that contradict each other', () => {
    const sure = [aCause('a', 0.5, { check: { wrong: 0 } }), aCause('b', 0.5, { check: { wrong: 0 } })];
    const walk = having(check('a', 'yes'), check('b', 'yes'));
    const { causes } = believed(walk, sure);
    expect(causes[0]).toBeCloseTo(1, 12);
  });

  it('sum to 1 whatever was answered, in whatever order', () => {
    const done = fc.constantFrom<Done>(
      check('a', 'yes'),
      check('a', 'no'),
      check('b', 'yes'),
      check('b', 'no'),
      check('c', 'cannot-tell'),
      { kind: 'fix', cause: 'a', worked: false },
      { kind: 'fix', cause: 'b', worked: false },
      check('gone', 'yes'),
    );
    fc.assert(
      fc.property(fc.uniqueArray(done, { maxLength: 6 }), (all) => {
        const { causes, other } = believed(having(...all));
        expect(causes.reduce((sum, each) => sum + each, other)).toBeCloseTo(1, 9);
        const turned = believed(having(...[...all].reverse()));
        turned.causes.forEach((each, i) => {
          expect(each).toBeCloseTo(causes[i] ?? 0, 9);
        });
      }),
      { seed: 14 },
    );
  });
});

describe('problemOf', () => {
  it('prices a pass the same for what people mend, and with the wait for what only time mends', () => {
    const causes = [
      aCause('short', 0.4),
      aCause('wait', 0.2, { fix: { minutes: 240 } }),
      aCause('as-long', 0.2, { fix: { minutes: 30 } }),
      aCause('staff', 0.2, { fix: { who: 'staff', minutes: 90 } }),
    ];
    expect(problemOf(causes, 30).pass).toEqual([30, 270, 60, 30, 30]);
  });
});
