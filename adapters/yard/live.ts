import type { Context } from 'hono';
import { eventStream } from '../http/event-stream.ts';
import { sessionOf } from './session.ts';
import { YARD, type YardWorld } from './world.ts';

/**
 * A page's moving part, sent whole when it differs from what was sent before; null sends nothing. Whoever is signed out
 * meanwhile, here or by an operator, is shown no more: the stream ends with the session.
 */
export function live(c: Context, world: YardWorld, draw: () => Promise<string | null>): Response {
  let last = '';
  return eventStream(c, world.wakes, YARD, async () => {
    if ((await sessionOf(c, world)) === null) throw new Error('the session has ended');
    const now = await draw();
    if (now === null || now === last) return [];
    last = now;
    return [{ event: 'live', data: now }];
  });
}
