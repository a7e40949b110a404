import type { Job, Jobs } from '../../src/index.ts';

/** Jobs that end with the process. */
export function memoryJobs(): Jobs {
  const jobs = new Map<string, Job>();
  const earliestFirst = (): Job[] => [...jobs.values()].sort((a, b) => a.dueMs - b.dueMs || (a.key < b.key ? -1 : 1));
  return {
    put: async (job) => {
      jobs.set(job.key, job);
    },
    drop: async (key, dueMs) => {
      if (dueMs === undefined || jobs.get(key)?.dueMs === dueMs) jobs.delete(key);
    },
    due: async (nowMs) => earliestFirst().filter((job) => job.dueMs <= nowMs),
    nextDueMs: async () => earliestFirst()[0]?.dueMs ?? null,
  };
}
