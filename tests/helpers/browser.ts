import { mkdirSync } from 'node:fs';
import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver, type Page } from 'playwright-core';

/** A real Chromium: the one inside a registry package, else the system's. */
export async function openBrowser(): Promise<Browser> {
  const args = ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
  try {
    return await driver.launch({ executablePath: await chromium.executablePath(), args, headless: true });
  } catch {
    return driver.launch({ executablePath: '/usr/bin/chromium', args, headless: true });
  }
}

const SHOTS = 'tests/browser/shots';
const SIZES = [
  { width: 360, height: 740 },
  { width: 768, height: 1024 },
  { width: 1280, height: 850 },
] as const;

/** Pictures of a page at the three widths we look at, kept where git does not look. The page is shown from its last notice or question. */
export async function shootAtEveryWidth(page: Page, name: string, colours: string): Promise<void> {
  mkdirSync(SHOTS, { recursive: true });
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.evaluate(() => {
      const said = document.querySelectorAll('.chat .line.hirer');
      (document.querySelector('.chat .notice') ?? said[said.length - 1])?.scrollIntoView({ behavior: 'instant' });
    });
    await page.screenshot({ path: `${SHOTS}/${name}-${size.width}-${colours}.png` });
  }
}
