import { Hono } from 'hono';
import { afterEach, describe, expect, it } from 'vitest';
import { createCounters } from '../../../adapters/http/counters.ts';
import { eventStream } from '../../../adapters/http/event-stream.ts';
import { createServer, ListenError, type RunningServer } from '../../../adapters/http/server.ts';
import { createWakes, type Wakes } from '../../../adapters/http/wakes.ts';

const running: RunningServer[] = [];
afterEach(async () => {
  for (const server of running.splice(0)) await server.stop();
});

function aServer(app = new Hono(), more: { ready?: boolean; secure?: boolean; port?: number; wakes?: Wakes } = {}) {
  const wakes = more.wakes ?? createWakes();
  const counters = createCounters();
  const server = createServer({
    port: more.port ?? 0,
    host: '127.0.0.1',
    routes: [{ path: '/', app }],
    ready: async () => ((more.ready ?? true) ? { ok: true } : { ok: false, why: 'the graph is loading' }),
    counters,
    wakes,
    secure: more.secure ?? false,
    graceMs: 1000,
  });
  running.push(server);
  return { server, wakes, counters };
}

describe('the server', () => {
  it('says that it lives, whether it is ready, and what it has counted', async () => {
    const { server } = aServer(new Hono(), { ready: false });
    const { port } = await server.start();
    const get = (path: string) => fetch(`http://127.0.0.1:${port}${path}`);
    expect((await get('/healthz')).status).toBe(200);
    const ready = await get('/readyz');
    expect(ready.status).toBe(503);
    expect(await ready.text()).toContain('the graph is loading');
    const metrics = await get('/metrics');
    expect(metrics.headers.get('content-type')).toContain('version=0.0.4');
    expect(await metrics.text()).toContain('pitchhand_http_requests_total{method="GET",status="5xx"} 1');
  });

  it('puts safe headers on everything, errors too', async () => {
    const app = new Hono();
    app.get('/broken', () => {
      throw new Error('a secret in a stack');
    });
    const { server } = aServer(app, { secure: true });
    for (const path of ['/healthz', '/nowhere', '/broken']) {
      const answer = await server.app.request(path);
      expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(answer.headers.get('content-security-policy')).not.toContain('unsafe');
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.headers.get('cache-control')).toBe('no-store');
      expect(answer.headers.get('strict-transport-security')).toContain('max-age');
      expect(await answer.text()).not.toContain('secret');
    }
  });

  it('lets requests under way finish when it stops, and takes no new ones', async () => {
    const app = new Hono();
    app.get('/slow', async (c) => {
      await new Promise((resolve) => setTimeout(resolve, 300));
      return c.text('done');
    });
    const { server } = aServer(app);
    const { port } = await server.start();
    const slow = fetch(`http://127.0.0.1:${port}/slow`);
    await new Promise((resolve) => setTimeout(resolve, 50));
    const stopped = server.stop();
    expect(await (await slow).text()).toBe('done');
    await stopped;
    await expect(fetch(`http://127.0.0.1:${port}/slow`)).rejects.toThrow();
  });

  it('ends event streams when it stops', async () => {
    const app = new Hono();
    const wakes = createWakes();
    let looks = 0;
    app.get('/events', (c) =>
      eventStream(c, wakes, 'x', async () => {
        looks += 1;
        return [{ event: 'look', data: String(looks), id: String(looks) }];
      }),
    );
    const { server } = aServer(app, { wakes });
    const { port } = await server.start();
    const stream = await fetch(`http://127.0.0.1:${port}/events`);
    const body = stream.text();
    await new Promise((resolve) => setTimeout(resolve, 50));
    wakes.wake('x');
    await new Promise((resolve) => setTimeout(resolve, 50));
    await server.stop();
    const text = await body;
    expect(text).toContain('event: look\ndata: 1\nid: 1');
    expect(text).toContain('event: look\ndata: 2\nid: 2');
    expect(wakes.size()).toBe(0);
  });

  it('asks one page more than it can hold open to come back', async () => {
    const app = new Hono();
    const wakes = createWakes();
    for (let i = 0; i < 2000; i++) wakes.join(`page ${i}`);
    app.get('/events', (c) => eventStream(c, wakes, 'x', async () => []));
    const { server } = aServer(app, { wakes });
    expect((await server.app.request('/events')).status).toBe(503);
  });

  it('says in words that a port is taken', async () => {
    const first = aServer();
    const { port } = await first.server.start();
    await expect(aServer(new Hono(), { port }).server.start()).rejects.toThrow(ListenError);
  });
});
