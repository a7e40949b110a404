import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { openBrowser } from './browser.ts';
import type { PagesWorld } from './pages-world.ts';

/** One browser for the tests of a `describe`, inside which it is called. What a test opens is closed after it. */
export function inBrowser() {
  let browser: Browser;
  const worlds: PagesWorld[] = [];
  const contexts: BrowserContext[] = [];
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
    for (const world of worlds.splice(0)) await world.stop();
  });
  afterAll(() => browser.close());
  return {
    /** Stopped after the test. */
    keep: (world: PagesWorld): PagesWorld => {
      worlds.push(world);
      return world;
    },
    newContext: async (options: BrowserContextOptions): Promise<BrowserContext> => {
      const context = await browser.newContext(options);
      contexts.push(context);
      return context;
    },
  };
}
