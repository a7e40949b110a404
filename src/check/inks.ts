/**
 * The inks of the drawings, by the names drawings use: var(--ink) and so on. They are the pages' own colours; `part` is
 * the flat tone of the part meant, `tone` that of what stands round it. Marigold is only ever a fill.
 */
export type InkName = 'paper' | 'ink' | 'tone' | 'part' | 'marigold' | 'danger';
export type Inks = Readonly<Record<InkName, string>>;

export const INKS: Readonly<Record<'light' | 'dark', Inks>> = {
  light: {
    paper: '#fbf6e9',
    ink: '#143229',
    tone: '#e6dfc8',
    part: '#c3d3bb',
    marigold: '#f4ad22',
    danger: '#8c100d',
  },
  dark: {
    paper: '#182b25',
    ink: '#f3e9d2',
    tone: '#24392f',
    part: '#3c5a4d',
    marigold: '#f0ad2e',
    danger: '#ffb0a4',
  },
};

/** 'var(--ink)' names 'ink'; anything else names none. */
export function inkNamed(value: string): InkName | null {
  const name = /^var\(--([a-z]+)\)$/.exec(value)?.[1] ?? '';
  return name in INKS.light ? (name as InkName) : null;
}

/** The lower of the contrasts of two inks in light and in dark, by WCAG 2.2: 1 (none) to 21. */
export function inkContrast(a: InkName, b: InkName): number {
  return Math.min(...(['light', 'dark'] as const).map((theme) => contrast(INKS[theme][a], INKS[theme][b])));
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** Relative luminance of '#rrggbb', 0 to 1. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
