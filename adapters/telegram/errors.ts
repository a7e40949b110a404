import { GrammyError, HttpError } from 'grammy';
import type { Receipt } from '../../src/index.ts';

/**
 * How a call to Telegram failed.
 * - `gone`: this chat will never take another message from us (blocked, deleted, thrown out).
 * - `moved`: a group became a supergroup; `movedTo` is its new chat id.
 * - `busy`: too many messages; wait `retryAfterMs`.
 * - `unready`: it was certainly not carried out (no connection, their failure, a token they do not know).
 * - `refused`: they read it and said no; the same call will be refused again.
 * - `hidden`: the connection broke after sending: it may have been carried out.
 */
export type Failure = 'gone' | 'moved' | 'busy' | 'unready' | 'refused' | 'hidden';

export class ChannelError extends Error {
  readonly failure: Failure;
  readonly retryAfterMs: number | null;
  readonly movedTo: number | null;
  /** Telegram's own code, such as 400; null when they did not answer. */
  readonly code: number | null;

  constructor(
    failure: Failure,
    why: string,
    details: { cause: unknown; retryAfterMs?: number; movedTo?: number; code?: number },
  ) {
    super(why, { cause: details.cause });
    this.name = 'ChannelError';
    this.failure = failure;
    this.retryAfterMs = details.retryAfterMs ?? null;
    this.movedTo = details.movedTo ?? null;
    this.code = details.code ?? null;
  }
}

const SOON_MS = 3_000;
const MUCH_LATER_MS = 60_000;

/** Refusals that are about the chat itself, not about what was sent. */
const GONE =
  /chat not found|user is deactivated|user not found|PEER_ID_INVALID|bot can't initiate conversation|group chat was deactivated|chat was deleted/i;
/** Failures to connect: nothing left this machine. */
const NOT_CONNECTED = new Set([
  'ECONNREFUSED',
  'UND_ERR_CONNECT_TIMEOUT',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ENETUNREACH',
  'EHOSTUNREACH',
  'ENETDOWN',
  'CERT_HAS_EXPIRED',
  'DEPTH_ZERO_SELF_SIGNED_CERT',
]);

/** Any thrown value of the framework as one of our failures. A ChannelError stays itself. */
export function toChannelError(thrown: unknown): ChannelError {
  if (thrown instanceof ChannelError) return thrown;
  if (thrown instanceof GrammyError) return fromAnswer(thrown);
  if (thrown instanceof HttpError) return fromNetwork(thrown);
  throw thrown;
}

function fromAnswer(error: GrammyError): ChannelError {
  const { error_code: code, description, parameters } = error;
  const why = `${error.method}: ${description}`;
  const details = { cause: error, code };
  if (parameters.migrate_to_chat_id !== undefined)
    return new ChannelError('moved', why, { ...details, movedTo: parameters.migrate_to_chat_id });
  if (code === 429)
    return new ChannelError('busy', why, { ...details, retryAfterMs: (parameters.retry_after ?? 1) * 1000 });
  if (code === 403 || (code === 400 && GONE.test(description))) return new ChannelError('gone', why, details);
  if (code === 502 || code === 504) return new ChannelError('hidden', why, details);
  if (code >= 500) return new ChannelError('unready', why, { ...details, retryAfterMs: SOON_MS });
  if (code === 401 || code === 404 || code === 409)
    return new ChannelError('unready', why, { ...details, retryAfterMs: MUCH_LATER_MS });
  return new ChannelError('refused', why, details);
}

function fromNetwork(error: HttpError): ChannelError {
  const inner = error.error as { code?: string; message?: string; cause?: { code?: string } };
  const cause = new Error(withoutToken(inner.message ?? String(error.error)));
  const code = inner.cause?.code ?? inner.code ?? 'no answer';
  if (NOT_CONNECTED.has(code))
    return new ChannelError('unready', `not connected: ${code}`, { cause, retryAfterMs: SOON_MS });
  return new ChannelError('hidden', `connection broke: ${code}`, { cause });
}

/** Network errors carry the address they were for, and the address holds the token. */
function withoutToken(text: string): string {
  return text.replace(/bot\d+:[\w-]+/g, 'bot<token>');
}

/** Why something failed, for the log of a loop that must go on whatever it was; never with the token in it. */
export function inWords(thrown: unknown): { readonly why: string; readonly retryAfterMs: number | null } {
  try {
    const error = toChannelError(thrown);
    return {
      why: `${error.failure}: ${error.message}`,
      retryAfterMs: error.failure === 'busy' ? error.retryAfterMs : null,
    };
  } catch {
    return { why: withoutToken(String(thrown)), retryAfterMs: null };
  }
}

export function receiptOf(error: ChannelError): Receipt {
  const why = error.message;
  switch (error.failure) {
    case 'gone':
      return { kind: 'gone', why };
    case 'busy':
    case 'unready':
      return { kind: 'later', afterMs: error.retryAfterMs ?? SOON_MS, why };
    case 'moved':
      return { kind: 'gone', why };
    case 'refused':
    case 'hidden':
      return { kind: 'unknown', why };
  }
}
