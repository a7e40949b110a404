/**
 * Every colour of the pages, for light and for dark. Warm paper and spruce ink; marigold only ever as a fill that
 * spruce edges and spruce words stand on; red for danger alone. `PAIRS` says which stand on which, and the contrast
 * check holds each pair to its number.
 */
export type Theme = 'light' | 'dark';

export const COLOURS = {
  light: {
    paper: '#f4ecd8',
    sheet: '#fbf6e9',
    grass: '#dde2c0',
    plate: '#143229',
    onPlate: '#fbf3dd',
    ink: '#143229',
    quiet: '#31483e',
    rule: '#6b7964',
    marigold: '#f4ad22',
    onMarigold: '#143229',
    danger: '#8c100d',
    dangerEdge: '#8c100d',
    onDanger: '#ffffff',
    focus: '#143229',
  },
  dark: {
    paper: '#10201b',
    sheet: '#182b25',
    grass: '#1c3328',
    plate: '#0a1613',
    onPlate: '#f3e9d2',
    ink: '#f3e9d2',
    quiet: '#c3cdb9',
    rule: '#8a9f91',
    marigold: '#f0ad2e',
    onMarigold: '#10201b',
    danger: '#7c100d',
    dangerEdge: '#ffb0a4',
    onDanger: '#ffffff',
    focus: '#f3e9d2',
  },
} as const satisfies Record<Theme, Record<string, string>>;

export type ColourName = keyof (typeof COLOURS)['light'];

/** WCAG 2.2: 7:1 for text (1.4.6), 3:1 for shapes that carry meaning (1.4.11). */
export const PAIRS: readonly {
  readonly front: ColourName;
  readonly back: ColourName;
  readonly as: 'text' | 'shape';
}[] = [
  { front: 'ink', back: 'paper', as: 'text' },
  { front: 'ink', back: 'sheet', as: 'text' },
  { front: 'ink', back: 'grass', as: 'text' },
  { front: 'quiet', back: 'paper', as: 'text' },
  { front: 'quiet', back: 'sheet', as: 'text' },
  { front: 'quiet', back: 'grass', as: 'text' },
  { front: 'onPlate', back: 'plate', as: 'text' },
  { front: 'onMarigold', back: 'marigold', as: 'text' },
  { front: 'onDanger', back: 'danger', as: 'text' },
  { front: 'dangerEdge', back: 'paper', as: 'text' },
  { front: 'dangerEdge', back: 'sheet', as: 'text' },
  { front: 'dangerEdge', back: 'grass', as: 'text' },
  { front: 'rule', back: 'paper', as: 'shape' },
  { front: 'rule', back: 'sheet', as: 'shape' },
  { front: 'rule', back: 'grass', as: 'shape' },
  { front: 'marigold', back: 'plate', as: 'shape' },
  { front: 'focus', back: 'paper', as: 'shape' },
  { front: 'focus', back: 'sheet', as: 'shape' },
  { front: 'focus', back: 'grass', as: 'shape' },
];

/** `--ink: #143229; ...` */
function properties(theme: Theme): string {
  return Object.entries(COLOURS[theme])
    .map(([name, value]) => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}:${value}`)
    .join(';');
}

/** The tokens as custom properties, following the device. */
export const COLOUR_CSS = `:root{color-scheme:light dark;${properties('light')}}
@media (prefers-color-scheme:dark){:root{${properties('dark')}}}
`;
