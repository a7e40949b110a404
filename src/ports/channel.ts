import type { Address, ChannelName } from '../message/message.ts';
import type { Reply } from '../reply/reply.ts';

/** What a channel can show. The core words a reply the same way for all; the adapter makes the best of it. */
export type Abilities = {
  readonly buttons: boolean;
  readonly pictures: boolean;
  readonly edits: boolean;
  readonly media: boolean;
  /** Characters a message may hold; longer ones are split at sentences. */
  readonly longest: number;
};

/**
 * How a delivery ended. `gone`: this address will never take another message (blocked, deleted): staff are told.
 * `later`: not now; try again after `afterMs`. `unknown`: the network hid the outcome; it may have arrived.
 */
export type Receipt =
  | { readonly kind: 'delivered'; readonly id: string }
  | { readonly kind: 'later'; readonly afterMs: number; readonly why: string }
  | { readonly kind: 'unknown'; readonly why: string }
  | { readonly kind: 'gone'; readonly why: string };

/** How words that are put right stand at the hirer's end now: the channel's own id of them, and as they read. */
export type Arrived = { readonly id: string; readonly reply: Reply };

/** A way to reach people. `deliver` never throws: every failure is a receipt. */
export type Channel = {
  readonly name: ChannelName;
  readonly abilities: Abilities;
  readonly start: () => Promise<void>;
  /** Ends cleanly: nothing already accepted is lost. */
  readonly stop: () => Promise<void>;
  /**
   * @param arrived Given when the reply puts right an earlier one that has arrived: it then takes that one's place, or
   *                 follows, marked as put right, where that can no longer be done.
   */
  readonly deliver: (reply: Reply, to: Address, arrived?: Arrived | null) => Promise<Receipt>;
};
