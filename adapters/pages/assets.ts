import { createHash } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import type { Hono } from 'hono';

/** A style sheet or script under a name that holds its hash, so that browsers may keep it for ever. */
export type Asset = { readonly file: string; readonly type: string; readonly body: string };

const TYPES = { css: 'text/css; charset=utf-8', js: 'text/javascript; charset=utf-8', svg: 'image/svg+xml' } as const;

export function asset(name: string, ending: keyof typeof TYPES, body: string): Asset {
  const hash = createHash('sha256').update(body).digest('hex').slice(0, 10);
  return { file: `${name}-${hash}.${ending}`, type: TYPES[ending], body };
}

/**
 * Serves them under `-/`, a name that no token and no thread can have. They go packed to browsers that can unpack, a quarter
 * of the size; pages do not, for they hold secrets beside a hirer's words, and the packed size would tell of both.
 */
export function serveAssets(app: Hono, assets: readonly Asset[]): void {
  for (const { file, type, body } of assets) {
    const headers = {
      'Content-Type': type,
      'Cache-Control': 'public, max-age=31536000, immutable',
      Vary: 'Accept-Encoding',
    };
    let packed: Uint8Array<ArrayBuffer> | null = null;
    app.get(`/-/${file}`, (c) => {
      if (!/\bgzip\b/.test(c.req.header('accept-encoding') ?? '')) return c.body(body, 200, headers);
      packed ??= new Uint8Array(gzipSync(body));
      return c.body(packed, 200, { ...headers, 'Content-Encoding': 'gzip' });
    });
  }
}
