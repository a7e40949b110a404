import type { Clock } from '../../src/index.ts';
import { ChannelError } from './errors.ts';
import { type Rates, TELEGRAM_RATES } from './limits.ts';
import type { Wait } from './wait.ts';

export type Pace = {
  /**
   * Waits until one more message to `chat` keeps Telegram's limits, then runs `send`.
   * Messages to one chat run one after another in the order asked for. Urgent ones do not wait for the second between
   * two messages (bursts are allowed) and may use the group's last places, but they too keep the count a minute and over all.
   *
   * @throws ChannelError ('unready') when the channel stops while waiting: nothing was sent.
   */
  readonly run: <T>(chat: number, urgent: boolean, send: () => Promise<T>) => Promise<T>;
  /** Milliseconds until a message to `chat` could go; 0 is now. */
  readonly freeIn: (chat: number, urgent: boolean) => number;
  /** Telegram asked for silence in this chat. */
  readonly hold: (chat: number, ms: number) => void;
};

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;
const MANY_CHATS = 1000;

/**
 * Keeps the rates by reserving an instant for each message before it is sent: an instant is free when no window around
 * it would hold too many. Invariants: `overall` and each chat's list are sorted; no list is longer than its window needs.
 */
export function createPace(clock: Clock, wait: Wait, stopping: AbortSignal, rates: Rates = TELEGRAM_RATES): Pace {
  const chats = new Map<number, number[]>();
  const heldUntil = new Map<number, number>();
  const queues = new Map<number, Promise<unknown>>();
  let overall: number[] = [];

  function nextInstant(chat: number, urgent: boolean): number {
    const nowMs = clock.nowMs();
    const sent = chats.get(chat) ?? [];
    let at = Math.max(nowMs, heldUntil.get(chat) ?? 0);
    const last = sent.at(-1);
    if (last !== undefined && !urgent) at = Math.max(at, last + rates.chatMs);
    if (isGroup(chat)) {
      const most = rates.groupPerMinute - (urgent ? 0 : rates.groupKeptForUrgent);
      const first = sent[sent.length - most];
      if (first !== undefined) at = Math.max(at, first + MINUTE_MS);
    }
    return nextFree(overall, at, rates.overallPerSecond);
  }

  function reserve(chat: number, urgent: boolean): number {
    const at = nextInstant(chat, urgent);
    const nowMs = clock.nowMs();
    const keepMs = isGroup(chat) ? MINUTE_MS : rates.chatMs;
    const sent = (chats.get(chat) ?? []).filter((time) => time > nowMs - keepMs);
    overall = overall.filter((time) => time > nowMs - SECOND_MS);
    insert(overall, at);
    insert(sent, at);
    chats.set(chat, sent);
    if (chats.size > MANY_CHATS) forgetIdle(nowMs);
    return at;
  }

  function forgetIdle(nowMs: number): void {
    for (const [chat, sent] of chats) if ((sent.at(-1) ?? 0) < nowMs - MINUTE_MS) chats.delete(chat);
    for (const [chat, until] of heldUntil) if (until < nowMs) heldUntil.delete(chat);
  }

  async function run<T>(chat: number, urgent: boolean, send: () => Promise<T>): Promise<T> {
    const before = queues.get(chat) ?? Promise.resolve();
    const mine = before.then(async () => {
      const waitMs = reserve(chat, urgent) - clock.nowMs();
      if (waitMs > 0) await wait(waitMs, stopping);
      if (stopping.aborted && waitMs > 0) throw new ChannelError('unready', 'the channel stops', { cause: null });
      return send();
    });
    const settled = mine.then(
      () => {},
      () => {},
    );
    queues.set(chat, settled);
    void settled.then(() => {
      if (queues.get(chat) === settled) queues.delete(chat);
    });
    return mine;
  }

  return {
    run,
    freeIn: (chat, urgent) => Math.max(0, nextInstant(chat, urgent) - clock.nowMs()),
    hold: (chat, ms) => void heldUntil.set(chat, clock.nowMs() + ms),
  };
}

/** Group and supergroup ids are negative (https://core.telegram.org/api/bots/ids). */
function isGroup(chat: number): boolean {
  return chat < 0;
}

/** The earliest instant from `from` on with fewer than `most` others in any second that holds it. */
function nextFree(times: readonly number[], from: number, most: number): number {
  let at = from;
  for (;;) {
    const near = times.filter((time) => time > at - SECOND_MS && time < at + SECOND_MS);
    if (near.length < most) return at;
    at = (near[0] as number) + SECOND_MS;
  }
}

function insert(times: number[], at: number): void {
  let i = times.length;
  while (i > 0 && (times[i - 1] as number) > at) i--;
  times.splice(i, 0, at);
}
