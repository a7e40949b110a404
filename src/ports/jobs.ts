/** Work to be done at a time: reminders outlive a restart. One job a key; a later `put` replaces it. */
export type Job = { readonly key: string; readonly dueMs: number; readonly data: Readonly<Record<string, string>> };

export type Jobs = {
  readonly put: (job: Job) => Promise<void>;
  /** With `dueMs`, only the job that was due then: one put anew while the old one was being done stays. */
  readonly drop: (key: string, dueMs?: number) => Promise<void>;
  /** Earliest first; a job stays until it is dropped. */
  readonly due: (nowMs: number) => Promise<readonly Job[]>;
  /** The instant of the earliest job, or null. */
  readonly nextDueMs: () => Promise<number | null>;
};
