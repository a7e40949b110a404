import { describe, expect, it } from 'vitest';
import { lookAhead } from '../../../src/faults/look-ahead.ts';
import { nextStep } from '../../../src/faults/next-step.ts';
import { openWalk } from '../../../src/faults/open-walk.ts';
import { everythingOpen, withoutCheck } from '../../../src/faults/plan.ts';
import { problemOf } from '../../../src/faults/problem.ts';
import { goBack, put, type Told, tell } from '../../../src/faults/walk.ts';
import type { ScopedCause } from '../../../src/knowledge/knowledge.ts';
import { A_VAN, aCause } from './a-cause.ts';

const start = { said: [], seen: {}, van: A_VAN, nowMs: 0 };
const options = { passMinutes: 60 };

function walkThrough(causes: readonly ScopedCause[], answer: (asked: { kind: string; cause: string }) => Told) {
  let walk = openWalk('no-water', causes, start);
  const asked: string[] = [];
  while (asked.length < 50) {
    const next = nextStep(walk, causes, options);
    if (next.kind === 'pass' || next.kind === 'fixed') return { end: next, asked, walk };
    asked.push(`${next.kind} ${next.cause}`);
    walk = tell(put(walk, next), answer(next));
  }
  throw new Error(`the walk does not end: ${asked.join(', ')}`);
}

describe('nextStep', () => {
  it('looks at a glance before the work it could spare, even where the arithmetic would work first', () => {
    const causes = [aCause('empty', 0.75, { fix: { minutes: 4 } }), aCause('pump', 0.25, { fix: { who: 'staff' } })];
    const problem = problemOf(causes, options.passMinutes);
    const { action } = lookAhead(problem, Float64Array.from(problem.prior), everythingOpen(problem), 4);
    expect(action).toEqual({ kind: 'fix', i: 0 });
    const opened = openWalk('no-water', causes, start);
    expect(nextStep(opened, causes, options)).toEqual({ kind: 'check', cause: 'empty' });
  });

  it('does a one-minute fix of a likely cause without asking first', () => {
    const causes = [aCause('switch', 0.9, { fix: { minutes: 1 } }), aCause('hose', 0.1)];
    expect(nextStep(openWalk('no-water', causes, start), causes, options)).toEqual({ kind: 'fix', cause: 'switch' });
  });

  it('goes to the fix when its check says yes, and is fixed when that works', () => {
    const causes = [aCause('empty', 0.6), aCause('hose', 0.4)];
    const { end } = walkThrough(causes, ({ kind, cause }) =>
      kind === 'check'
        ? { kind: 'observed', answer: cause === 'hose' ? 'yes' : 'no' }
        : { kind: 'tried', worked: cause === 'hose' },
    );
    expect(end).toEqual({ kind: 'fixed', cause: 'hose' });
  });

  it('never puts the same step twice and ends in a pass when nothing helps', () => {
    const causes = [aCause('a', 0.3), aCause('b', 0.3), aCause('c', 0.2), aCause('d', 0.2, { fix: { who: 'staff' } })];
    const { end, asked } = walkThrough(causes, ({ kind }) =>
      kind === 'check' ? { kind: 'skip' } : { kind: 'tried', worked: false },
    );
    expect(new Set(asked).size).toBe(asked.length);
    expect(end.kind).toBe('pass');
  });

  it('passes at once on a stop condition', () => {
    const causes = [aCause('a', 0.5), aCause('b', 0.5)];
    const { end, asked } = walkThrough(causes, () => ({ kind: 'stop', said: 'it blew again' }));
    expect(asked).toHaveLength(1);
    expect(end).toMatchObject({ kind: 'pass', why: 'stopped' });
  });

  it('passes with the likely cause named when only people can cure it', () => {
    const causes = [
      aCause('pump', 0.9, { fix: { who: 'staff', minutes: 60 } }),
      aCause('hose', 0.1, { fix: { minutes: 200 } }),
    ];
    const { end } = walkThrough(causes, ({ cause }) => ({ kind: 'observed', answer: cause === 'pump' ? 'yes' : 'no' }));
    expect(end).toEqual({ kind: 'pass', why: 'cheaper', likely: 'pump' });
  });

  it('resets the main switch at most twice and replaces one fuse at most', () => {
    const fix = { minutes: 1, success: 0.5 };
    const causes = [
      aCause('r1', 0.2, { check: null, fix: { ...fix, reset: true } }),
      aCause('r2', 0.2, { check: null, fix: { ...fix, reset: true } }),
      aCause('r3', 0.2, { check: null, fix: { ...fix, reset: true } }),
      aCause('f1', 0.2, { check: null, fix: { ...fix, fuse: true } }),
      aCause('f2', 0.2, { check: null, fix: { ...fix, fuse: true } }),
    ];
    const { asked } = walkThrough(causes, () => ({ kind: 'tried', worked: false }));
    expect(asked.filter((step) => step.startsWith('fix r'))).toHaveLength(2);
    expect(asked.filter((step) => step.startsWith('fix f'))).toHaveLength(1);
  });

  it('counts the resets of checks toward the two, but not those seen earlier', () => {
    const resetting = (id: string) => aCause(id, 0.25, { check: { reset: true }, fix: { minutes: 50, who: 'staff' } });
    const causes = ['a', 'b', 'c', 'd'].map(resetting);
    const answers = () => ({ kind: 'observed', answer: 'no' }) as const;
    const dear = { passMinutes: 10_000 };
    const steps = (seen: Readonly<Record<string, 'no'>>): number => {
      let walk = openWalk('trips', causes, { ...start, seen });
      for (let asked = 0; ; asked++) {
        const next = nextStep(walk, causes, dear);
        if (next.kind !== 'check') return asked;
        walk = tell(put(walk, next), answers());
      }
    };
    expect(steps({})).toBeLessThanOrEqual(2);
    const problem = problemOf(causes, 30);
    const twice = withoutCheck(problem, withoutCheck(problem, everythingOpen(problem), 0), 1);
    expect(twice).toMatchObject({ checks: 0, resets: 0 });
    expect(withoutCheck(problem, everythingOpen(problem), 0, true)).toMatchObject({ resets: 2, checks: 0b1110 });
  });

  it('takes what the thread has seen before as answered', () => {
    const causes = [aCause('a', 0.5), aCause('b', 0.5)];
    const walk = openWalk('no-water', causes, { ...start, seen: { 'is-it-a': 'no' } });
    expect(walk.done).toEqual([{ kind: 'check', cause: 'a', answer: 'no', earlier: true }]);
    expect(nextStep(walk, causes, options)).not.toEqual({ kind: 'check', cause: 'a' });
  });

  it('puts the step again after going back', () => {
    const causes = [aCause('a', 0.6), aCause('b', 0.4)];
    const opened = openWalk('no-water', causes, start);
    const asked = put(opened, { kind: 'check', cause: 'a' });
    expect(goBack(tell(asked, { kind: 'observed', answer: 'no' }))).toEqual(asked);
    expect(goBack(opened)).toBe(opened);
  });
});
