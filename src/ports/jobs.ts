/** Work to be done at a time: reminders outlive a restart. One job a key; a later `put` replaces it. */
export type Job = { readonly key: string; readonly dueMs: number; readonly data: Readonly<Record<string, string>> };

export type Jobs = {
  readonly put: (job: Job) => Promise<void>;
  readonly drop: (key: string) => Promise<void>;
  readonly due: (nowMs: number) => Promise<readonly Job[]>;
  /** The instant of the earliest job, or null. */
  readonly nextDueMs: () => Promise<number | null>;
};
