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

/** The ring of a part: data-ring="cx cy r", in the drawing's own units; null when it tells none. */
export function ringOf(part: SvgElement): { cx: number; cy: number; r: number } | null {
  const [cx, cy, r, more] = (part.attributes.get('data-ring') ?? '').split(' ').map(Number);
  if (cx === undefined || cy === undefined || r === undefined || more !== undefined) return null;
  return [cx, cy, r].every(Number.isFinite) && r > 0 ? { cx, cy, r } : null;
}
