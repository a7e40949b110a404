import { expect, test } from 'vitest';
import { chatLinkEndsMs, hashOf, newCode, newToken } from '../../../adapters/files/tokens.ts';
import { codeIn, linkTokenIn } from '../../../src/index.ts';

test('a token is 128 bits, fits a link and is stored as its hash', () => {
  const { token, hash } = newToken();
  expect(Buffer.from(token, 'base64url')).toHaveLength(16);
  // What Telegram lets pass in a start link: https://core.telegram.org/bots/features#deep-linking
  expect(token).toMatch(/^[A-Za-z0-9_-]{1,64}$/);
  expect(linkTokenIn(`https://example.org/chat/${token}`)).toBe(token);
  expect(hash).toBe(hashOf(token));
  expect(hash).not.toContain(token);
});

test('no two tokens and no two codes are alike', () => {
  expect(new Set(Array.from({ length: 1_000 }, () => newToken().token)).size).toBe(1_000);
  expect(new Set(Array.from({ length: 1_000 }, () => newCode().code)).size).toBe(1_000);
});

test('the hash is SHA-256', () => {
  // FIPS 180-2, appendix B.1: the one-block message 'abc'.
  expect(hashOf('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('every code is recognised in a text', () => {
  for (let i = 0; i < 1_000; i++) {
    const { code, hash } = newCode();
    expect(codeIn(`my code is ${code.toLowerCase()}`)).toBe(code);
    expect(hash).toBe(hashOf(code));
  }
});

test('a chat link lasts until the end of the day after the hire, by the clock at the firm', () => {
  expect(chatLinkEndsMs('2027-07-31', 'Europe/London')).toBe(Date.parse('2027-08-02T00:00:00+01:00'));
  expect(chatLinkEndsMs('2027-12-30', 'Europe/London')).toBe(Date.parse('2028-01-01T00:00:00Z'));
  // The clocks go back on 31 October 2027.
  expect(chatLinkEndsMs('2027-10-30', 'Europe/London')).toBe(Date.parse('2027-11-01T00:00:00Z'));
});
