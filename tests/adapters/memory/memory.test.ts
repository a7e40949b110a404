import { expect, test } from 'vitest';
import { memoryJobs } from '../../../adapters/memory/memory-jobs.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { jobsContract } from '../../contracts/jobs.ts';
import { storeContract } from '../../contracts/store.ts';
import type { Keeper } from '../../contracts/store-fixtures.ts';

const memory: Keeper = {
  name: 'memory',
  open: async () => {
    const store = memoryStore();
    return { store, jobs: memoryJobs(), end: () => store.close() };
  },
};

storeContract(memory);
jobsContract(memory);

test('says that what is in memory only cannot be backed up', async () => {
  await expect(memoryStore().backup('copy.db')).rejects.toThrow('memory');
});
