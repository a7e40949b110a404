import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';
import type { Message, Reply } from '../../src/index.ts';
import { openBrowser, shootAtEveryWidth } from '../helpers/browser.ts';
import { aReply, chatWorld, type PagesWorld } from '../helpers/pages-world.ts';

/** A bot that shows every kind of thing a hirer may see. */
function show(message: Message): readonly Reply[] {
  if (message.startToken !== null) {
    return [
      aReply({
        kind: 'welcome',
        blocks: [{ kind: 'line', text: 'Hello Ngozi. I know Dunlin well: ask in your own words.' }],
      }),
    ];
  }
  if (message.text.includes('gas')) {
    return [
      aReply({
        kind: 'notice',
        blocks: [
          { kind: 'line', text: 'Everybody out now, and leave the door open.' },
          {
            kind: 'steps',
            items: [
              'Turn the gas off at the cylinder if you can reach it from outside.',
              'Touch no switch, no flame, no phone inside.',
              'Go 20 metres away, upwind.',
            ],
          },
          { kind: 'line', text: 'Only a gas engineer says when it is over.' },
          { kind: 'call', label: 'Emergency', number: '999' },
          { kind: 'call', label: 'Gas emergency', number: '0800 111 999' },
        ],
      }),
      aReply({
        kind: 'notice',
        blocks: [{ kind: 'line', text: 'Is everyone out?' }],
        choices: [
          { id: 'y', label: 'Everyone is out', tone: 'next' },
          { id: 'n', label: 'Not everyone', tone: 'quiet' },
        ],
      }),
    ].map((reply, i) => (i === 0 ? reply : { ...reply, kind: 'check' as const }));
  }
  if (message.text.includes('kettle')) {
    return [
      aReply({
        kind: 'calculate',
        blocks: [
          { kind: 'line', text: 'No. Kettle and heating on 2 together are 3,250 W, and your post gives 2,300 W.' },
          {
            kind: 'bar',
            bar: {
              title: 'On a 10 A post',
              unit: 'W',
              limit: 2300,
              segments: [
                { label: 'fridge and charger', amount: 250 },
                { label: 'heating on 2', amount: 2000 },
                { label: 'kettle', amount: 1000 },
              ],
            },
          },
          {
            kind: 'facts',
            items: ['Put the heating to 1 while the kettle boils.', 'The warden resets the post until 21:00.'],
          },
        ],
        choices: [
          { id: 'w', label: 'That worked', tone: 'quiet' },
          { id: 's', label: 'Still stuck', tone: 'quiet' },
        ],
      }),
    ];
  }
  return [
    aReply({
      blocks: [
        {
          kind: 'line',
          text: 'Dunlin heats its water in the boiler under the corner bed. It takes about half an hour on 2 kW.',
        },
        {
          kind: 'steps',
          items: [
            'Tap the screen by the door to wake it.',
            'Open WARMTH and set HOT WATER to on.',
            'Set ELECTRIC to 2 kW, or GAS to on if there is no hook-up.',
            'Wait 30 minutes, then try the kitchen tap.',
          ],
        },
        { kind: 'caution', text: 'On a 10 A post leave the kettle off while it heats.' },
      ],
      choices: [
        { id: 'w', label: 'That worked', tone: 'quiet' },
        { id: 's', label: 'Still stuck', tone: 'quiet' },
      ],
    }),
  ];
}

const fromGethin = aReply({
  kind: 'relay',
  from: 'Gethin',
  blocks: [{ kind: 'line', text: 'I am at the farm at four with a new fuse. Leave the boiler off until then.' }],
});

describe('screenshots of the chat page, to be looked at', () => {
  let browser: Browser;
  let world: PagesWorld;
  beforeAll(async () => {
    browser = await openBrowser();
    world = await chatWorld({ answer: show });
  });
  afterAll(async () => {
    await browser.close();
    await world.stop();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`are taken at every width, ${colorScheme}`, async () => {
      const context = await browser.newContext({ colorScheme });
      const page = await context.newPage();
      const shoot = (name: string) => shootAtEveryWidth(page, `chat-${name}`, colorScheme);
      const say = async (text: string) => {
        const before = await page.locator('.line.firm, .line.notice').count();
        await page.fill('#text', text);
        await page.click('#box button');
        await page.waitForFunction((n) => document.querySelectorAll('.line.firm, .line.notice').length > n, before);
      };
      await page.goto(`${world.origin}/chat`);
      await shoot('unbooked');
      await page.goto(`${world.origin}/chat/${await world.link()}`);
      await shoot('first');
      await say('no hot water and the kids need a shower before bed');
      await page.check('[data-tick$="-0"]');
      await shoot('answer');
      await say('can we have the kettle on with the heating at 2?');
      await shoot('sum');
      const thread = (await world.store.threads({ channel: 'web' })).at(-1);
      await world.tell(thread?.id ?? '', fromGethin);
      await page.waitForSelector('.line.person');
      await shoot('person');
      await say('I can smell gas by the locker');
      await shoot('notice');
      await context.close();
    });
  }
});
