import { createHmac, timingSafeEqual } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { DAY_MS } from '../../src/index.ts';
import { roleNow } from './members.ts';
import { type Role, YARD, type YardWorld } from './world.ts';

/** Who is signed in, since when. `csrf` must come back with every form. */
export type Session = {
  readonly name: string;
  readonly role: Role;
  readonly csrf: string;
  readonly hash: string;
  readonly beganMs: number;
};

/** Who comes in; `passkey` is the hash of the key that opened, so that its sessions end with it. */
export type Entrant = { readonly name: string; readonly role: Role; readonly passkey?: string };

const COOKIE = 'yard';
const LASTS_MS = 14 * DAY_MS;
const SECRET = /^[A-Za-z0-9_-]{16,64}$/;

declare module 'hono' {
  interface ContextVariableMap {
    session: Session;
  }
}

/** Begins a session for whoever proved who they are; the browser gets the secret, the store its hash. An older one ends. */
export async function beginSession(c: Context, world: YardWorld, { name, role, passkey }: Entrant): Promise<void> {
  const before = await sessionOf(c, world);
  if (before !== null) await world.store.dropToken(before.hash);
  const { token, hash } = world.tokens.newToken();
  const expiresMs = world.clock.nowMs() + LASTS_MS;
  const data = passkey === undefined ? { role } : { role, passkey };
  await world.store.putToken({ hash, use: 'session', subject: name, data, expiresMs });
  setCookie(c, COOKIE, token, {
    path: '/yard',
    httpOnly: true,
    sameSite: 'Lax',
    secure: world.secure,
    maxAge: LASTS_MS / 1000,
  });
}

export async function endSession(c: Context, world: YardWorld): Promise<void> {
  await world.store.dropToken(c.get('session').hash);
  world.wakes.wake(YARD);
  deleteCookie(c, COOKIE, { path: '/yard', secure: world.secure });
}

/** The session of this request, or null. */
export async function sessionOf(c: Context, world: YardWorld): Promise<Session | null> {
  const secret = getCookie(c, COOKIE);
  if (secret === undefined || !SECRET.test(secret)) return null;
  const hash = world.tokens.hashOf(secret);
  const token = await world.store.token(hash, 'session', world.clock.nowMs());
  if (token === null) return null;
  const role = await roleNow(world.store, token.subject, token.data['role']);
  if (role === null) return null;
  const csrf = createHmac('sha256', secret).update('forms of the yard').digest('base64url');
  return { name: token.subject, role, csrf, hash, beganMs: token.expiresMs - LASTS_MS };
}

/** Everything behind it is for those who are signed in; others are told how to get in. */
export function signedIn(world: YardWorld, refuse: (c: Context) => Response | Promise<Response>): MiddlewareHandler {
  return async (c, next) => {
    const session = await sessionOf(c, world);
    if (session === null) return refuse(c);
    c.set('session', session);
    await next();
    return undefined;
  };
}

/** Whether a form was drawn for this very session. */
export function ownForm(session: Session, csrf: string): boolean {
  const sent = Buffer.from(csrf);
  const right = Buffer.from(session.csrf);
  return sent.length === right.length && timingSafeEqual(sent, right);
}
