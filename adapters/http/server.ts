import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import { Hono } from 'hono';
import type { Counters } from './counters.ts';
import { safeHeaders } from './headers.ts';
import type { Wakes } from './wakes.ts';

export type ServerOptions = {
  /** 0: the system chooses one that is free. */
  readonly port: number;
  readonly host: string;
  /** Mounted in order. Each brings its own checks of who may call it. */
  readonly routes: readonly { readonly path: string; readonly app: Hono }[];
  /** Whether messages can be taken now, and if not, what is missing. */
  readonly ready: () => Promise<{ readonly ok: boolean; readonly why?: string }>;
  readonly counters: Counters;
  /** Event streams end when the server stops. */
  readonly wakes: Wakes;
  /** True when hirers reach us over https. */
  readonly secure?: boolean;
  /** How long `stop` waits for requests that are under way, in milliseconds. Default 5,000. */
  readonly graceMs?: number;
  readonly log?: (what: string, about: Readonly<Record<string, unknown>>) => void;
};

export type RunningServer = {
  /** Rejects with {@link ListenError} when the port cannot be had. */
  readonly start: () => Promise<{ readonly port: number }>;
  /** Takes no new requests, ends event streams, lets requests under way finish, then resolves. */
  readonly stop: () => Promise<void>;
  /** For tests and for callers in the same process. */
  readonly app: Hono;
};

export class ListenError extends Error {
  override readonly name = 'ListenError';
}

/** Puts health, readiness, metrics and the given routes behind one port, with safe headers on everything. */
export function createServer(options: ServerOptions): RunningServer {
  const { graceMs = 5000, secure = false, log = () => undefined } = options;
  const app = createApp(options, secure, log);
  let server: Server | null = null;

  return {
    app,
    start: () =>
      new Promise((resolve, reject) => {
        const made = createAdaptorServer({ fetch: app.fetch, hostname: options.host, port: options.port }) as Server;
        // Slow senders hold no socket for ever; a photo over a weak signal still has five minutes.
        made.headersTimeout = 20_000;
        made.requestTimeout = 300_000;
        made.once('error', (error) => {
          reject(
            new ListenError(`cannot listen on ${options.host}:${options.port}: ${error.message}`, { cause: error }),
          );
        });
        made.listen(options.port, options.host, () => {
          server = made;
          resolve({ port: (made.address() as AddressInfo).port });
        });
      }),
    stop: async () => {
      options.wakes.close();
      const running = server;
      server = null;
      if (running === null) return;
      const ended = new Promise<void>((resolve) => running.close(() => resolve()));
      running.closeIdleConnections();
      // A connection that falls idle while we wait is kept open by the client; it is told to go as well.
      const sweep = setInterval(() => running.closeIdleConnections(), 50);
      const cut = setTimeout(() => running.closeAllConnections(), graceMs);
      await ended;
      clearInterval(sweep);
      clearTimeout(cut);
    },
  };
}

function createApp(options: ServerOptions, secure: boolean, log: NonNullable<ServerOptions['log']>): Hono {
  const { counters, wakes } = options;
  const app = new Hono();
  counters.describe('pitchhand_http_requests_total', 'Requests answered, by method and class of status');
  counters.gauge('pitchhand_event_streams', 'Event streams open now', wakes.size);

  app.use(safeHeaders(secure));
  app.use(async (c, next) => {
    await next();
    counters.count('pitchhand_http_requests_total', {
      method: c.req.method,
      status: `${Math.floor(c.res.status / 100)}xx`,
    });
  });
  app.get('/healthz', (c) => c.text('alive\n'));
  app.get('/readyz', async (c) => {
    const state = wakes.closed() ? { ok: false, why: 'stopping' } : await options.ready();
    return state.ok ? c.text('ready\n') : c.text(`not ready: ${state.why ?? 'no reason given'}\n`, 503);
  });
  app.get('/metrics', (c) =>
    c.text(counters.text(), 200, { 'Content-Type': 'text/plain; version=0.0.4; charset=utf-8' }),
  );
  for (const { path, app: route } of options.routes) app.route(path, route);

  app.notFound((c) => c.text('There is no page at this address. The chat is at /chat, the yard at /yard.\n', 404));
  app.onError((error, c) => {
    log('a request failed', { method: c.req.method, error });
    return c.text(
      'Something broke on our side and nothing was sent. Try once more; if it stays so, ring the office.\n',
      500,
    );
  });
  return app;
}
