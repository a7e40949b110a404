import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { MINUTE_MS } from '../../src/index.ts';

const GOOD_FOR_MS = 5 * MINUTE_MS;
const HEAD_BYTES = 24;

/**
 * Questions that a passkey signs. A question carries its own end and seal, so asking keeps nothing and cannot be made to
 * fill memory; only one that was answered rightly is remembered, until it would end anyway. A restart ends them all.
 */
export type Challenges = {
  /** @param purpose What the answer may be used for; an answer for another purpose is refused. */
  readonly ask: (purpose: string, nowMs: number) => Uint8Array<ArrayBuffer>;
  /** Whether it is ours, for this purpose, not too old and not answered yet. Base64url, as the browser sends it back. */
  readonly stands: (challenge: string, purpose: string, nowMs: number) => boolean;
  /** True for the first that comes with it, false for every later one. */
  readonly spend: (challenge: string, nowMs: number) => boolean;
};

export function createChallenges(): Challenges {
  const secret = randomBytes(32);
  const spent = new Map<string, number>();
  const sealOf = (head: Buffer, purpose: string): Buffer =>
    createHmac('sha256', secret).update(head).update(purpose).digest();
  const endOf = (challenge: string): number => Number(Buffer.from(challenge, 'base64url').readBigUInt64BE(0));

  return {
    ask: (purpose, nowMs) => {
      const head = randomBytes(HEAD_BYTES);
      head.writeBigUInt64BE(BigInt(nowMs + GOOD_FOR_MS), 0);
      return new Uint8Array([...head, ...sealOf(head, purpose)]);
    },
    stands: (challenge, purpose, nowMs) => {
      const bytes = Buffer.from(challenge, 'base64url');
      const head = bytes.subarray(0, HEAD_BYTES);
      const seal = bytes.subarray(HEAD_BYTES);
      const right = sealOf(head, purpose);
      if (seal.length !== right.length || !timingSafeEqual(seal, right)) return false;
      return endOf(challenge) > nowMs && !spent.has(seal.toString('hex'));
    },
    spend: (challenge, nowMs) => {
      for (const [seal, endMs] of spent) if (endMs <= nowMs) spent.delete(seal);
      const seal = Buffer.from(challenge, 'base64url').subarray(HEAD_BYTES).toString('hex');
      if (spent.has(seal)) return false;
      spent.set(seal, endOf(challenge));
      return true;
    },
  };
}
