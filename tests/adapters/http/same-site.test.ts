import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { sameSiteOnly } from '../../../adapters/http/same-site.ts';

const app = new Hono();
app.use(sameSiteOnly);
app.all('/', (c) => c.text('through'));
const send = async (headers: Record<string, string>, method = 'POST') =>
  (await app.request('http://yard.test/', { method, headers })).status;

describe('forms from elsewhere', () => {
  it('are refused by what the browser says of their origin', async () => {
    expect(await send({ 'sec-fetch-site': 'cross-site' })).toBe(403);
    expect(await send({ 'sec-fetch-site': 'same-site' })).toBe(403);
    expect(await send({ origin: 'http://evil.test', host: 'yard.test' })).toBe(403);
    expect(await send({ origin: 'null', host: 'yard.test' })).toBe(403);
  });

  it('pass when they are our own, when a person typed the address, or from a client without cookies', async () => {
    expect(await send({ 'sec-fetch-site': 'same-origin' })).toBe(200);
    expect(await send({ 'sec-fetch-site': 'none' })).toBe(200);
    expect(await send({ origin: 'https://yard.test', host: 'yard.test' })).toBe(200);
    expect(await send({})).toBe(200);
  });

  it('do not concern pages that are only read', async () => {
    expect(await send({ 'sec-fetch-site': 'cross-site' }, 'GET')).toBe(200);
  });
});
