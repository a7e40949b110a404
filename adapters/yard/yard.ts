import type { Hono } from 'hono';
import { yardRoutes } from './routes.tsx';
import { YARD, type YardWorld } from './world.ts';

/** The staff's pages. Call `changed` whenever a thread has: open pages then look again. */
export function createYard(world: YardWorld): { readonly routes: Hono; readonly changed: () => void } {
  return { routes: yardRoutes(world), changed: () => world.wakes.wake(YARD) };
}
