import { describe, expect, it } from 'vitest';
import { createSimulator, RIVALS, summarise } from '../../../../src/faults/simulation/simulate.ts';
import { aCause } from '../a-cause.ts';

const CAUSES = [
  aCause('tank', 0.4, { fix: { minutes: 15, success: 0.95 } }),
  aCause('fuse', 0.3, { fix: { minutes: 8, success: 0.9, fuse: true } }),
  aCause('air', 0.2, { fix: { minutes: 3, success: 0.9 } }),
  aCause('pump', 0.1, { fix: { who: 'staff', minutes: 60 } }),
];
const options = { hirers: 3000, seed: 5, passMinutes: 60 };
const row = createSimulator(options)('water-none', 'dunlin', CAUSES);

describe('createSimulator', () => {
  it('gives the same row for the same seed, whatever was played before, and another for another', () => {
    const play = createSimulator(options);
    play('gas-none', 'wren', CAUSES.slice(0, 3));
    expect(play('water-none', 'dunlin', CAUSES)).toEqual(row);
    expect(createSimulator({ ...options, seed: 6 })('water-none', 'dunlin', CAUSES)).not.toEqual(row);
  });

  it('plays within three per cent of the minutes it computes', () => {
    expect(row.scores.ours.minutes / row.exact.ours).toBeGreaterThan(0.97);
    expect(row.scores.ours.minutes / row.exact.ours).toBeLessThan(1.03);
  });

  it('never computes fewer minutes for ours than for the best of all walks', () => {
    expect(row.exact.ours).toBeGreaterThanOrEqual(row.exact.optimum - 1e-9);
    expect(row.exact.ours).toBeLessThan(row.exact.optimum * 1.03);
  });

  it('beats every rival on this symptom', () => {
    for (const rival of RIVALS.filter((each) => each !== 'ours' && each !== 'optimum')) {
      expect(row.scores.ours.minutes).toBeLessThan(row.scores[rival].minutes);
    }
  });

  it('takes more minutes the more often answers are mistaken', () => {
    const at = (error: number) =>
      createSimulator({ ...options, error })('water-none', 'dunlin', CAUSES).scores.ours.minutes;
    expect(at(0)).toBeLessThan(at(0.05));
    expect(at(0.05)).toBeLessThan(at(0.3));
  });
});

describe('summarise', () => {
  it('pools rows by their hirers', () => {
    const few = createSimulator({ ...options, hirers: 1000 })('water-none', 'wren', CAUSES);
    const { means, hirers, rows } = summarise([row, few]);
    expect({ hirers, rows }).toEqual({ hirers: 4000, rows: 2 });
    expect(means.ours.minutes).toBeCloseTo((row.scores.ours.minutes * 3 + few.scores.ours.minutes) / 4, 9);
  });

  it('gives how far ours lies under a rival as a share of the rival', () => {
    const { underFixesOnly, means } = summarise([row]);
    expect(means.fixesOnly.minutes * (1 - underFixesOnly)).toBeCloseTo(means.ours.minutes, 9);
  });
});
