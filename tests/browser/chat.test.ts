import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Message, Reply } from '../../src/index.ts';
import { seriousFaults } from '../helpers/axe.ts';
import { inBrowser } from '../helpers/in-browser.ts';
import { aReply, chatWorld } from '../helpers/pages-world.ts';

const SIZES = { phone: { width: 360, height: 740 }, desktop: { width: 1280, height: 800 } } as const;

function answer(message: Message): readonly Reply[] {
  if (message.startToken !== null)
    return [aReply({ kind: 'welcome', blocks: [{ kind: 'line', text: 'Hello again.' }] })];
  if (message.text.includes('gas')) {
    return [
      aReply({
        kind: 'notice',
        blocks: [
          { kind: 'line', text: 'Get everybody out.' },
          { kind: 'steps', items: ['Leave the door open.', 'Touch no switch.'] },
          { kind: 'call', label: 'Emergency', number: '999' },
        ],
      }),
    ];
  }
  return [
    aReply({
      blocks: [
        { kind: 'line', text: `About ${message.text}:` },
        { kind: 'steps', items: ['Wake the screen.', 'Set it to on.'] },
        { kind: 'caution', text: 'Leave the kettle off.' },
        {
          kind: 'bar',
          bar: {
            title: 'On a 10 A post',
            unit: 'W',
            limit: 2300,
            segments: [
              { label: 'heating', amount: 2000 },
              { label: 'kettle', amount: 1000 },
            ],
          },
        },
      ],
      choices: [
        { id: 'worked', label: 'That worked', tone: 'quiet' },
        { id: 'stuck', label: 'Still stuck', tone: 'quiet' },
      ],
    }),
  ];
}

