import type { MiddlewareHandler } from 'hono';

/*
 * Nothing comes from anywhere but this server, nothing inline runs, no page may be framed. Styles and scripts are
 * files with their hash in the name, so that no 'unsafe-inline' is needed; blob: lets a chosen photo be shown before
 * it is sent, data: the pages' own small drawings.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  // The address of a chat page holds its token: no other server may learn it. Our own needs the origin, to know its forms.
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
};

/** Safe headers on every response; one that a route has set itself stands. `secure`: the firm's address is https. */
export function safeHeaders(secure: boolean): MiddlewareHandler {
  return async (c, next) => {
    await next();
    for (const [name, value] of Object.entries(HEADERS)) if (!c.res.headers.has(name)) c.res.headers.set(name, value);
    if (secure) c.res.headers.set('Strict-Transport-Security', 'max-age=31536000');
    // Threads and links are nobody else's: no cache keeps a page unless its route says otherwise.
    if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-store');
  };
}
