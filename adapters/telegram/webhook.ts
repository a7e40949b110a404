import { createHash, timingSafeEqual } from 'node:crypto';
import type { Inbox } from './inbox.ts';
import type { Log } from './log.ts';

/** https://core.telegram.org/bots/api#setwebhook, secret_token. */
export const SECRET_HEADER = 'x-telegram-bot-api-secret-token';
export const SECRET_PATTERN = /^[A-Za-z0-9_-]{1,256}$/;

/** Updates are a few kilobytes; this leaves room and keeps strangers from filling the memory. */
const MOST_BYTES = 1_000_000;

/**
 * Answers POST /telegram: 200 only after the update is stored, so that Telegram keeps and repeats what we did not take.
 * 401 without the secret, 400 for what is no update, 413 for too much, 500 when storing failed.
 */
export function createWebhook(secret: string, inbox: Inbox, log: Log): (request: Request) => Promise<Response> {
  return async function webhook(request) {
    if (!sameSecret(request.headers.get(SECRET_HEADER) ?? '', secret))
      return new Response('unauthorised', { status: 401 });
    const body = await bodyOf(request);
    if (body === null) return new Response('too large', { status: 413 });
    const update = updateIn(body);
    if (update === null) return new Response('not an update', { status: 400 });
    try {
      await inbox(update);
      return new Response('stored', { status: 200 });
    } catch (error) {
      log.error({ why: String(error) }, 'an update could not be stored: Telegram will send it again');
      return new Response('not stored', { status: 500 });
    }
  };
}

/** Takes the same time wherever the two differ, and however long they are: digests are compared. */
function sameSecret(given: string, secret: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(secret));
}

async function bodyOf(request: Request): Promise<string | null> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) return null;
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of request.body ?? []) {
    bytes += chunk.length;
    if (bytes > MOST_BYTES) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

/** An object with an update id; what else is in it the inbox judges, as repeating would not make it readable. */
function updateIn(body: string): object | null {
  try {
    const value: unknown = JSON.parse(body);
    if (typeof value !== 'object' || value === null || !('update_id' in value)) return null;
    return Number.isSafeInteger(value.update_id) ? value : null;
  } catch {
    return null;
  }
}
