import type { Logger } from 'pino';

/** Repeats a piece of work while it finds something to do, then sleeps until woken. */
export type Wakeable = {
  readonly wake: () => void;
  readonly start: () => void;
  readonly stop: () => Promise<void>;
  readonly idle: () => Promise<void>;
};

const LOOK_AGAIN_MS = 1_000;
const AFTER_ERROR_MS = 500;

/**
 * @param work Resolves to whether it did something; it is then called again at once. An error is logged and the work
 *             tried again shortly: what waits in the store is never given up.
 */
export function createWakeable(work: () => Promise<boolean>, log: Logger): Wakeable {
  let running: Promise<void> | null = null;
  let started = false;
  let again = false;
  let timer: NodeJS.Timeout | null = null;

  const run = async (): Promise<void> => {
    do {
      again = false;
      try {
        while (started && (await work())) again = false;
      } catch (error) {
        log.error({ err: error }, 'work failed and is tried again');
        await new Promise((resolve) => setTimeout(resolve, AFTER_ERROR_MS));
        again = true;
      }
    } while (again && started);
  };

  const wake = (): void => {
    if (!started) return;
    if (running !== null) {
      again = true;
      return;
    }
    running = run().finally(() => {
      running = null;
      // Woken in the instant between the last look and the end.
      if (again && started) wake();
    });
  };

  return {
    wake,
    start: () => {
      started = true;
      timer = setInterval(wake, LOOK_AGAIN_MS);
      timer.unref();
      wake();
    },
    stop: async () => {
      started = false;
      if (timer !== null) clearInterval(timer);
      await running;
    },
    idle: async () => {
      while (running !== null) await running;
    },
  };
}
