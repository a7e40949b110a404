import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Jobs } from '../../src/index.ts';
import { type Keeper, NOW } from './store-fixtures.ts';

/** What every keeper of jobs keeps to. */
export function jobsContract(keeper: Keeper): void {
  describe(`jobs contract: ${keeper.name}`, () => {
    let jobs: Jobs;
    let end: () => Promise<void>;
    beforeEach(async () => {
      ({ jobs, end } = await keeper.open());
    });
    afterEach(() => end());

    const job = (key: string, dueMs: number): Parameters<Jobs['put']>[0] => ({ key, dueMs, data: { thread: key } });

    test('gives the jobs that are due, earliest first, until they are dropped', async () => {
      await jobs.put(job('late', NOW + 2));
      await jobs.put(job('b', NOW));
      await jobs.put(job('a', NOW));
      await jobs.put(job('early', NOW - 5));
      expect((await jobs.due(NOW)).map((each) => each.key)).toEqual(['early', 'a', 'b']);
      await jobs.drop('a');
      await jobs.drop('a');
      expect(await jobs.due(NOW)).toEqual([job('early', NOW - 5), job('b', NOW)]);
    });

    test('says when the earliest is due', async () => {
      expect(await jobs.nextDueMs()).toBeNull();
      await jobs.put(job('a', NOW + 7));
      await jobs.put(job('b', NOW + 3));
      expect(await jobs.nextDueMs()).toBe(NOW + 3);
    });

    test('keeps one job a key: a later one replaces it', async () => {
      await jobs.put(job('a', NOW));
      await jobs.put({ key: 'a', dueMs: NOW + 60_000, data: { thread: 'other' } });
      expect(await jobs.due(NOW)).toEqual([]);
      expect(await jobs.due(NOW + 60_000)).toEqual([{ key: 'a', dueMs: NOW + 60_000, data: { thread: 'other' } }]);
    });

    test('does not drop a job that was put anew while the old one was being done', async () => {
      await jobs.put(job('a', NOW));
      await jobs.put(job('a', NOW + 60_000));
      await jobs.drop('a', NOW);
      expect(await jobs.nextDueMs()).toBe(NOW + 60_000);
      await jobs.drop('a', NOW + 60_000);
      expect(await jobs.nextDueMs()).toBeNull();
    });
  });
}
