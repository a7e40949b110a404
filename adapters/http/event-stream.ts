import type { Context } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import type { Wakes } from './wakes.ts';

const BEAT_MS = 20_000;
/** Past this, browsers are asked to come back: each open stream costs a socket and a read now and then. */
const MOST_STREAMS = 2000;

/** What one look at the world found to tell: nothing at all is the usual case. */
export type Told = readonly { readonly event: string; readonly data: string; readonly id?: string }[];

/**
 * An event stream that looks once at once, then whenever it is woken, and in any case every 20 seconds, so that a
 * missed wake heals itself and proxies see the line in use.
 *
 * @param name The {@link Wakes} name to sleep under.
 * @param look Reads the world; called one at a time. When it throws, the stream ends and the browser comes back.
 */
export function eventStream(c: Context, wakes: Wakes, name: string, look: () => Promise<Told>): Response {
  if (wakes.size() >= MOST_STREAMS) return c.text('Many pages are open at once. This one comes back by itself.\n', 503);
  c.header('X-Accel-Buffering', 'no');
  return streamSSE(
    c,
    async (stream) => {
      // Joined before the first look: what changes in between is not missed.
      const bell = wakes.join(name);
      stream.onAbort(bell.leave);
      try {
        await stream.write('retry: 2000\n\n');
        while (!stream.aborted && !wakes.closed()) {
          await tell(stream, await look());
          const how = await bell.wait(BEAT_MS);
          if (how === 'slept') await stream.write(': still here\n\n');
        }
      } finally {
        bell.leave();
      }
    },
    async () => undefined,
  );
}

async function tell(stream: SSEStreamingApi, told: Told): Promise<void> {
  for (const one of told) await stream.writeSSE(one);
}
