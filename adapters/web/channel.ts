import type { Hono } from 'hono';
import type { Channel } from '../../src/index.ts';
import { webRoutes } from './routes.tsx';
import { CHANNEL } from './visitor.ts';
import type { WebWorld } from './world.ts';

/**
 * The chat page as a channel. What is said is read from the store by the page itself, so delivering is waking those
 * who look; a hirer whose page is closed finds it there when they come back.
 */
export function createWebChannel(world: WebWorld): { readonly channel: Channel; readonly routes: Hono } {
  let delivered = 0;
  return {
    routes: webRoutes(world),
    channel: {
      name: CHANNEL,
      abilities: { buttons: true, pictures: true, edits: false, media: true, longest: Number.POSITIVE_INFINITY },
      start: async () => undefined,
      stop: async () => undefined,
      deliver: async (_reply, to) => {
        world.wakes.wake(to.address);
        delivered += 1;
        return { kind: 'delivered', id: `page-${delivered}` };
      },
    },
  };
}
