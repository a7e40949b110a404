/** Resolves after `ms`, or at once when the signal says stop; never rejects. */
export type Wait = (ms: number, signal?: AbortSignal) => Promise<void>;

export const realWait: Wait = (ms, signal) =>
  new Promise((resolve) => {
    if (signal?.aborted === true) return resolve();
    const done = () => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', done);
      resolve();
    };
    const timer = setTimeout(done, ms);
    signal?.addEventListener('abort', done);
  });
