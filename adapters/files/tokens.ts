import { createHash, randomBytes, randomInt } from 'node:crypto';
import { addDays, CODE_ALPHABET, codeIn, instantOn } from '../../src/index.ts';

const TOKEN_BYTES = 16;
const CODE_LETTERS = 8;

/** A new secret for a link: 128 random bits as 22 letters that need no escaping in an address. Only `hash` is stored. */
export function newToken(): { readonly token: string; readonly hash: string } {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  return { token, hash: hashOf(token) };
}

/** A new code for the wallet, without its dash. One that would not be recognised in a text is drawn again. */
export function newCode(): { readonly code: string; readonly hash: string } {
  for (;;) {
    const letters = Array.from({ length: CODE_LETTERS }, () => CODE_ALPHABET[randomInt(CODE_ALPHABET.length)]);
    const code = letters.join('');
    if (codeIn(code) === code) return { code, hash: hashOf(code) };
  }
}

/** SHA-256 in hex: what is stored of a secret. Unsalted, since it is looked up by its hash. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/**
 * When a chat link ends: at the end of the day after the last day of the hire, by the firm's clock.
 *
 * @param lastDay As 2027-07-31.
 * @param zone    IANA name of the firm's time zone.
 */
export function chatLinkEndsMs(lastDay: string, zone: string): number {
  return instantOn(addDays(lastDay, 2), '00:00', zone);
}
