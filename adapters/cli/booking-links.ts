import type { Booking, Store } from '../../src/index.ts';
import { codeText } from '../../src/index.ts';
import type { Config } from '../config.ts';
import { chatLinkEndsMs, newCode, newToken } from '../files/tokens.ts';

/** A fresh link to one booking's chat. `telegram` is null until the bot has been connected once. */
export type BookingLink = {
  readonly ref: string;
  readonly van: string;
  readonly token: string;
  readonly telegram: string | null;
  readonly chat: string;
};

/** Where the server notes the bot's user name, so that links can be made without asking Telegram. */
export const BOT_NAME_NOTE = 'telegram:bot-name';

/** Makes a link: 128 random bits, of which only the hash is kept, good until a day after the hire. */
export async function freshLink(booking: Booking, store: Store, config: Config, zone: string): Promise<BookingLink> {
  const { token, hash } = newToken();
  await store.putToken({ hash, use: 'chat', subject: booking.ref, data: {}, expiresMs: endsMs(booking, zone) });
  const bot = await store.note(BOT_NAME_NOTE);
  return {
    ref: booking.ref,
    van: booking.van,
    token,
    telegram: bot === null ? null : `https://t.me/${bot}?start=${token}`,
    chat: `${config.url}/chat/${token}`,
  };
}

/** Makes a code for the document wallet, as it is printed: K7QM-4T2X. */
export async function freshCode(booking: Booking, store: Store, zone: string): Promise<string> {
  const { code, hash } = newCode();
  await store.putToken({ hash, use: 'code', subject: booking.ref, data: {}, expiresMs: endsMs(booking, zone) });
  return codeText(code);
}

function endsMs(booking: Booking, zone: string): number {
  return chatLinkEndsMs(booking.to ?? booking.from, zone);
}
