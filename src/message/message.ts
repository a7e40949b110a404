import type { BookingRef, SiteId, VanId } from '../basics/ids.ts';

/** Where a thread lives: the channel adapter's own name. The core never branches on it. */
export type ChannelName = string;

/** One person's place on one channel: a chat id, a page token's thread, 'console'. Opaque outside the adapter. */
export type Address = { readonly channel: ChannelName; readonly address: string };

/**
 * Something that came with a message. `file` is the channel's own handle for it (a file id, a stored upload's name);
 * only the adapter that made it can open it.
 */
export type Attachment =
  | {
      readonly kind: 'photo' | 'voice' | 'video' | 'file';
      readonly file: string;
      readonly name?: string;
      readonly seconds?: number;
    }
  | { readonly kind: 'location'; readonly latitude: number; readonly longitude: number }
  | { readonly kind: 'contact'; readonly name: string; readonly phone: string };

/**
 * What came in. `key` is the channel's own id of the update: the same key is the same message, however often it arrives.
 * `choice` is set when a button was pressed. An edit carries the whole new text and a key of its own.
 */
export type Message = Address & {
  readonly key: string;
  readonly atMs: number;
  readonly text: string;
  readonly choice: string | null;
  readonly attachments: readonly Attachment[];
  readonly edit: boolean;
  /** The sender's first name as the channel gives it; never used to decide anything. */
  readonly from: string | null;
  /** The link token that came with the channel's way of starting (t.me/BOT?start=TOKEN, /chat/TOKEN). */
  readonly startToken: string | null;
};

export type People = { readonly adults: number; readonly children: readonly number[]; readonly dogs: number };

/** A hire. Days are local to the firm, written 2027-07-24. */
export type Booking = {
  readonly ref: BookingRef;
  /** As on the sheet: 'The Okonkwo-Hale family'. */
  readonly hirer: string;
  readonly firstName: string;
  /** Null: not known. */
  readonly people: People | null;
  readonly van: VanId;
  /** Null while touring or not yet known. */
  readonly site: SiteId | null;
  readonly pitch: string | null;
  /** The hook-up's rating in amps; 0 is a pitch with no hook-up; null is not known. */
  readonly amps: number | null;
  readonly from: string;
  /** The day of return; null: not known. */
  readonly to: string | null;
  readonly phone: string | null;
  readonly note: string;
};
