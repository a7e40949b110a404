import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contactSheet, contactSheetHtml } from '../../../adapters/pictures/contact-sheet.ts';
import { createPictures } from '../../../adapters/pictures/pictures.ts';
import { pngOf } from '../../../adapters/pictures/png.ts';
import { writePictures } from '../../../adapters/pictures/write-pictures.ts';
import { INKS, type Picture, ringOf, svgElements } from '../../../src/index.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300">
<g fill="var(--paper)" stroke="var(--ink)">
<rect id="wall" width="400" height="300"/>
<g id="knob" data-ring="100 100 30"><circle cx="100" cy="100" r="20" fill="var(--part)"/></g>
<g id="lamp" data-ring="200 100 20"><circle cx="200" cy="100" r="9" fill="var(--part)"/></g>
<g id="plate" data-ring="40 200 300 50"><rect x="50" y="210" width="280" height="30"/></g>
<g id="mark" data-ring="300 100 20" data-alone="yes"><circle cx="300" cy="100" r="9"/></g>
</g>
</svg>
`;
/** How far the ring reaches beyond its disc. */
const RING = 5.5;
const only: Picture = { name: 'panel', svg: SVG, ids: new Set(['wall', 'knob', 'lamp', 'mark']) };
const pictures = createPictures(() => new Map([['panel', only]]));
const real = realKnowledge();
const realPictures = createPictures(() => real.pictures);

/** Width and height that a PNG says it has, and how many bytes it takes. */
const sizeOf = (png: Buffer) => ({ width: png.readUInt32BE(16), height: png.readUInt32BE(20), bytes: png.length });
const drawn = (touch: string | null, theme: 'light' | 'dark' = 'light') =>
  pictures.svg({ picture: 'panel', touch }, theme) ?? '';

describe('a drawing', () => {
  it('is null when there is none of that name, and its PNG rejects', async () => {
    expect(pictures.svg({ picture: 'teapot', touch: null }, 'light')).toBeNull();
    await expect(pictures.png({ picture: 'teapot', touch: null })).rejects.toThrow(/teapot/);
  });

  it('has the inks of its theme and no name of an ink left', () => {
    for (const theme of ['light', 'dark'] as const) {
      expect(drawn('knob', theme)).not.toMatch(/var\(/);
      expect(drawn(null, theme)).toContain(INKS[theme].ink);
    }
  });

  it('has no ring when nothing is to be touched, or a part without one', () => {
    expect(drawn(null)).not.toContain(INKS.light.marigold);
    expect(drawn('wall')).toBe(drawn(null));
    expect(drawn('no-such-part')).toBe(drawn(null));
  });

  it('has the disc under every part and the ring over all', () => {
    const svg = drawn('lamp');
    const disc = svg.indexOf(`r="20" fill="${INKS.light.marigold}"`);
    expect(disc).toBeGreaterThan(svg.indexOf('id="wall"'));
    expect(disc).toBeLessThan(svg.indexOf('id="knob"'));
    expect(svg.lastIndexOf('<circle')).toBeGreaterThan(svg.indexOf('id="lamp"'));
    expect(svg.match(/stroke-width="3"/g)).toHaveLength(2);
  });

  it('has a box with round corners for the disc and the ring of a part that is long', () => {
    const svg = drawn('plate');
    expect(svg).toContain(`<rect x="40" y="200" width="300" height="50" rx="14" fill="${INKS.light.marigold}"`);
    expect(svg).toMatch(/<rect x="38.5" y="198.5" width="303" height="53" rx="15.5" fill="none"/);
  });

  it('rings several parts when several are named', () => {
    expect(drawn('knob lamp').match(new RegExp(INKS.light.marigold, 'g'))).toHaveLength(2);
  });

  it('keeps dark lines on marigold in the dark', () => {
    const knob = svgElements(drawn('knob', 'dark')).find(({ id }) => id === 'knob');
    expect(knob?.attributes.get('stroke')).toBe(INKS.light.ink);
    const lamp = svgElements(drawn('knob', 'dark')).find(({ id }) => id === 'lamp');
    expect(lamp?.attributes.get('stroke')).toBe(INKS.dark.ink);
  });

  it('edges the part to touch in light on dark paper, and nowhere else', () => {
    const edge = `<g fill="none" stroke="${INKS.dark.ink}" stroke-width="5">`;
    expect(drawn('knob', 'dark')).toContain(edge);
    expect(drawn('knob', 'light')).not.toContain('<g fill="none"');
    expect(drawn(null, 'dark')).not.toContain(edge);
  });

  it("keeps the theme's inks for what of a part stands beside its disc", () => {
    const arrow = '<path data-off="yes" d="M0 0h9" fill="none" stroke="var(--ink)"/>';
    const svg = SVG.replace('</g>\n<g id="lamp"', `${arrow}</g>\n<g id="lamp"`);
    const beside = createPictures(() => new Map([['panel', { ...only, svg }]]));
    const dark = beside.svg({ picture: 'panel', touch: 'knob' }, 'dark') ?? '';
    expect(dark.match(/data-off="yes"[^>]*/g)).toEqual([
      `data-off="yes" d="M0 0h9" fill="none" stroke="${INKS.dark.ink}"/`,
    ]);
  });

  it('leaves out the marks of a plan that are not meant', () => {
    expect(drawn('knob')).not.toContain('id="mark"');
    expect(drawn('mark')).toContain('id="mark"');
    expect(drawn(null)).not.toContain('id="mark"');
    expect(drawn(null)).toContain('id="knob"');
  });
});

describe('a PNG', () => {
  it('is 800 by 600', async () => {
    expect(sizeOf(await pictures.png({ picture: 'panel', touch: 'knob' }))).toMatchObject({ width: 800, height: 600 });
  });

  it('is made once for the same content, and again when the drawing was changed', async () => {
    let svg = SVG;
    const changing = createPictures(() => new Map([['panel', { ...only, svg }]]));
    const first = await changing.png({ picture: 'panel', touch: 'knob' });
    expect(await changing.png({ picture: 'panel', touch: 'knob' })).toBe(first);
    svg = SVG.replace('r="9"', 'r="12"');
    expect(await changing.png({ picture: 'panel', touch: 'knob' })).not.toEqual(first);
  });

  it('has its letters, from the font that comes with the program', () => {
    const lettered = (text: string) =>
      pngOf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><text x="5" y="20">${text}</text></svg>`);
    expect(lettered('PUMP')).not.toEqual(lettered(''));
    expect(lettered('PUMP')).not.toEqual(lettered('TEST'));
  });
});

