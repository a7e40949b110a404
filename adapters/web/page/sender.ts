import type { Outbox, Unsent } from './outbox.ts';

/** How one attempt ended. `later`: no signal, or the server asks for patience. */
export type Sent =
  | { readonly kind: 'taken'; readonly says: string | null }
  | { readonly kind: 'refused'; readonly says: string }
  | { readonly kind: 'later' };

export type Sender = {
  /** Sends what is waiting, in the order typed, one at a time; comes back by itself while something is left. */
  readonly flush: () => void;
};

const FIRST_WAIT_MS = 1500;
const MOST_WAIT_MS = 30_000;

/**
 * @param post    One attempt. Must resolve; a network error is `later`.
 * @param changed Called whenever the outbox or the signal has changed.
 */
export function createSender(
  outbox: Outbox,
  post: (message: Unsent) => Promise<Sent>,
  changed: (state: { readonly signal: boolean; readonly says: string | null }) => void,
): Sender {
  let busy = false;
  let waitMs = FIRST_WAIT_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const flush = async () => {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    try {
      for (;;) {
        const next = outbox.all().find((message) => message.refused === undefined);
        if (next === undefined) break;
        const sent = await post(next);
        if (sent.kind === 'later') {
          changed({ signal: false, says: null });
          timer = setTimeout(flush, waitMs);
          waitMs = Math.min(waitMs * 2, MOST_WAIT_MS);
          return;
        }
        waitMs = FIRST_WAIT_MS;
        if (sent.kind === 'taken') outbox.drop(next.key);
        else outbox.refuse(next.key, sent.says);
        changed({ signal: true, says: sent.says });
      }
    } finally {
      busy = false;
    }
  };
  return { flush: () => void flush() };
}
