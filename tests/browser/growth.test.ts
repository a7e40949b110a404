import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createGrowth } from '../../adapters/cli/growth-trials.ts';
import { seriousFaults } from '../helpers/axe.ts';
import { openBrowser, shootAtEveryWidth } from '../helpers/browser.ts';
import { chatWorld, type PagesWorld } from '../helpers/pages-world.ts';
import { aGap, type SmallDesk, smallDesk } from '../helpers/small-desk.ts';

const ASKED = [
  'what temperature for a pie in the oven',
  'oven temperature for a pie',
  'pie in the oven, which temperature',
  'is there a pool near here',
];

describe('teaching the bot in a browser', () => {
  let browser: Browser;
  let world: PagesWorld;
  let small: SmallDesk;
  beforeAll(async () => {
    browser = await openBrowser();
    small = smallDesk();
    for (const text of ASKED)
      await small.came([aGap(text), { kind: 'staff-said', by: 'Nessa', text: 'Gas mark 6, and turn it once.' }]);
    await small.came([
      { kind: 'answered', topic: 'oven-use', probability: 0.9 },
      { kind: 'helped', topic: 'oven-use', yes: true },
    ]);
    world = await chatWorld({ yard: { growth: createGrowth(small.desk, () => world.changed()) } });
  });
  afterAll(async () => {
    await browser.close();
    await world.stop();
    small.remove();
  });

  async function signedIn(colorScheme: 'light' | 'dark'): Promise<Page> {
    const page = await (await browser.newContext({ colorScheme })).newPage();
    await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Nessa', 'operator')}`);
    await page.click('button');
    await page.waitForSelector('.field');
    return page;
  }

  for (const colours of ['light', 'dark'] as const) {
    it(`has no serious fault and never scrolls sideways, ${colours}`, async () => {
      const page = await signedIn(colours);
      const look = async (name: string) => {
        await shootAtEveryWidth(page, `growth-${name}`, colours);
        for (const width of [360, 1280]) {
          await page.setViewportSize({ width, height: 800 });
          expect(await seriousFaults(page), name).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        }
      };
      for (const [name, path] of [
        ['groups', ''],
        ['group', '/group/1'],
        ['changes', '/changes'],
        ['figures', '/figures'],
        ['thin', '/thin'],
      ] as const) {
        await page.goto(`${world.origin}/yard/growth${path}`);
        await look(name);
      }
      await page.goto(`${world.origin}/yard/growth/group/1`);
      await page.click('button.next');
      await page.waitForSelector('.verdict');
      await look('trial');
      await page.context().close();
    });
  }
});
