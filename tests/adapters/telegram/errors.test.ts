import { GrammyError, HttpError } from 'grammy';
import { describe, expect, it } from 'vitest';
import { ChannelError, receiptOf, toChannelError } from '../../../adapters/telegram/errors.ts';

const refused = (error_code: number, description: string, parameters = {}) =>
  new GrammyError(
    "Call to 'sendMessage' failed!",
    { ok: false, error_code, description, parameters },
    'sendMessage',
    {},
  );

describe('a failed call', () => {
  it('keeps the original as its cause and the time to wait', () => {
    const original = refused(429, 'Too Many Requests: retry after 9', { retry_after: 9 });
    expect(toChannelError(original)).toMatchObject({ failure: 'busy', retryAfterMs: 9000, cause: original, code: 429 });
  });

  it('knows where a group has moved', () => {
    expect(
      toChannelError(refused(400, 'Bad Request: group chat was upgraded', { migrate_to_chat_id: -1009 })),
    ).toMatchObject({ failure: 'moved', movedTo: -1009 });
  });

  it('never shows the token that a network error carries in its address', () => {
    const inner = Object.assign(new Error('request to https://api.telegram.org/bot123:AbC-d_e/sendMessage failed'), {
      code: 'ECONNRESET',
    });
    const error = toChannelError(new HttpError('failed', inner));
    expect(error.failure).toBe('hidden');
    expect(`${error.message} ${error.cause} ${(error.cause as Error).stack}`).not.toContain('AbC-d_e');
  });

  it('tells what was certainly not sent from what may have been', () => {
    const network = (code: string) => toChannelError(new HttpError('failed', Object.assign(new Error('x'), { code })));
    for (const code of ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN']) expect(receiptOf(network(code)).kind).toBe('later');
    for (const code of ['ECONNRESET', 'EPIPE', 'ETIMEDOUT']) expect(receiptOf(network(code)).kind).toBe('unknown');
  });

  it('leaves bugs alone', () => {
    expect(() => toChannelError(new TypeError('bug'))).toThrow(TypeError);
    const own = new ChannelError('gone', 'x', { cause: null });
    expect(toChannelError(own)).toBe(own);
  });
});
