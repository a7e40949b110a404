/** An element of a drawing as it is written, with what it takes from the groups it stands in. */
export type SvgElement = {
  readonly tag: string;
  readonly id: string | null;
  /** Its own attributes, and fill and stroke of the groups round it where it has none. */
  readonly attributes: ReadonlyMap<string, string>;
  /** Where its text begins and ends in the file. */
  readonly start: number;
  readonly end: number;
  /** The words straight inside it. */
  readonly text: string;
  /** Whether it or a group round it is moved by a transform. */
  readonly moved: boolean;
};

const INHERITED = ['fill', 'stroke'];

type Open = { -readonly [Key in keyof SvgElement]: SvgElement[Key] };

/** The elements of a drawing in the order they begin. Drawings are plain: no comments, CDATA or scripts. */
export function svgElements(svg: string): readonly SvgElement[] {
  const found: Open[] = [];
  const open: Open[] = [];
  for (const match of svg.matchAll(/<(\/?)([a-zA-Z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>([^<]*)/g)) {
    const [whole, closing, tag = '', written = '', alone, text = ''] = match;
    const end = match.index + whole.length - text.length;
    if (closing === '/') {
      const last = open.pop();
      if (last !== undefined) last.end = end;
      continue;
    }
    const round = open.at(-1);
    const own = [...written.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value] as const);
    const inherited = [...(round?.attributes ?? [])].filter(([key]) => INHERITED.includes(key));
    const attributes = new Map([...inherited, ...own]);
    const element: Open = {
      tag,
      id: own.find(([key]) => key === 'id')?.[1] ?? null,
      attributes,
      start: match.index,
      end,
      text: alone === '/' ? '' : text.trim(),
      moved: (round?.moved ?? false) || own.some(([key]) => key === 'transform'),
    };
    found.push(element);
    if (alone !== '/') open.push(element);
  }
  return found;
}

/** Where the ring of a part runs, in the drawing's own units: a circle, or a box with round corners round what is long. */
export type Ring =
  | { readonly cx: number; readonly cy: number; readonly r: number }
  | { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** The ring of a part: data-ring="cx cy r", or data-ring="x y width height"; null when it tells none. */
export function ringOf(part: SvgElement): Ring | null {
  const told = (part.attributes.get('data-ring') ?? '').split(' ').map(Number);
  if (!told.every(Number.isFinite)) return null;
  const [x = 0, y = 0, width = 0, height = 0] = told;
  if (told.length === 3) return width > 0 ? { cx: x, cy: y, r: width } : null;
  return told.length === 4 && width > 0 && height > 0 ? { x, y, width, height } : null;
}
