import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createGrowth } from '../../adapters/cli/growth-trials.ts';
import { seriousFaults } from '../helpers/axe.ts';
import { openBrowser, shootAtEveryWidth } from '../helpers/browser.ts';
import { aBrief, chatWorld, type PagesWorld } from '../helpers/pages-world.ts';
import { ASKED_MS, aGap, type SmallDesk, smallDesk } from '../helpers/small-desk.ts';

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
    // Five weeks before, in which it helped a little more each week.
    for (let week = 1; week <= 5; week++)
      for (let i = 0; i < 10; i++)
        await small.came(
          i < 4 + (5 - week)
            ? [
                { kind: 'answered', topic: i % 2 === 0 ? 'oven-use' : 'fridge-modes', probability: 0.9 },
                { kind: 'helped', topic: 'oven-use', yes: i > 1 },
              ]
            : i === 9
              ? [
                  { kind: 'offered', topics: ['hours-contact'] },
                  { kind: 'answered', topic: 'hours-contact', probability: 1 },
                ]
              : [{ kind: 'passed', reason: 'unsure', urgency: 'usual', brief: aBrief() }],
          ASKED_MS - week * 7 * 86_400_000,
        );
    const pool = await small.desk.group(7);
    const drafted =
      pool && small.desk.draft({ kind: 'add-wordings', topic: 'hours-contact', wordings: ['pool hours'] }, pool);
    if (drafted?.kind !== 'drafted') throw new Error('the change does not hold together');
    await small.desk.publish(await small.desk.trial(drafted.draft), {
      by: 'Nessa',
      why: '',
      evenIfWorse: true,
      tell: false,
    });
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
