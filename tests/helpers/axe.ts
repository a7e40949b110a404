import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe-core finds serious or critical, in a line each; the levels looked at go to WCAG 2.2 AAA for contrast. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  // The page's own policy forbids strangers' scripts; the driver's evaluation is not bound by it.
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, {
      rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
    });
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
  });
  return found;
}
