/// <reference lib="dom" />

import { type Inks, SIGN_FACE } from './picture-inks.ts';

const PX = 14;
const LINE = 16;
const MOST_LINES = 3;
const PAD = 4;

/** The names under the discs, each broken into lines once for every width. */
export function createLabels(): (
  pen: CanvasRenderingContext2D,
  name: string,
  at: { readonly x: number; readonly y: number; readonly below: number; readonly wide: number },
  inks: Inks,
  strong: boolean,
) => void {
  const broken = new Map<string, { readonly wide: number; readonly lines: readonly string[] }>();

  const linesOf = (pen: CanvasRenderingContext2D, name: string, wide: number): readonly string[] => {
    const known = broken.get(name);
    if (known !== undefined && Math.abs(known.wide - wide) < 2) return known.lines;
    const lines: string[] = [];
    for (const word of name.split(' ')) {
      const longer = `${lines.at(-1) ?? ''} ${word}`.trim();
      if (lines.length > 0 && pen.measureText(longer).width <= wide) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    const shown =
      lines.length <= MOST_LINES ? lines : [...lines.slice(0, MOST_LINES - 1), `${lines[MOST_LINES - 1]} …`];
    broken.set(name, { wide, lines: shown });
    return shown;
  };

  return (pen, name, { x, y, below, wide }, inks, strong) => {
    pen.font = `${strong ? 700 : 400} ${PX}px ${SIGN_FACE}`;
    pen.textAlign = 'center';
    pen.textBaseline = 'top';
    const lines = linesOf(pen, name, wide);
    const top = y + below + PAD;
    if (strong) {
      const across = Math.max(...lines.map((line) => pen.measureText(line).width)) + 2 * PAD;
      pen.fillStyle = inks.sheet;
      pen.strokeStyle = inks.ink;
      pen.lineWidth = 1.5;
      pen.beginPath();
      pen.roundRect(x - across / 2, top - PAD / 2, across, lines.length * LINE + PAD, 4);
      pen.fill();
      pen.stroke();
    }
    pen.fillStyle = inks.ink;
    for (const [i, line] of lines.entries()) pen.fillText(line, x, top + i * LINE);
  };
}
