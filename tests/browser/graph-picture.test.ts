import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seriousFaults } from '../helpers/axe.ts';
import { openBrowser, shootAtEveryWidth } from '../helpers/browser.ts';
import type { PagesWorld } from '../helpers/pages-world.ts';
import { pictureWorld } from '../helpers/picture-world.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

const MOST_BYTES = 100_000;

describe('the picture of the graph in a browser', () => {
  let browser: Browser;
  let world: PagesWorld;
  beforeAll(async () => {
    browser = await openBrowser();
    world = await pictureWorld(realKnowledge());
  });
  afterAll(async () => {
    await browser.close();
    await world.stop();
  });

  async function signedIn(options: BrowserContextOptions = {}): Promise<Page> {
    const page = await (await browser.newContext(options)).newPage();
    await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Nessa', 'operator')}`);
    await page.click('button');
    await page.waitForSelector('.at-day');
    return page;
  }
  const drawn = (page: Page) => page.waitForSelector('#picture[data-ready]');

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has no serious fault, never scrolls sideways and breaks no rule of the policy, ${colorScheme}`, async () => {
      const page = await signedIn({ colorScheme });
      const complaints: string[] = [];
      page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
      page.on('pageerror', (error) => complaints.push(error.message));
      for (const [name, path] of [
        ['graph', ''],
        ['graph-wren-failed', '?van=wren&heat=failed'],
        ['graph-part', '/part/water-pump?van=wren'],
        ['graph-topic', '/topic/water-none'],
      ] as const) {
        for (const width of [360, 1280]) {
          await page.setViewportSize({ width, height: 800 });
          await page.goto(`${world.origin}/yard/growth/graph${path}`);
          if (!path.startsWith('/')) await drawn(page);
          await page.screenshot({
            path: `tests/browser/shots/growth-${name}-first-${width}-${colorScheme}.png`,
            fullPage: true,
          });
          expect(await seriousFaults(page), name).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        }
        await shootAtEveryWidth(page, `growth-${name}`, colorScheme);
      }
      expect(complaints).toEqual([]);
      await page.context().close();
    });
  }

  it('opens the part that is touched, with its controls, faults and wordings', async () => {
    const page = await signedIn({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${world.origin}/yard/growth/graph?van=wren`);
    await drawn(page);
    await touch(page, 'part:water-pump');
    await page.waitForSelector('#thing h2');
    const words = await page.textContent('#thing');
    for (const part of ['in Wren', 'Controls', 'What goes wrong', 'of asking']) expect(words).toContain(part);
    await page.context().close();
  });

  it('keeps its rooms under its discs when the window grows taller or shorter', async () => {
    const page = await signedIn({ viewport: { width: 1000, height: 900 } });
    await page.goto(`${world.origin}/yard/growth/graph`);
    await drawn(page);
    for (const height of [600, 760]) {
      await page.setViewportSize({ width: 1000, height });
      // Drawn dots a pixel of its own size: a canvas that is stretched shows the rooms elsewhere.
      const stretched = () =>
        page.evaluate(() => {
          const rooms = document.querySelector<HTMLCanvasElement>('#picture .sigma-rooms');
          const box = rooms?.getBoundingClientRect() ?? { height: 1 };
          return (rooms?.height ?? 0) / box.height / window.devicePixelRatio;
        });
      await expect.poll(stretched).toBeCloseTo(1, 2);
      const frame = await page.evaluate(() => document.getElementById('picture')?.offsetHeight);
      expect(frame).toBe(Math.round(height * 0.72));
    }
    await page.context().close();
  });

  it('stands still between visits and between vans', async () => {
    const page = await signedIn();
    const places = async (query: string) => {
      const data = await page.evaluate(
        async (path) => (await (await fetch(path)).json()) as { things: { key: string; x: number; y: number }[] },
        `/yard/growth/graph/data${query}`,
      );
      return data.things.map(({ key, x, y }) => [key, x, y]);
    };
    await page.goto(`${world.origin}/yard/growth/graph`);
    const first = await places('');
    expect(first.length).toBeGreaterThan(300);
    expect(await places('')).toEqual(first);
    expect(await places('?van=godwit&heat=failed')).toEqual(first);
    await page.context().close();
  });

  it('is a list with the same links where nothing can be drawn', async () => {
    const page = await signedIn({ javaScriptEnabled: false });
    await page.goto(`${world.origin}/yard/growth/graph?van=wren`);
    expect(await page.isVisible('#picture')).toBe(false);
    await page.click('summary:text-matches("^Water:")');
    await page.click('.things a:has-text("water pump")');
    expect(await page.textContent('h1')).toContain('Water pump');
    await page.context().close();
  });

  it('shows the list alone where the device has no WebGL', async () => {
    const page = await signedIn();
    await page.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    await page.goto(`${world.origin}/yard/growth/graph`);
    await page.waitForLoadState('networkidle');
    expect(await page.isVisible('#picture')).toBe(false);
    expect(await page.isVisible('button[data-camera]')).toBe(false);
    await page.context().close();
  });

  it('costs no other page anything, and each page is light with all that it fetches', async () => {
    const page = await signedIn({ viewport: { width: 360, height: 740 } });
    const [part] = [...realKnowledge().parts.keys()];
    for (const path of ['', '/thin', '/figures', '/faults', '/drawings', '/drawings/hob', `/graph/part/${part}`]) {
      const fetched = await fetchedBy(page, `${world.origin}/yard/growth${path}`);
      expect(fetched.urls.some((url) => url.includes('/-/graph-'))).toBe(false);
      expect(fetched.bytes, path).toBeLessThan(MOST_BYTES);
    }
    const picture = await fetchedBy(page, `${world.origin}/yard/growth/graph`);
    expect(picture.urls.some((url) => url.includes('/-/graph-'))).toBe(true);
    expect(picture.urls.some((url) => url.endsWith('/graph/data'))).toBe(true);
    expect(picture.bytes).toBeLessThan(MOST_BYTES);
    await page.context().close();
  });
});

/** What a page fetches by itself, with nothing kept from before: addresses, and bytes as they cross the network. */
async function fetchedBy(
  page: Page,
  url: string,
): Promise<{ readonly urls: readonly string[]; readonly bytes: number }> {
  const driver = await page.context().newCDPSession(page);
  await driver.send('Network.enable');
  await driver.send('Network.setCacheDisabled', { cacheDisabled: true });
  const urls: string[] = [];
  let bytes = 0;
  driver.on('Network.requestWillBeSent', ({ request }) => void urls.push(request.url));
  driver.on('Network.loadingFinished', ({ encodedDataLength }) => (bytes += encodedDataLength));
  await page.goto(url, { waitUntil: 'networkidle' });
  await driver.detach();
  return { urls, bytes };
}

/** Touches a thing where the picture has it. */
async function touch(page: Page, key: string): Promise<void> {
  const at = await page.evaluate(async (wanted) => {
    const frame = document.getElementById('picture') as HTMLElement;
    const data = (await (await fetch(frame.dataset['from'] ?? '')).json()) as {
      rooms: { x: number; y: number; wide: number; high: number; outside: boolean }[];
      things: { key: string; x: number; y: number }[];
    };
    const thing = data.things.find((each) => each.key === wanted) ?? { x: 0, y: 0 };
    const box = frame.getBoundingClientRect();
    const at = JSON.parse(frame.dataset['view'] ?? '{}') as { x: number; y: number; unit: number };
    return { x: box.x + at.x + thing.x * at.unit, y: box.y + at.y - thing.y * at.unit };
  }, key);
  await page.mouse.move(at.x, at.y);
  await page.mouse.click(at.x, at.y);
}
