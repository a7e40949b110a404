import type { BookingRef, VanId } from '../basics/ids.ts';
import type { Address } from '../message/message.ts';
import type { Memory, Thread } from './thread.ts';

export const NO_MEMORY: Memory = {
  lastTopic: null,
  lastText: '',
  lastInputs: null,
  lastAtMs: 0,
  seen: {},
  tried: [],
  aside: null,
  dangers: [],
  wrongCodesAtMs: [],
  language: 'en',
};

/** A thread nobody has written in yet. `version` 0 means that no store has saved it. */
export function newThread(
  at: Address & { readonly id: string; readonly booking?: BookingRef | null; readonly van?: VanId | null },
  nowMs: number,
): Thread {
  return {
    id: at.id,
    channel: at.channel,
    address: at.address,
    booking: at.booking ?? null,
    van: at.van ?? null,
    keeper: 'bot',
    keeperName: null,
    reason: null,
    sinceMs: nowMs,
    open: null,
    memory: NO_MEMORY,
    version: 0,
  };
}
