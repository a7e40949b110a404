import { gunzipSync } from 'node:zlib';
import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { asset, serveAssets } from '../../../adapters/pages/assets.ts';

const style = asset('yard', 'css', '.strip{border:2px solid}'.repeat(200));
const app = new Hono();
serveAssets(app, [style]);
const get = (headers: Record<string, string> = {}) => app.request(`/-/${style.file}`, { headers });

describe('style sheets and scripts', () => {
  it('go as they are to whoever cannot unpack', async () => {
    const answer = await get();
    expect(answer.headers.get('content-encoding')).toBeNull();
    expect(await answer.text()).toBe(style.body);
  });

  it('go packed to browsers, and are the same unpacked', async () => {
    const answer = await get({ 'accept-encoding': 'gzip, deflate, br' });
    expect(answer.headers.get('content-encoding')).toBe('gzip');
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(bytes.length).toBeLessThan(style.body.length / 4);
    expect(gunzipSync(bytes).toString()).toBe(style.body);
  });

  it('may be kept for ever, apart for both kinds of browser', async () => {
    for (const answer of [await get(), await get({ 'accept-encoding': 'gzip' })]) {
      expect(answer.headers.get('cache-control')).toContain('immutable');
      expect(answer.headers.get('vary')).toBe('Accept-Encoding');
    }
  });
});
