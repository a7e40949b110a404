import type { Clock } from '../../src/index.ts';
import { type Rates, TELEGRAM_RATES } from './limits.ts';

export type Wait = (ms: number) => Promise<void>;
export const realWait: Wait = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

export type Pace = {
  /**
   * Waits until one more message to `chat` keeps Telegram's limits, then runs `send`.
   * Messages to one chat run one after another in the order asked for. Urgent ones do not wait for the second between
   * two messages (bursts are allowed) and may use the group's last places, but they too keep the count a minute and over all.
   */
  readonly run: <T>(chat: number, urgent: boolean, send: () => Promise<T>) => Promise<T>;
  /** Telegram asked for silence in this chat. */
  readonly hold: (chat: number, ms: number) => void;
};

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;

/**
 * Keeps the rates by reserving an instant for each message before it is sent: an instant is free when no window around
 * it would hold too many. Invariants: `overall` and each chat's list are sorted and hold the last minute only.
 */
export function createPace(clock: Clock, wait: Wait, rates: Rates = TELEGRAM_RATES): Pace {
  const chats = new Map<number, number[]>();
  const heldUntil = new Map<number, number>();
  const queues = new Map<number, Promise<unknown>>();
  let overall: number[] = [];

  function reserve(chat: number, urgent: boolean): number {
    const nowMs = clock.nowMs();
    overall = overall.filter((at) => at > nowMs - SECOND_MS);
    const sent = (chats.get(chat) ?? []).filter((at) => at > nowMs - MINUTE_MS);
    let at = Math.max(nowMs, heldUntil.get(chat) ?? 0);
    const last = sent.at(-1);
    if (last !== undefined && !urgent) at = Math.max(at, last + rates.chatMs);
    if (isGroup(chat)) {
      const most = rates.groupPerMinute - (urgent ? 0 : rates.groupKeptForUrgent);
      const first = sent[sent.length - most];
      if (first !== undefined) at = Math.max(at, first + MINUTE_MS);
    }
    at = nextFree(overall, at, rates.overallPerSecond);
    insert(overall, at);
    insert(sent, at);
    chats.set(chat, sent);
    return at;
  }

  async function run<T>(chat: number, urgent: boolean, send: () => Promise<T>): Promise<T> {
    const before = queues.get(chat) ?? Promise.resolve();
    const mine = before.then(async () => {
      const waitMs = reserve(chat, urgent) - clock.nowMs();
      if (waitMs > 0) await wait(waitMs);
      return send();
    });
    const settled = mine.catch(() => {});
    queues.set(chat, settled);
    void settled.then(() => {
      if (queues.get(chat) === settled) forget(chat);
    });
    return mine;
  }

  /** Nobody waits for this chat any more: keep its times only while they still limit something. */
  function forget(chat: number): void {
    queues.delete(chat);
    if (!isGroup(chat) && chats.size > 1000) {
      const nowMs = clock.nowMs();
      for (const [id, sent] of chats) if ((sent.at(-1) ?? 0) < nowMs - MINUTE_MS && !queues.has(id)) chats.delete(id);
      for (const [id, until] of heldUntil) if (until < nowMs) heldUntil.delete(id);
    }
  }

  return { run, hold: (chat, ms) => void heldUntil.set(chat, clock.nowMs() + ms) };
}

/** Group and supergroup ids are negative (https://core.telegram.org/api/bots/ids). */
export function isGroup(chat: number): boolean {
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
