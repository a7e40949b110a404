import { INKS, type Inks, ringOf, type SvgElement, svgElements } from '../../src/index.ts';

export type Theme = 'light' | 'dark';

/**
 * A drawing in the inks of a theme, with the part to touch standing on a marigold disc inside a ring. The disc lies
 * under every part, so that it hides none of them; the part itself keeps its light inks, since light lines on marigold
 * cannot be told apart.
 *
 * @param touch Id of the part; null, or a part without a ring, leaves the drawing as it is.
 */
export function touched(svg: string, touch: string | null, theme: Theme): string {
  const parts = svgElements(svg).filter((element) => element.attributes.has('data-ring'));
  const part = parts.find(({ id }) => id === touch);
  const ring = part === undefined ? null : ringOf(part);
  const [first] = parts;
  if (part === undefined || ring === null || first === undefined) return inked(svg, INKS[theme]);
  const { cx, cy, r } = ring;
  const bare = 'fill="none" stroke-width="3"';
  const disc = `<circle cx="${cx}" cy="${cy}" r="${r}" fill="${INKS[theme].marigold}" stroke="none"/>`;
  const inner = `<circle cx="${cx}" cy="${cy}" r="${r + 1.5}" ${bare} stroke="${INKS.light.ink}"/>`;
  const outer = `<circle cx="${cx}" cy="${cy}" r="${r + 4}" ${bare} stroke="${INKS[theme].ink}"/>`;
  const before = `${svg.slice(0, first.start)}${disc}${svg.slice(first.start, part.start)}`;
  const after = svg.slice(part.end).replace(/<\/svg>\s*$/, `${inner}${outer}</svg>`);
  return `${inked(before, INKS[theme])}${inked(standing(svg, part), INKS.light)}${inked(after, INKS[theme])}`;
}

/** The part with the colours it inherits written on it, so that they can be changed apart from those round it. */
function standing(svg: string, part: SvgElement): string {
  const inherited = ['fill', 'stroke'].flatMap((name) => {
    const value = part.attributes.get(name);
    return value === undefined ? [] : [` ${name}="${value}"`];
  });
  return `<g${inherited.join('')}>${svg.slice(part.start, part.end)}</g>`;
}

function inked(svg: string, inks: Inks): string {
  return svg.replace(/var\(--([a-z]+)\)/g, (whole, name: string) => inks[name as keyof Inks] ?? whole);
}
