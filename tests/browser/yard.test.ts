import { describe, expect, it } from 'vitest';
import { seriousFaults } from '../helpers/axe.ts';
import { inBrowser } from '../helpers/in-browser.ts';
import { aBooking, chatWorld, NOW_MS } from '../helpers/pages-world.ts';

const SIZES = { phone: { width: 360, height: 740 }, desktop: { width: 1280, height: 800 } } as const;

describe('the yard in a browser', () => {
  const { keep, newContext } = inBrowser();

  async function open(options: { size?: keyof typeof SIZES; scripts?: boolean; dark?: boolean } = {}) {
    const world = keep(await chatWorld());
    await world.store.putBookings([
      aBooking(),
      aBooking({ ref: 'BR-2701', firstName: 'Pat', van: 'wren', site: null }),
    ]);
    const waiting = await world.passed(
      { booking: 'BR-2702', sinceMs: NOW_MS - 40 * 60_000 },
      { question: 'still no hot water', tried: ['Is it lit? - yes'], suggested: 'Turn the tap marked BOILER.' },
    );
    const context = await newContext({
      viewport: SIZES[options.size ?? 'desktop'],
      javaScriptEnabled: options.scripts ?? true,
      colorScheme: options.dark === true ? 'dark' : 'light',
    });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => void (message.type() === 'error' && faults.push(message.text())));
    await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Dilys', 'operator')}`);
    const atGate = await (options.scripts === false ? [] : seriousFaults(page));
    await page.click('text=Open the gate');
    await page.waitForSelector('.field');
    return { world, page, context, faults, waiting, atGate };
  }

  for (const size of ['phone', 'desktop'] as const) {
    for (const dark of [false, true]) {
      it(`has nothing serious for axe, ${size}, ${dark ? 'dark' : 'light'}`, async () => {
        const { page, world, faults, waiting, atGate } = await open({ size, dark });
        await world.passed({ booking: 'BR-2701', reason: 'safety' }, { question: 'alarm' });
        expect(atGate).toEqual([]);
        for (const path of ['/yard', '/yard/list', '/yard/turnaround', '/yard/people', `/yard/thread/${waiting.id}`]) {
          await page.goto(world.origin + path);
          expect(await seriousFaults(page), path).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(
            SIZES[size].width,
          );
        }
        expect(faults).toEqual([]);
      });
    }
  }

  it('shows who begins to wait without a reload, says it aloud, and rings the title for danger', async () => {
    const { page, world } = await open();
    expect(await page.locator('.spot.waiting').count()).toBe(1);
    await page.waitForTimeout(200);
    await world.passed({ booking: 'BR-2701', reason: 'safety', sinceMs: NOW_MS }, { question: 'alarm going off' });
    await page.waitForSelector('.strip.danger');
    expect(await page.textContent('#spoken')).toBe('Pat waits for us');
    expect(await page.title()).toMatch(/^DANGER /);
    expect(await page.locator('.strip').first().textContent()).toContain('Danger');
  });

  it('sounds for danger once sound is on, and stops when somebody has it', async () => {
    const { page, world } = await open();
    await page.evaluate(() => {
      const counts = window as unknown as { tones: number };
      counts.tones = 0;
      const make = AudioContext.prototype.createOscillator;
      AudioContext.prototype.createOscillator = function () {
        counts.tones += 1;
        return make.call(this);
      };
    });
    const tones = () => page.evaluate(() => (window as unknown as { tones: number }).tones);
    await page.click('#sound');
    expect(await tones()).toBe(1);
    const { id } = await world.passed({ booking: 'BR-2701', reason: 'safety' });
    await page.waitForFunction(() => (window as unknown as { tones: number }).tones === 4);
    const thread = await world.store.thread(id);
    if (thread !== null)
      await world.store.saveTurn({
        seq: null,
        thread: { ...thread, keeper: 'staff', keeperName: 'Nessa' },
        replies: [],
        events: [],
        atMs: NOW_MS,
      });
    world.changed();
    await page.waitForFunction(() => !document.title.startsWith('DANGER'));
    expect(await page.locator('.spot.danger').textContent()).toContain('Nessa has it');
  });

  it('lets one take, answer and give back by keyboard alone', async () => {
    const { page, world, waiting } = await open();
    await page.focus(`#spot-${waiting.id}`);
    await page.keyboard.press('Enter');
    await page.waitForSelector('text=still no hot water');
    await page.focus('button:has-text("I have it")');
    await page.keyboard.press('Enter');
    await page.waitForSelector('text=You have it.');
    await page.focus('#text');
    await page.keyboard.type('I come by at four.');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.line.person >> text=I come by at four.');
    expect(await world.store.thread(waiting.id)).toMatchObject({ keeper: 'staff', keeperName: 'Dilys' });
    await page.focus('button:has-text("Back to the bot")');
    await page.keyboard.press('Enter');
    await page.waitForSelector('text=The bot has it.');
  });

  it('keeps what is being typed while the thread moves on', async () => {
    const { page, world, waiting } = await open();
    await page.goto(`${world.origin}/yard/thread/${waiting.id}`);
    await page.waitForTimeout(200);
    await page.fill('#text', 'half a sen');
    await page.focus('#text');
    await world.store.post(
      waiting.id,
      { kind: 'relay', from: 'Nessa', topic: null, blocks: [{ kind: 'line', text: 'just looking' }], choices: [] },
      NOW_MS,
    );
    world.changed();
    await page.waitForSelector('text=just looking');
    expect(await page.inputValue('#text')).toBe('half a sen');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('text');
  });

  it('moves the suggestion into the box to be changed', async () => {
    const { page, world, waiting } = await open();
    await page.goto(`${world.origin}/yard/thread/${waiting.id}`);
    await page.click('text=Change it first');
    expect(await page.inputValue('#text')).toBe('Turn the tap marked BOILER.');
  });

  it('works with scripting off: open, take, answer, note, hand over', async () => {
    const { page, world, waiting } = await open({ scripts: false });
    await page.click(`#spot-${waiting.id}`);
    await page.click('text=I have it');
    await page.fill('#note', 'second time this week');
    await page.click('text=Keep the note');
    expect(await page.textContent('.note')).toContain('second time this week');
    await page.click('text=Change it first');
    expect(await page.inputValue('#text')).toBe('Turn the tap marked BOILER.');
    await page.fill('#text', 'Turn the tap, then wait.');
    await page.click('#box button');
    expect(await page.locator('.line.person').last().textContent()).toContain('Turn the tap, then wait.');
    await page.selectOption('#to', 'Gethin');
    await page.click('text=Hand over');
    expect(await world.store.thread(waiting.id)).toMatchObject({ keeperName: 'Gethin' });
  });
});
