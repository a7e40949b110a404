import { bench, describe } from 'vitest';
import { pictureOf } from '../../src/index.ts';
import { openBrowser } from '../helpers/browser.ts';
import { pictureWorld } from '../helpers/picture-world.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/*
 * The picture of the demo graph in Chromium, drawn by its processor (no graphics card). To hold: ready in under 1 s, script
 * under 8 ms a frame while it is dragged (issue 9). A frame's script is all that runs in its animation callbacks.
 */
declare function framesSeen(): number[];

const knowledge = realKnowledge();
const browser = await openBrowser();
const world = await pictureWorld(knowledge);
const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
await page.addInitScript(() => {
  const frames: number[] = [];
  Object.assign(window, { framesSeen: () => frames });
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (act) =>
    ask((at) => {
      const from = performance.now();
      act(at);
      frames.push(performance.now() - from);
    });
});
await page.goto(`${world.origin}/yard/sign-in/${await world.invite('Nessa', 'operator')}`);
await page.click('button');
const open = async (): Promise<void> => {
  await page.goto(`${world.origin}/yard/growth/graph`, { waitUntil: 'commit' });
  await page.waitForSelector('#picture[data-ready]');
};

const FRAMES = 120;
await open();
for (const [name, presses] of [
  ['the whole van', 0],
  ['near, with names', 3],
] as const) {
  for (let i = 0; i < presses; i++) await page.click('[data-camera=in]');
  await page.waitForTimeout(500);
  await page.evaluate(() => {
    window.scrollTo(0, 0);
    framesSeen().splice(0);
  });
  const box = (await page.locator('#picture').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  const [x, y] = [box.x + box.width / 2, box.y + Math.min(box.height / 2, 200)];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 0; i < FRAMES; i++) await page.mouse.move(x + 150 * Math.sin(i / 9), y + 60 * Math.cos(i / 7));
  await page.mouse.up();
  const frames = (await page.evaluate(() => framesSeen())).sort((a, b) => a - b);
  const at = (share: number): string => (frames[Math.floor(share * (frames.length - 1))] ?? 0).toFixed(1);
  console.log(
    `dragged, ${name}: ${frames.length} frames, script p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, most ${at(1)} ms`,
  );
}

describe('the picture of the demo graph', () => {
  bench('laid out', () => void pictureOf(knowledge), { time: 200 });
  bench('ready in the browser, from its address', open, {
    time: 0,
    iterations: 5,
    warmupTime: 0,
    warmupIterations: 1,
    teardown: async (_task, mode) => {
      if (mode !== 'run') return;
      await browser.close();
      await world.stop();
    },
  });
});
