import { createHash } from 'node:crypto';
import { Resvg } from '@resvg/resvg-js';
import type { Picture, PictureUse } from '../../src/index.ts';
import { INKS, type Inks } from './inks.ts';

export type Theme = 'light' | 'dark';

/** The firm's drawings, ready to be shown. */
export type Pictures = {
  /** Inline SVG with the part to touch ringed; null when there is no such drawing. */
  readonly svg: (use: Pick<PictureUse, 'picture' | 'touch'>, theme: Theme) => string | null;
  /** The same as a PNG of 800 pixels' width, in light colours; rejects when there is no such drawing. */
  readonly png: (use: Pick<PictureUse, 'picture' | 'touch'>) => Promise<Buffer>;
};

const PNG_WIDTH = 800;
const MOST_KEPT = 200;

/** @param drawings The drawings being served, by name; asked each time, because the graph may be edited. */
export function createPictures(drawings: () => ReadonlyMap<string, Picture>): Pictures {
  const kept = new Map<string, Buffer>();
  const svg: Pictures['svg'] = ({ picture, touch }, theme) => {
    const drawing = drawings().get(picture);
    return drawing === undefined ? null : drawn(drawing, touch, INKS[theme]);
  };
  return {
    svg,
    png: async (use) => {
      const text = svg(use, 'light');
      if (text === null) throw new Error(`no drawing '${use.picture}'`);
      const name = createHash('sha256').update(text).digest('hex');
      const found = kept.get(name);
      if (found !== undefined) return found;
      const png = Buffer.from(new Resvg(text, { fitTo: { mode: 'width', value: PNG_WIDTH }, background: INKS.light.paper }).render().asPng());
      kept.set(name, png);
      if (kept.size > MOST_KEPT) kept.delete([...kept.keys()][0] ?? '');
      return png;
    },
  };
}

/**
 * A drawing in its inks, with a ring round the part to touch. Drawings name their colours as var(--ink) and the like,
 * and tell where the ring of a part goes by data-ring="cx cy r" on the part.
 */
function drawn({ svg }: Picture, touch: string | null, inks: Inks): string {
  const coloured = svg.replace(/var\(--([a-z]+)\)/g, (whole, name: string) => inks[name as keyof Inks] ?? whole);
  const ring = touch === null ? null : ringOf(svg, touch);
  if (ring === null) return coloured;
  const [cx, cy, r] = ring;
  const disc = `<circle cx="${cx}" cy="${cy}" r="${r}" fill="${inks.marigold}" fill-opacity="0.35" stroke="${inks.marigold}" stroke-width="10"/><circle cx="${cx}" cy="${cy}" r="${Number(r) + 6}" fill="none" stroke="${inks.ring}" stroke-width="3"/>`;
  return coloured.replace(/<\/svg>\s*$/, `${disc}</svg>`);
}

function ringOf(svg: string, touch: string): [string, string, string] | null {
  const part = [...svg.matchAll(/<[a-z]+\s[^>]*>/g)].map(([tag]) => tag).find((tag) => tag.includes(`id="${touch}"`));
  const found = part === undefined ? null : /data-ring="([\d.]+) ([\d.]+) ([\d.]+)"/.exec(part);
  return found === null ? null : [found[1] ?? '', found[2] ?? '', found[3] ?? ''];
}
