import type { Context } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Booking, Thread } from '../../src/index.ts';
import type { WebWorld } from './world.ts';

export const CHANNEL = 'web';

/**
 * Who is looking. One secret a device, in a cookie; the thread's address is a hash of it and of the booking, so that
 * each person who opens a link has a thread of their own, one person with two bookings has two, and nothing in the
 * store opens anyone's thread.
 */
export type Visitor = {
  readonly address: string;
  readonly thread: Thread | null;
  /** Of the thread once it is bound, else of the link. */
  readonly booking: Booking | null;
  /** The booking that the link names, while the link holds. */
  readonly linked: string | null;
  /** The link's token while it holds, else null. */
  readonly token: string | null;
  /** A link was opened that holds no longer. */
  readonly ended: boolean;
  /** Path of the page: /chat or /chat/TOKEN. */
  readonly path: string;
};

const COOKIE = 'pitchhand';
const KEPT_SECONDS = 60 * 24 * 3600;
const SECRET = /^[A-Za-z0-9_-]{16,64}$/;
/** Tokens are base64url; longer or other text is no token of ours and is never hashed. */
const TOKEN = /^[A-Za-z0-9_-]{8,64}$/;

export async function visitorOf(c: Context, world: WebWorld): Promise<Visitor> {
  const given = c.req.param('token');
  const found =
    given !== undefined && TOKEN.test(given)
      ? await world.store.token(world.tokens.hashOf(given), 'chat', world.clock.nowMs())
      : null;
  const token = found === null || given === undefined ? null : given;
  return again(world, {
    address: world.tokens.hashOf(`${secretOf(c, world)}/${found?.subject ?? ''}`),
    linked: found?.subject ?? null,
    token,
    ended: given !== undefined && token === null,
    path: given === undefined ? '/chat' : `/chat/${encodeURIComponent(given)}`,
  });
}

/** The same visitor as things stand now. */
export async function again(world: WebWorld, who: Omit<Visitor, 'thread' | 'booking'>): Promise<Visitor> {
  const thread = await world.store.threadAt({ channel: CHANNEL, address: who.address });
  const ref = thread?.booking ?? who.linked;
  return { ...who, thread, booking: ref === null ? null : await world.store.booking(ref) };
}

function secretOf(c: Context, world: WebWorld): string {
  const held = getCookie(c, COOKIE);
  const secret = held !== undefined && SECRET.test(held) ? held : world.tokens.newToken().token;
  // Set again each time: a hirer who keeps writing keeps the thread.
  setCookie(c, COOKIE, secret, {
    path: '/chat',
    httpOnly: true,
    sameSite: 'Lax',
    secure: world.secure,
    maxAge: KEPT_SECONDS,
  });
  return secret;
}
