import type { CDPSession } from 'playwright-core';
import { bench, describe } from 'vitest';
import { openBrowser } from '../helpers/browser.ts';
import { aBooking, chatWorld, NOW_MS } from '../helpers/pages-world.ts';

/*
 * First paint on a slow phone, and how soon an open field shows who begins to wait. The profile: a processor four times
 * as slow, 1.6 Mbit/s, 150 ms there and back. Aims: paint under 1 s, the field within 1 s.
 */
const browser = await openBrowser();
const world = await chatWorld();
const link = await world.link(aBooking());
const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
const page = await context.newPage();
const thread = await world.passed({ booking: 'BR-2702', van: 'dunlin' });
await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Dilys')}`);
await page.click('button');
await slowDown(await context.newCDPSession(page));

describe('the pages on a slow phone', () => {
  const options = { time: 0, iterations: 5, warmupTime: 0, warmupIterations: 1 };
  bench('the field, from its address to its first paint', () => firstPaint(`${world.origin}/yard`), options);
  bench('the list', () => firstPaint(`${world.origin}/yard/list`), options);
  bench('a thread', () => firstPaint(`${world.origin}/yard/thread/${thread.id}`), options);
  bench('the list to print', () => firstPaint(`${world.origin}/yard/turnaround`), options);
  bench('the chat page', () => firstPaint(`${world.origin}/chat/${link}`), options);
  bench(
    'an open field, from a pass to its flag',
    async () => {
      const flags = await page.locator('.spot.waiting').count();
      await world.passed({ sinceMs: NOW_MS });
      await page.waitForFunction((before) => document.querySelectorAll('.spot.waiting').length > before, flags);
    },
    {
      ...options,
      setup: async () => {
        await page.goto(`${world.origin}/yard`);
      },
      teardown: async (_task, mode) => {
        if (mode !== 'run') return;
        await browser.close();
        await world.stop();
      },
    },
  );
});

async function slowDown(driver: CDPSession): Promise<void> {
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await driver.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 150,
    downloadThroughput: 200_000,
    uploadThroughput: 94_000,
  });
}

async function firstPaint(url: string): Promise<void> {
  await page.goto(url, { waitUntil: 'commit' });
  await page.waitForFunction(() => performance.getEntriesByName('first-contentful-paint').length > 0, undefined, {
    polling: 5,
  });
}
