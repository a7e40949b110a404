import { randomBytes } from 'node:crypto';

/** 96 random bits for a form: sent again with the same key it is the same form. */
export function freshKey(): string {
  return randomBytes(12).toString('base64url');
}
