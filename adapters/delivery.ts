import type { Logger } from 'pino';
import type { Channel, Clock, OutboxRow, Receipt, Store } from '../src/index.ts';
import { createWakeable, type Wakeable } from './wakeable.ts';

/** Enough that a few dozen hanging connections leave room; bounded, since each holds a row in memory. */
const MOST_AT_ONCE = 64;
const FIRST_RETRY_MS = 1_000;
const LONGEST_RETRY_MS = 60_000;

export type Delivery = Wakeable;

type Parts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly onChange: (threadId: string) => void;
};

/**
 * Sends a channel's outbox: rows of one address in order, many addresses at once. An address that is slow, or whose row
 * cannot be sent now, holds back its own later rows and nobody else's.
 */
export function deliverAll(channel: Channel, { store, clock, log, onChange }: Parts): Delivery {
  /** Addresses with a row on its way; never more than {@link MOST_AT_ONCE}. */
  const busy = new Map<string, Promise<void>>();

  /** What the channel has said of rows that could not be settled yet (a full disk): they are not sent again for that. */
  const ended = new Map<number, Receipt>();
  let begun = 0;

  const deliver = async (row: OutboxRow): Promise<void> => {
    // A row that an ended process may have sent is sent again: twice is better than never.
    const receipt = ended.get(row.id) ?? (await channel.deliver(row.reply, row, row.arrived));
    ended.set(row.id, receipt);
    const settled =
      receipt.kind === 'later' ? { ...receipt, afterMs: Math.max(receipt.afterMs, backOffMs(row.tries)) } : receipt;
    if (receipt.kind === 'gone' || receipt.kind === 'unknown') {
      log.warn(
        { channel: channel.name, thread: row.threadId, receipt: receipt.kind, why: receipt.why },
        'a reply may not have arrived',
      );
    }
    // Before the row ends: a crash in between tells staff and forgets the row, never the other way round.
    if (receipt.kind === 'gone') await tellStaffGone(store, row, receipt, clock.nowMs());
    await store.settle(row.id, settled, clock.nowMs());
    ended.delete(row.id);
    onChange(row.threadId);
  };

  const work = createWakeable(async () => {
    const room = MOST_AT_ONCE - busy.size;
    if (room === 0) return false;
    const rows = await store.nextToSend(channel.name, clock.nowMs(), room, new Set(busy.keys()));
    await store.markSending(rows.map((row) => row.id));
    for (const row of rows) {
      const sending = deliver(row)
        .catch((error: unknown) => log.error({ err: error, thread: row.threadId }, 'a reply was not settled'))
        .finally(() => {
          busy.delete(row.address);
          work.wake();
        });
      busy.set(row.address, sending);
      begun += 1;
    }
    return rows.length > 0;
  }, log);

  return {
    wake: work.wake,
    start: work.start,
    stop: async () => {
      await work.stop();
      await Promise.all(busy.values());
    },
    idle: async () => {
      // A row that ends wakes the work, which may begin the next: idle is when a whole look begins nothing.
      for (let before = -1; before !== begun || busy.size > 0; ) {
        before = begun;
        await work.idle();
        await Promise.all(busy.values());
        await work.idle();
      }
    },
  };
}

/** 1, 2, 4 ... seconds, at most a minute; the channel's own retry-after counts when it is longer. */
function backOffMs(tries: number): number {
  return Math.min(LONGEST_RETRY_MS, FIRST_RETRY_MS * 2 ** Math.min(tries, 6));
}

/** A hirer who cannot be reached: staff are told in the thread, once in a row, where the booking's phone number stands too. */
async function tellStaffGone(
  store: Store,
  row: OutboxRow,
  receipt: Extract<Receipt, { kind: 'gone' }>,
  nowMs: number,
): Promise<void> {
  const text = `The hirer can no longer be reached on ${row.channel} (${receipt.why}). Ring the number on the booking.`;
  for (;;) {
    const thread = await store.thread(row.threadId);
    if (thread === null) return;
    const last = (await store.events({ threadId: thread.id, kinds: ['staff-noted'] })).at(-1)?.event;
    if (last?.kind === 'staff-noted' && last.text === text) return;
    const saved = await store.saveTurn({
      seq: null,
      thread,
      replies: [],
      events: [{ kind: 'staff-noted', by: 'Pitchhand', text }],
      atMs: nowMs,
    });
    if (saved === 'saved') return;
  }
}
