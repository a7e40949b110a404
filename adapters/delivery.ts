import type { Logger } from 'pino';
import type { Channel, Clock, OutboxRow, Receipt, Store } from '../src/index.ts';
import { createWakeable, type Wakeable } from './wakeable.ts';

const MOST_AT_ONCE = 32;
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
 * Sends a channel's outbox: rows of one address in order, many addresses at once. A row that cannot be sent now waits
 * and holds back the later rows of its address only.
 */
export function deliverAll(channel: Channel, { store, clock, log, onChange }: Parts): Delivery {
  const deliver = async (row: OutboxRow): Promise<void> => {
    const receipt = row.maybeSent && row.reply.kind !== 'notice' ? HIDDEN : await channel.deliver(row.reply, row);
    const settled =
      receipt.kind === 'later' ? { ...receipt, afterMs: Math.max(receipt.afterMs, backOffMs(row.tries)) } : receipt;
    if (receipt.kind === 'gone' || receipt.kind === 'unknown') {
      log.warn(
        { channel: channel.name, thread: row.threadId, receipt: receipt.kind, why: receipt.why },
        'a reply may not have arrived',
      );
    }
    await store.settle(row.id, settled, clock.nowMs());
    if (receipt.kind === 'gone') await tellStaffGone(store, row, receipt, clock.nowMs());
    onChange(row.threadId);
  };
  return createWakeable(async () => {
    const rows = await store.nextToSend(channel.name, clock.nowMs(), MOST_AT_ONCE, new Set());
    await store.markSending(rows.map((row) => row.id));
    await Promise.all(rows.map(deliver));
    return rows.length > 0;
  }, log);
}

/**
 * The one honest exception to 'nothing lost, nothing twice': the process ended between sending and writing that down.
 * A notice is sent again, since twice is better than never; anything else is taken as sent.
 */
const HIDDEN: Receipt = { kind: 'unknown', why: 'the process ended while this was being sent' };

/** 1, 2, 4 ... seconds, at most a minute; the channel's own retry-after counts when it is longer. */
function backOffMs(tries: number): number {
  return Math.min(LONGEST_RETRY_MS, FIRST_RETRY_MS * 2 ** Math.min(tries, 6));
}

/** A hirer who cannot be reached: staff are told in the thread, where the booking's phone number stands as well. */
async function tellStaffGone(
  store: Store,
  row: OutboxRow,
  receipt: Extract<Receipt, { kind: 'gone' }>,
  nowMs: number,
): Promise<void> {
  const thread = await store.thread(row.threadId);
  if (thread === null) return;
  const text = `The hirer can no longer be reached on ${row.channel} (${receipt.why}). Ring the number on the booking.`;
  await store.saveTurn({
    seq: null,
    thread,
    replies: [],
    events: [{ kind: 'staff-noted', by: 'Pitchhand', text }],
    atMs: nowMs,
  });
}
