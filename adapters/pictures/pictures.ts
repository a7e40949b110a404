import { createHash } from 'node:crypto';
import type { Bar, Picture, PictureUse } from '../../src/index.ts';
import { barSvg } from './bar.ts';
import { pngOf } from './png.ts';
import { type Theme, touched } from './touched.ts';

/** The firm's drawings, ready to be shown. */
export type Pictures = {
  /** SVG with the part to touch ringed; null when there is no such drawing. */
  readonly svg: (use: Pick<PictureUse, 'picture' | 'touch'>, theme: Theme) => string | null;
  /** The same as a PNG of 800 pixels' width, in light colours; rejects when there is no such drawing. */
  readonly png: (use: Pick<PictureUse, 'picture' | 'touch'>) => Promise<Buffer>;
  /** The small picture of a sum, in the drawings' hand. */
  readonly barSvg: (bar: Bar, theme: Theme) => string;
  readonly barPng: (bar: Bar) => Promise<Buffer>;
};

/** Some 30 KB each: the whole house's drawings with their rings fit. */
const MOST_KEPT = 400;

/** @param drawings The drawings being served, by name; asked each time, because the graph may be edited. */
export function createPictures(drawings: () => ReadonlyMap<string, Picture>): Pictures {
  const kept = new Map<string, Buffer>();
  const svg: Pictures['svg'] = ({ picture, touch }, theme) => {
    const drawing = drawings().get(picture);
    return drawing === undefined ? null : touched(drawing.svg, touch, theme);
  };
  const png = (text: string): Buffer => {
    const name = createHash('sha256').update(text).digest('hex');
    const made = kept.get(name) ?? pngOf(text);
    kept.delete(name);
    kept.set(name, made);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return made;
  };
  return {
    svg,
    png: async (use) => {
      const text = svg(use, 'light');
      if (text === null) throw new Error(`no drawing '${use.picture}'`);
      return png(text);
    },
    barSvg,
    barPng: async (bar) => png(barSvg(bar, 'light')),
  };
}
