import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countFaults } from '../../../src/review/fault-counts.ts';
import { aCause } from '../faults/a-cause.ts';
import { aFleet, anEnd, CAUSES, times } from './a-fleet.ts';

describe('countFaults', () => {
  it('lists nothing before any walk has ended', () => {
    expect(countFaults([], aFleet(CAUSES))).toEqual([]);
  });

  it('counts cures, passes and walks that were left, each van apart', () => {
    const ended = [
      anEnd('fixed', 'empty'),
      anEnd('fixed', 'empty'),
      anEnd('passed', 'pump'),
      anEnd('passed', null),
      anEnd('left', null),
      anEnd('fixed', 'hose', 'wren'),
    ];
    const [dunlin, wren] = countFaults(ended, aFleet(CAUSES));
    expect(dunlin).toMatchObject({ van: 'dunlin', walks: 5, fixed: 2, passed: 2, left: 1, unresolved: 1 });
    expect(dunlin?.causes.map(({ cured, believed }) => [cured, believed])).toEqual([
      [2, 0],
      [0, 0],
      [0, 1],
    ]);
    expect(wren).toMatchObject({ van: 'wren', walks: 1, fixed: 1 });
  });

  it('says where priors and counts part, and only there', () => {
    const far = countFaults(
      [...times(40, anEnd('fixed', 'hose')), ...times(2, anEnd('fixed', 'empty'))],
      aFleet(CAUSES),
    );
    expect(far[0]?.parts).toBe(true);
    const near = countFaults(
      [
        ...times(10, anEnd('fixed', 'empty')),
        ...times(6, anEnd('fixed', 'hose')),
        ...times(4, anEnd('passed', 'pump')),
      ],
      aFleet(CAUSES),
    );
    expect(near[0]?.parts).toBe(false);
  });

  it('moves a prior half way to what twenty walks show', () => {
    const [row] = countFaults(times(20, anEnd('fixed', 'hose')), aFleet(CAUSES));
    expect(row?.causes.map((each) => each.proposed)).toEqual([0.25, 0.65, 0.1]);
  });

  it('never proposes to rule a cause out', () => {
    const causes = [aCause('usual', 0.99), aCause('rare', 0.01)];
    const [row] = countFaults(times(900, anEnd('fixed', 'usual')), aFleet(causes));
    expect(row?.causes.map((each) => each.proposed)).toEqual([0.99, 0.01]);
  });

  it('has the share within its interval, and proposes priors of two places that sum to 1 and rule nothing out', () => {
    const count = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(count, count, count, (empty, hose, pump) => {
        fc.pre(empty + hose + pump > 0);
        const ended = [
          ...times(empty, anEnd('fixed', 'empty')),
          ...times(hose, anEnd('fixed', 'hose')),
          ...times(pump, anEnd('passed', 'pump')),
        ];
        const [row] = countFaults(ended, aFleet(CAUSES));
        const hundredths = row?.causes.map((each) => Math.round(each.proposed * 100)) ?? [];
        expect(hundredths.reduce((sum, each) => sum + each, 0)).toBe(100);
        for (const each of row?.causes ?? []) {
          expect(each.proposed).toBeGreaterThan(0);
          // Half a walk is added to each cause, so that a share of 0 or 1 may lie just outside.
          expect(each.share).toBeGreaterThan(each.interval[0] - 0.06);
          expect(each.share).toBeLessThan(each.interval[1] + 0.06);
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
