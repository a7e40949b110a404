import { createHash } from 'node:crypto';
import type { Hono } from 'hono';

/** A style sheet or script under a name that holds its hash, so that browsers may keep it for ever. */
export type Asset = { readonly file: string; readonly type: string; readonly body: string };

const TYPES = { css: 'text/css; charset=utf-8', js: 'text/javascript; charset=utf-8', svg: 'image/svg+xml' } as const;

export function asset(name: string, ending: keyof typeof TYPES, body: string): Asset {
  const hash = createHash('sha256').update(body).digest('hex').slice(0, 10);
  return { file: `${name}-${hash}.${ending}`, type: TYPES[ending], body };
}

/** Serves them under `-/`, a name that no token and no thread can have. */
export function serveAssets(app: Hono, assets: readonly Asset[]): void {
  for (const { file, type, body } of assets) {
    app.get(`/-/${file}`, (c) =>
      c.body(body, 200, { 'Content-Type': type, 'Cache-Control': 'public, max-age=31536000, immutable' }),
    );
  }
}
