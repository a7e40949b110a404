import chromium from '@sparticuz/chromium';
import { type Browser, chromium as driver } from 'playwright-core';

/** A real Chromium: the one inside a registry package, else the system's. */
export async function openBrowser(): Promise<Browser> {
  const args = ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
  try {
    return await driver.launch({ executablePath: await chromium.executablePath(), args, headless: true });
  } catch {
    return driver.launch({ executablePath: '/usr/bin/chromium', args, headless: true });
  }
}
