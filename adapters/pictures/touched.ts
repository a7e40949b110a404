import { INKS, type Inks, type Ring, ringOf, type SvgElement, svgElements } from '../../src/index.ts';

export type Theme = 'light' | 'dark';

/** The part to touch: a paler marigold, so that it is told from the disc and still warm where it is larger than that. */
const MEANT: Inks = { ...INKS.light, part: '#ffdc94' };

/** Width of the drawings' outlines, and what the light edge round a part to touch adds to it in the dark. */
const OUTLINE = 2;
const EDGE = 3;

/** How round the corners of a ring are that is a box. */
const CORNER = 14;

/** A shape of a part that stands on the paper beside its disc, such as an arrow: it keeps the theme's inks. */
const OFF_THE_DISC = /<\w+ data-off="yes"[^>]*>/g;

/**
 * A drawing in the inks of a theme, with each part to touch standing on a marigold disc inside a ring. The discs lie
 * under every part, so that they hide none; the parts to touch are in dark lines in both themes, since light lines on
 * marigold cannot be told apart. Parts marked data-alone (the pins on a plan) are left out unless they are the ones to touch.
 *
 * @param touch Ids of parts, apart by a space; null, or parts without rings, leave the drawing without a ring.
 */
export function touched(svg: string, touch: string | null, theme: Theme): string {
  const names = touch?.split(' ') ?? [];
  const parts = svgElements(svg).filter(({ attributes }) => attributes.has('data-ring'));
  const meant = parts.filter(({ id }) => id !== null && names.includes(id));
  const [first] = parts;
  if (first === undefined) return inked(svg, INKS[theme]);
  const rings = meant.flatMap((part) => ringOf(part) ?? []);
  const marigold = INKS[theme].marigold;
  const discs = rings.map((ring) => `<${round(ring)} fill="${marigold}" stroke="none"/>`);
  let drawn = inked(svg.slice(0, first.start), INKS[theme]) + discs.join('');
  let at = first.start;
  for (const part of parts) {
    const isMeant = meant.includes(part);
    if (part.start < at || (!isMeant && !part.attributes.has('data-alone'))) continue;
    drawn += inked(svg.slice(at, part.start), INKS[theme]);
    if (isMeant) drawn += (theme === 'dark' ? edged(svg, part) : '') + inked(standing(svg, part, theme), MEANT);
    at = part.end;
  }
  drawn += inked(svg.slice(at), INKS[theme]);
  return drawn.replace(/<\/svg>\s*$/, `${rings.map((ring) => ringed(ring, theme)).join('')}</svg>`);
}

/** Spruce against the disc, and the theme's ink against the paper: one dark ring in light, a dark and a light one in dark. */
function ringed(ring: Ring, theme: Theme): string {
  const line = (more: number, ink: string) => `<${round(ring, more)} fill="none" stroke="${ink}" stroke-width="3"/>`;
  return line(1.5, INKS.light.ink) + line(4, INKS[theme].ink);
}

/** The shape of a ring, wider by so much on every side. */
function round(ring: Ring, more = 0): string {
  if ('r' in ring) return `circle cx="${ring.cx}" cy="${ring.cy}" r="${ring.r + more}"`;
  const { x, y, width, height } = ring;
  return `rect x="${x - more}" y="${y - more}" width="${width + 2 * more}" height="${height + 2 * more}" rx="${CORNER + more}"`;
}

/** The part in light lines, wider than its own: what of it stands off its disc keeps an edge on dark paper. */
function edged(svg: string, part: SvgElement): string {
  const wider = svg
    .slice(part.start, part.end)
    .replace(OFF_THE_DISC, '')
    .replace(/<text[^>]*>[^<]*<\/text>| (?:id|data-\w+|fill)="[^"]*"/g, '')
    .replace(/ stroke="var\(--[a-z]+\)"/g, '')
    .replace(/ stroke-width="([\d.]+)"/g, (_, width: string) => ` stroke-width="${Number(width) + EDGE}"`);
  return `<g fill="none" stroke="${INKS.dark.ink}" stroke-width="${OUTLINE + EDGE}">${wider}</g>`;
}

/** The part with the colours it inherits written round it, so that they can be changed apart from its neighbours'. */
function standing(svg: string, part: SvgElement, theme: Theme): string {
  const inherited = ['fill', 'stroke'].flatMap((name) => {
    const value = part.attributes.get(name);
    return value === undefined ? [] : [` ${name}="${value}"`];
  });
  const drawn = svg.slice(part.start, part.end).replace(OFF_THE_DISC, (shape) => inked(shape, INKS[theme]));
  return `<g${inherited.join('')}>${drawn}</g>`;
}

function inked(svg: string, inks: Inks): string {
  return svg.replace(/var\(--([a-z]+)\)/g, (whole, name: string) => inks[name as keyof Inks] ?? whole);
}
