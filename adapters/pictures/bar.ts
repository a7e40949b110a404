import { type Bar, INKS, type Inks } from '../../src/index.ts';
import type { Theme } from './touched.ts';

const LEFT = 12;
const WIDE = 376;
const TOP = 44;
const HIGH = 36;
/** Lettering of 22 on a drawing 400 wide is 18 pixels on a phone's page. */
const LETTER = 22;
const ROW = 30;

/**
 * What is used against what there is: parts told apart by tone and hatching, never by hue, the limit a tall stroke, and
 * all past it hatched. The figures stand beneath, numbered as the parts are.
 */
export function barSvg(bar: Bar, theme: Theme): string {
  return drawn(bar, INKS[theme]);
}

/**
 * The same to stand in a page: its inks are the page's custom properties of {@link BAR_INKS_CSS}, which follow the device.
 *
 * @param alt What it shows, in words.
 */
export function barInPage(bar: Bar, alt: string): string {
  const inks: Inks = {
    paper: 'var(--bar-paper)',
    ink: 'var(--bar-ink)',
    tone: 'var(--bar-tone)',
    part: 'var(--bar-part)',
    marigold: 'var(--bar-marigold)',
    danger: 'var(--bar-danger)',
  };
  return drawn(bar, inks).replace('<svg ', `<svg role="img" aria-label="${escaped(alt).replace(/"/g, '&quot;')}" `);
}

function inkProperties(theme: Theme): string {
  return Object.entries(INKS[theme])
    .map(([name, value]) => `--bar-${name}:${value}`)
    .join(';');
}

/** The drawings' inks as custom properties, for a bar that stands in a page. */
export const BAR_INKS_CSS = `.sum{${inkProperties('light')}}\n@media (prefers-color-scheme:dark){.sum{${inkProperties('dark')}}}\n`;

function drawn(bar: Bar, { paper, ink, tone, part, marigold }: Inks): string {
  const used = bar.segments.reduce((sum, { amount }) => sum + Math.max(0, amount), 0);
  const most = Math.max(used, bar.limit, Number.MIN_VALUE);
  const at = (amount: number) => Math.round((LEFT + (amount / most) * WIDE) * 10) / 10;
  const limit = at(bar.limit);
  let from = 0;
  const segments = bar.segments.map(({ amount }, i) => {
    const x = at(from);
    from += Math.max(0, amount);
    const width = Math.round((at(from) - x) * 10) / 10;
    const number = width < LETTER ? '' : lettered(x + 6, TOP + HIGH / 2 + 8, `${i + 1}`, ink, 'start');
    return `<rect x="${x}" y="${TOP}" width="${width}" height="${HIGH}" fill="${i % 2 === 0 ? part : tone}" stroke="${ink}" stroke-width="2"/>${number}`;
  });
  const over =
    used > bar.limit
      ? `<path d="${hatched(limit, LEFT + WIDE)}" fill="none" stroke="${ink}" stroke-width="1"/><path d="M${limit} ${TOP + HIGH + 8}l-7 12h14z" fill="${marigold}" stroke="${INKS.light.ink}" stroke-width="2"/>`
      : '';
  const lines = [
    ...bar.segments.map(({ label, amount }, i): [string, string] => [`${i + 1}  ${label}`, figure(amount, bar.unit)]),
    ['Together', figure(used, bar.unit)] as const,
    ['There is', figure(bar.limit, bar.unit)] as const,
  ];
  const first = TOP + HIGH + 48;
  const table = lines.map(([label, amount], i) => {
    const y = first + i * ROW;
    return lettered(LEFT, y, label, ink, 'start') + lettered(LEFT + WIDE, y, amount, ink, 'end');
  });
  const rule = first + bar.segments.length * ROW - 22;
  const height = first + lines.length * ROW - 16;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 ${height}"><rect width="400" height="${height}" fill="${paper}"/>`,
    lettered(LEFT, 28, bar.title, ink, 'start'),
    `<rect x="${LEFT}" y="${TOP}" width="${limit - LEFT}" height="${HIGH}" fill="${paper}" stroke="${ink}" stroke-width="2"/>`,
    ...segments,
    over,
    `<path d="M${limit} ${TOP - 7}v${HIGH + 14}" stroke="${ink}" stroke-width="4"/>`,
    `<path d="M${LEFT} ${rule}h${WIDE}" stroke="${ink}" stroke-width="1"/>`,
    ...table,
    '</svg>',
  ].join('');
}

function lettered(x: number, y: number, text: string, ink: string, anchor: 'start' | 'end'): string {
  return `<text x="${x}" y="${y}" font-family="Atkinson Hyperlegible, sans-serif" font-weight="700" font-size="${LETTER}" fill="${ink}" text-anchor="${anchor}">${escaped(text)}</text>`;
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
}

function figure(amount: number, unit: string): string {
  const rounded = amount >= 100 ? Math.round(amount) : Math.round(amount * 10) / 10;
  return `${rounded.toLocaleString('en-GB')} ${unit}`;
}

/** Slanted strokes between two places of the bar. */
function hatched(from: number, to: number): string {
  let path = '';
  for (let x = from + 4; x < to; x += 9) path += `M${x} ${TOP + HIGH}l${Math.min(10, to - x)} -${HIGH}`;
  return path;
}
