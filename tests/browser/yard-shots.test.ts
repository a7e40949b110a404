import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { openBrowser, shootAtEveryWidth } from '../helpers/browser.ts';
import { aBooking, chatWorld, NOW_MS, type PagesWorld } from '../helpers/pages-world.ts';

const MINUTE = 60_000;

describe('screenshots of the yard, to be looked at', () => {
  let browser: Browser;
  let world: PagesWorld;
  let thread = '';
  let danger = '';
  beforeAll(async () => {
    browser = await openBrowser();
    world = await chatWorld();
    await world.store.putBookings([
      aBooking(),
      aBooking({
        ref: 'BR-2701',
        hirer: 'Pat and Sol Amberley',
        firstName: 'Pat',
        van: 'wren',
        site: 'gullstone-sands',
        pitch: '3',
        from: '2027-07-25',
        to: '2027-07-29',
      }),
      aBooking({
        ref: 'BR-2703',
        hirer: 'The Lindqvist family',
        firstName: 'Astrid',
        van: 'curlew',
        site: 'hawmire-field',
        pitch: null,
        amps: 0,
        from: '2027-07-27',
        to: '2027-08-03',
      }),
      aBooking({
        ref: 'BR-2704',
        hirer: 'Tomasz Wierzba, Ana Ruiz',
        firstName: 'Tomasz',
        van: 'plover',
        site: null,
        pitch: null,
        from: '2027-07-20',
        to: '2027-07-27',
      }),
    ]);
    const asked = await world.passed(
      { booking: 'BR-2702', van: 'dunlin', sinceMs: NOW_MS - 34 * MINUTE, reason: 'not-fixed' },
      {
        question: 'still no hot water, tried the button twice',
        tried: ['Is the boiler switch lit? - yes', 'Held CLEAR for five seconds - still nothing'],
        understood: [
          { topic: 'hotwater-none', title: 'There is no hot water', probability: 0.81 },
          { topic: 'boiler-message', title: 'What does the message on the screen mean?', probability: 0.12 },
        ],
        suggested:
          'Turn the gas tap marked BOILER so that its lever lies along the pipe, then set GAS to on.\nIf it says BURNER DID NOT LIGHT again, leave it off: Gethin comes by this afternoon.',
      },
    );
    thread = asked.id;
    await world.passed(
      { booking: 'BR-2701', van: 'wren', sinceMs: NOW_MS - 6 * MINUTE, reason: 'asked' },
      { question: 'can we stay one more night?' },
    );
    const ill = await world.passed(
      { booking: 'BR-2703', van: 'curlew', sinceMs: NOW_MS - 2 * MINUTE, reason: 'safety' },
      { question: 'the alarm is going off and we feel sick' },
    );
    danger = ill.id;
    await world.passed(
      { sinceMs: NOW_MS - 11 * MINUTE, reason: 'asked' },
      { question: 'hello is this the caravan place' },
    );
  });
  afterAll(async () => {
    await browser.close();
    await world.stop();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`are taken at every width, ${colorScheme}`, async () => {
      const context = await browser.newContext({ colorScheme });
      const page = await context.newPage();
      const shoot = (name: string) => shootAtEveryWidth(page, `yard-${name}`, colorScheme);
      await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Dilys', 'operator')}`);
      await shoot('gatehouse');
      await page.click('button');
      await page.waitForSelector('.field');
      await shoot('field');
      await page.goto(`${world.origin}/yard/list`);
      await shoot('list');
      await page.goto(`${world.origin}/yard/thread/${thread}`);
      await shoot('thread');
      await page.fill('#text', 'Gethin comes at ten. Leave the boiler off until then.');
      await page.click('.box .next');
      await page.waitForSelector('text=Put it right');
      await page.locator('.talk >> text=Put it right').last().scrollIntoViewIfNeeded();
      await shoot('thread-held');
      await page.locator('.talk >> text=Put it right').last().click();
      await page.waitForSelector('text=take the place');
      await shoot('thread-right');
      await page.goto(`${world.origin}/yard/thread/${danger}`);
      await shoot('thread-danger');
      for (const [path, name] of [
        ['booking/BR-2704', 'booking'],
        ['turnaround', 'turnaround'],
        ['people', 'people'],
        ['passkeys', 'passkeys'],
        ['sign-in', 'signed-out'],
      ]) {
        await page.goto(`${world.origin}/yard/${path}`);
        await shoot(name ?? '');
      }
      await context.close();
    });
  }
});
