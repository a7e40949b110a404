import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barSvg } from '../../../adapters/pictures/bar.ts';
import { createPictures } from '../../../adapters/pictures/pictures.ts';
import type { Bar } from '../../../src/index.ts';

const BAR: Bar = {
  title: 'On 10 A',
  unit: 'W',
  limit: 2300,
  segments: [
    { label: 'Van itself', amount: 250 },
    { label: 'Kettle', amount: 1000 },
  ],
};

const amount = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1e6, noNaN: true }));
const anyBar = fc.record({
  title: fc.string(),
  unit: fc.string(),
  limit: amount,
  segments: fc.array(fc.record({ label: fc.string(), amount }), { maxLength: 6 }),
});

describe('the bar of a sum', () => {
  it('tells each part, the whole and what there is', () => {
    const texts = [...barSvg(BAR, 'light').matchAll(/>([^<>]+)<\/text>/g)].map(([, text]) => text);
    expect(texts).toEqual(expect.arrayContaining(['On 10 A', '1  Van itself', '250 W', '1,250 W', '2,300 W']));
  });

  it('hatches what is over the limit, and only that', () => {
    expect(barSvg(BAR, 'light')).not.toMatch(/l10 -36/);
    expect(barSvg({ ...BAR, limit: 1000 }, 'light')).toMatch(/l10 -36/);
  });

  it('makes labels safe', () => {
    const svg = barSvg({ ...BAR, title: '<b> & co' }, 'light');
    expect(svg).toContain('&lt;b> &amp; co');
  });

  it('never draws outside itself nor writes what is no number', () => {
    fc.assert(
      fc.property(anyBar, fc.constantFrom('light' as const, 'dark' as const), (bar, theme) => {
        const svg = barSvg(bar, theme);
        const rects = [...svg.matchAll(/<rect x="([^"]+)" y="44" width="([^"]+)"/g)].map(([, x, width]) =>
          [x, width].map(Number),
        );
        for (const [x = 0, width = 0] of rects) {
          expect(width).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(388.2);
        }
        expect(svg.replace(/>[^<]*<\/text>/g, '')).not.toMatch(/NaN|Infinity/);
      }),
    );
  });

  it('is a PNG as well, kept like the others', async () => {
    const pictures = createPictures(() => new Map());
    const png = await pictures.barPng(BAR);
    expect(png.readUInt32BE(16)).toBe(800);
    expect(await pictures.barPng(BAR)).toBe(png);
  });
});
