import type { Connection } from './connection.ts';

/** The only way to write: everything asked for within one tick shares one transaction, and so one wait for the disk. */
export type Writer = {
  /**
   * Runs `work` in a transaction, in the order asked.
   *
   * @returns Its result, once it is on the disk. Rejects when `work` throws (then nothing of it was written, and its
   *          neighbours are not affected) or when the transaction fails as a whole.
   */
  readonly write: <T>(work: () => T) => Promise<T>;
  /**
   * The same without waiting for the disk: it outlives the end of the process, but perhaps not a power cut. It is on the
   * disk at the latest with the next `write`.
   */
  readonly writeSoon: <T>(work: () => T) => Promise<T>;
  /** Writes what waits, now. */
  readonly flush: () => void;
};

/** The most that shares one transaction, so that a flood does not hold up everything else of the process. */
const MOST = 500;

type Waiting = {
  readonly durable: boolean;
  /** Runs the work in a savepoint of its own; gives what to tell the caller after the commit. */
  readonly attempt: () => () => void;
  readonly fail: (error: unknown) => void;
};

/** Work is synchronous, so a transaction never spans two ticks and no reader of this process sees half of one. */
export function groupCommit(at: Connection): Writer {
  const { raw } = at;
  let waiting: Waiting[] = [];
  let scheduled = false;

  const inSavepoint = raw.transaction((work: () => unknown) => work());
  const together = raw.transaction((batch: readonly Waiting[]) => batch.map((each) => each.attempt()));

  const withoutWaiting = <T>(work: () => T): T => {
    raw.pragma('synchronous = NORMAL');
    try {
      return work();
    } finally {
      raw.pragma('synchronous = FULL');
    }
  };
  const commit = (batch: readonly Waiting[]): void => {
    let tells: (() => void)[];
    try {
      const durable = batch.some((each) => each.durable);
      tells = at.run(() => (durable ? together.immediate(batch) : withoutWaiting(() => together.immediate(batch))));
    } catch (error) {
      for (const each of batch) each.fail(error);
      return;
    }
    for (const tell of tells) tell();
  };
  const schedule = (): void => {
    if (scheduled) return;
    scheduled = true;
    setImmediate(() => {
      scheduled = false;
      const batch = waiting.slice(0, MOST);
      waiting = waiting.slice(MOST);
      if (waiting.length > 0) schedule();
      if (batch.length > 0) commit(batch);
    });
  };

  const ask = <T>(work: () => T, durable: boolean): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      const attempt = (): (() => void) => {
        try {
          const result = inSavepoint(work) as T;
          return () => resolve(result);
        } catch (error) {
          // Some failures (a full disk) end the whole transaction: nothing of the batch may then be taken for written.
          if (!raw.inTransaction) throw error;
          return () => reject(error);
        }
      };
      waiting.push({ attempt, fail: reject, durable });
      schedule();
    });

  return {
    write: (work) => ask(work, true),
    writeSoon: (work) => ask(work, false),
    flush: () => {
      const batch = waiting;
      waiting = [];
      if (batch.length > 0) commit(batch);
    },
  };
}