describe('the chat page in a browser', () => {
  const { keep, newContext } = inBrowser();

  async function open(
    options: { size?: keyof typeof SIZES; scripts?: boolean; dark?: boolean; booked?: boolean } = {},
  ) {
    const world = keep(await chatWorld({ answer }));
    const context = await newContext({
      viewport: SIZES[options.size ?? 'phone'],
      javaScriptEnabled: options.scripts ?? true,
      colorScheme: options.dark === true ? 'dark' : 'light',
      hasTouch: options.size !== 'desktop',
    });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => {
      // Being offline is no fault of the page.
      if (message.type() === 'error' && !/ERR_(INTERNET|CONNECTION|NETWORK|EMPTY)/.test(message.text()))
        faults.push(message.text());
    });
    await page.goto(`${world.origin}/chat${options.booked === false ? '' : `/${await world.link()}`}`);
    return { world, context, page, faults };
  }
  const said = (page: Page) => page.locator('.line.hirer:not(.pending) p').allTextContents();
  const say = async (page: Page, text: string) => {
    await page.fill('#text', text);
    await page.click('#box button[type=submit]');
  };

  for (const size of ['phone', 'desktop'] as const) {
    for (const dark of [false, true]) {
      it(`has nothing serious for axe, ${size}, ${dark ? 'dark' : 'light'}`, async () => {
        const { page, faults } = await open({ size, dark });
        expect(await seriousFaults(page)).toEqual([]);
        await say(page, 'hot water');
        await page.waitForSelector('.steps');
        expect(await seriousFaults(page)).toEqual([]);
        await say(page, 'I smell gas');
        await page.waitForSelector('.notice');
        expect(await seriousFaults(page)).toEqual([]);
        expect(faults).toEqual([]);
      });
    }
  }

  it('asks one without a booking for the code, and sends it', async () => {
    const { page, world, faults } = await open({ booked: false });
    expect(await seriousFaults(page)).toEqual([]);
    await page.fill('#code', 'k7qm-4t2x');
    await page.click('.code button');
    await page.waitForSelector('.line.hirer:not(.pending)');
    expect(world.received.map((message) => message.text)).toEqual(['k7qm-4t2x']);
    expect(faults).toEqual([]);
  });

  it('shows question and answer without a reload, and sends what is pressed', async () => {
    const { page, world } = await open();
    await page.evaluate(() => {
      document.body.dataset['same'] = 'yes';
    });
    await say(page, 'hot water');
    await page.waitForSelector('.choices');
    await page.click('text=Still stuck');
    await page.waitForFunction(() => document.querySelectorAll('.line.hirer:not(.pending)').length === 2);
    expect(await said(page)).toEqual(['\u2018hot water\u2019', '\u2018Still stuck\u2019']);
    expect(world.received.at(-1)).toMatchObject({ choice: 'stuck' });
    expect(await page.getAttribute('body', 'data-same')).toBe('yes');
    expect(await page.locator('.choices').count()).toBe(1);
  });

  it('puts the new words where the old stood when a person puts them right', async () => {
    const { page, world } = await open();
    await say(page, 'hot water');
    await page.waitForSelector('.choices');
    const [thread] = await world.store.threads({});
    const words = (text: string) => aReply({ kind: 'relay', from: 'Gethin', blocks: [{ kind: 'line', text }] });
    await world.tell(thread?.id ?? '', words('The red tap'));
    await page.waitForSelector('text=The red tap');
    const line = (await world.store.lines(thread?.id ?? '')).at(-1)?.id ?? 0;
    await world.tell(thread?.id ?? '', words('And ring me'));
    await page.waitForSelector('text=And ring me');
    await world.tell(thread?.id ?? '', { ...words('The blue tap'), putsRight: line });
    await page.waitForSelector('text=The blue tap');
    const persons = await page.locator('.line.person').allInnerTexts();
    expect(persons.map((each) => each.split('\n').at(-1))).toEqual(['The blue tap', 'And ring me']);
    expect(persons[0]).toContain('put right');
  });

  it('keeps what is typed without signal and sends each once when it returns', async () => {
    const { page, context, world } = await open();
    await say(page, 'before');
    await page.waitForSelector('.line.firm .steps');
    await context.setOffline(true);
    await say(page, 'the fridge is warm');
    await say(page, 'and it beeps');
    await page.waitForFunction(() =>
      document.getElementById('signal')?.textContent?.includes('2 messages are kept here'),
    );
    expect(await page.locator('.pending').count()).toBe(2);
    await context.setOffline(false);
    await page.waitForFunction(() => document.querySelectorAll('.pending').length === 0, undefined, {
      timeout: 20_000,
    });
    expect(world.received.map((message) => message.text).filter((text) => text !== '')).toEqual([
      'before',
      'the fridge is warm',
      'and it beeps',
    ]);
    await page.waitForFunction(() => document.querySelectorAll('.line.hirer').length === 3);
    expect(await said(page)).toEqual([
      '\u2018before\u2019',
      '\u2018the fridge is warm\u2019',
      '\u2018and it beeps\u2019',
    ]);
  });

  it('keeps it although the page was closed meanwhile, and sends it once from two tabs', async () => {
    const { page, context, world } = await open();
    const url = page.url();
    await page.waitForLoadState('networkidle').catch(() => undefined);
    await context.setOffline(true);
    await say(page, 'where is the step?');
    await page.waitForSelector('.pending');
    await page.close();
    await context.setOffline(false);
    const [one, two] = [await context.newPage(), await context.newPage()];
    await Promise.all([one.goto(url), two.goto(url)]);
    for (const tab of [one, two])
      await tab.waitForFunction(() => document.querySelectorAll('.line.firm .steps').length === 1);
    expect(world.received.map((message) => message.text).filter((text) => text !== '')).toEqual(['where is the step?']);
    expect(await one.locator('.line.hirer').count()).toBe(1);
  });

  it('comes back to the stream after the server was away', async () => {
    const { page, world } = await open();
    await say(page, 'one');
    await page.waitForSelector('.line.firm .steps');
    await world.halt();
    await say(page, 'two');
    await page.waitForSelector('.pending');
    await world.start();
    await page.waitForFunction(() => document.querySelectorAll('.line.firm .steps').length === 2, undefined, {
      timeout: 20_000,
    });
    expect(await page.locator('.pending').count()).toBe(0);
  });

  it('keeps ticks over a reload', async () => {
    const { page } = await open();
    await say(page, 'hot water');
    const tick = page.locator('[data-tick]').first();
    await tick.check();
    await page.reload();
    expect(await page.locator('[data-tick]').first().isChecked()).toBe(true);
    expect(await page.locator('[data-tick]').nth(1).isChecked()).toBe(false);
  });

  it('fills the screen with a notice, its call first, the box still there', async () => {
    const { page } = await open();
    await say(page, 'I smell gas');
    const notice = page.locator('.notice');
    await notice.waitFor();
    await page.waitForTimeout(600);
    const box = await notice.boundingBox();
    expect(box?.width).toBe(SIZES.phone.width);
    expect(box?.height).toBeGreaterThan(500);
    const call = page.locator('.notice a[href="tel:999"]');
    expect((await call.boundingBox())?.y).toBeLessThan((await page.locator('.notice .lead').boundingBox())?.y ?? 0);
    for (const part of [call, page.locator('#text')]) {
      const at = await part.boundingBox();
      expect(at?.y).toBeGreaterThan(0);
      expect((at?.y ?? 0) + (at?.height ?? 0)).toBeLessThanOrEqual(SIZES.phone.height);
    }
  });

  it('works with scripting off: asked, pressed, answered', async () => {
    const { page } = await open({ scripts: false });
    await say(page, 'hot water');
    await page.waitForSelector('.steps');
    expect(await page.locator('noscript').count()).toBe(1);
    await page.click('text=That worked');
    await page.waitForLoadState();
    expect(await said(page)).toEqual(['\u2018hot water\u2019', '\u2018That worked\u2019']);
  });

  it('can be used by keyboard alone', async () => {
    const { page, world } = await open({ size: 'desktop' });
    await page.focus('#text');
    await page.keyboard.type('hot water');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.steps');
    await page.focus('[data-tick]');
    await page.keyboard.press('Space');
    expect(await page.locator('[data-tick]').first().isChecked()).toBe(true);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.querySelectorAll('.line.hirer:not(.pending)').length === 2);
    expect(world.received.at(-1)?.choice).toBe('worked');
  });

  it('says new lines aloud: they come into a live region', async () => {
    const { page } = await open();
    expect(await page.locator('[role=log][aria-live=polite]').count()).toBe(1);
    await say(page, 'hot water');
    await page.waitForSelector('[role=log] .steps');
    expect(await page.locator('.line.firm h3').last().textContent()).toContain('Brackenfold Touring Hire said');
  });

  it('gives every target 48 pixels and every text 18', async () => {
    const { page } = await open();
    await say(page, 'hot water');
    await page.waitForSelector('.choices');
    // Asked again until it holds: a target may still be growing into its place.
    const small = () =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('a, button, label.step, textarea, label.photo')]
          .filter((one) => one.offsetParent !== null)
          .map((one) => ({ what: one.outerHTML.slice(0, 60), box: one.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 48 || box.width < 48)
          .map(({ what }) => what),
      );
    await expect.poll(small).toEqual([]);
    const tiny = () =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('body *')]
          .filter(
            (one) =>
              one.offsetParent !== null &&
              [...one.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== ''),
          )
          .filter((one) => Number.parseFloat(getComputedStyle(one).fontSize) < 18)
          .map((one) => one.outerHTML.slice(0, 60)),
      );
    await expect.poll(tiny).toEqual([]);
  });

  it('does not scroll sideways at 320 pixels', async () => {
    const { page } = await open();
    await page.setViewportSize({ width: 320, height: 600 });
    await say(page, `a-very-long-word-${'x'.repeat(120)}`);
    await page.waitForSelector('.steps');
    await say(page, 'gas');
    await page.waitForSelector('.notice');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  });

  it('shows nothing moving to those who asked for none', async () => {
    const { page } = await open();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await say(page, 'hot water');
    await page.waitForSelector('.line.new');
    expect(
      await page
        .locator('.line.new')
        .last()
        .evaluate((line) => getComputedStyle(line).animationName),
    ).toBe('none');
  });
});