describe('the drawings of the firm', () => {
  it('are at least forty, all of one size, and together under 500 KB', () => {
    expect(real.pictures.size).toBeGreaterThanOrEqual(40);
    const texts = [...real.pictures.values()].map(({ svg }) => svg);
    for (const svg of texts) expect(svg).toContain('viewBox="0 0 400 300"');
    expect(Buffer.byteLength(texts.join(''))).toBeLessThan(500 * 1024);
  });

  it('have every ring inside the picture', () => {
    const outside = [...real.pictures.values()].flatMap(({ name, svg }) =>
      svgElements(svg).flatMap(({ id, attributes }) => {
        const [x = 0, y = 0] = (attributes.get('data-ring') ?? '200 150 1').split(' ').map(Number);
        return x > 0 && x < 400 && y > 0 && y < 300 ? [] : [`${name}:${id}`];
      }),
    );
    expect(outside).toEqual([]);
  });

  it('show the pins of one answer whole and apart', () => {
    const clashing = contactSheet(real).flatMap(({ name, cells }) => {
      const pins = svgElements(real.pictures.get(name)?.svg ?? '').filter(({ attributes }) =>
        attributes.has('data-alone'),
      );
      return cells.flatMap(({ touch }) => {
        const ids = touch?.split(' ') ?? [];
        const rings = pins.flatMap((pin) => (ids.includes(pin.id ?? '') ? (ringOf(pin) ?? []) : []));
        const discs = rings.flatMap((ring) => ('r' in ring ? ring : []));
        const isCut = discs.some(({ cx, cy, r }) => Math.min(cx, cy, 400 - cx, 300 - cy) < r + RING);
        const isCovered = discs.some((one, i) =>
          discs
            .slice(i + 1)
            .some((other) => Math.hypot(one.cx - other.cx, one.cy - other.cy) < one.r + other.r + 2 * RING),
        );
        return isCut || isCovered ? [`${name}:${touch}`] : [];
      });
    });
    expect(clashing).toEqual([]);
  });

  it('can all be drawn as PNG', async () => {
    for (const picture of real.pictures.keys())
      expect(sizeOf(await realPictures.png({ picture, touch: null }))).toMatchObject({ width: 800, height: 600 });
  });

  it('stand on the contact sheet with each use, its words made safe', () => {
    const rows = contactSheet(real);
    expect(rows.map(({ name }) => name)).toEqual([...real.pictures.keys()].sort((a, b) => a.localeCompare(b)));
    const blade = rows.find(({ name }) => name === 'toilet-bench')?.cells.find(({ touch }) => touch === 'blade');
    expect(blade?.alts.join()).toMatch(/blade/);
    const html = contactSheetHtml(
      [{ name: 'a<b', cells: [{ touch: null, alts: ['1 & 2'] }] }],
      { svg: () => '<svg ></svg>' },
      'light',
    );
    expect(html).toContain('a&lt;b');
    expect(html).toContain('1 &amp; 2');
  });

  it('are written into a folder with both pages', async () => {
    const folder = join(tmpdir(), `drawings-${process.pid}`);
    const few = new Map([...real.pictures].slice(0, 2));
    try {
      expect(await writePictures({ ...real, pictures: few }, folder)).toBe(2);
      expect(readdirSync(folder)).toHaveLength(4);
      expect(readFileSync(join(folder, 'dark.html'), 'utf8')).toContain(INKS.dark.paper);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
