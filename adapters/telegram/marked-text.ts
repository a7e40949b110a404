/**
 * A stretch of text in one style. A marked text is a list of them: entities never nest and can be cut anywhere. `user`: the
 * account that the app tells of it, whatever they have muted.
 */
export type Run = { readonly text: string; readonly bold: boolean; readonly user?: number };
export type MarkedText = readonly Run[];

export const plain = (text: string): Run => ({ text, bold: false });
export const bold = (text: string): Run => ({ text, bold: true });

export const mention = (text: string, user: number): Run => ({ text, bold: false, user });

export function textOf(marked: MarkedText): string {
  return marked.map((run) => run.text).join('');
}

/** For Telegram's HTML (https://core.telegram.org/bots/api#html-style): `<`, `>` and `&` must be entities. */
export function htmlOf(marked: MarkedText): string {
  return marked.map(runHtml).join('');
}

function runHtml({ text, bold, user }: Run): string {
  if (text !== '' && user !== undefined) return `<a href="tg://user?id=${user}">${escapeHtml(text)}</a>`;
  return text !== '' && bold ? `<b>${escapeHtml(text)}</b>` : escapeHtml(text);
}

function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** Enough to see whole any sign that begins before the cut. */
const LOOK_AHEAD = 64;

/**
 * Cuts a text into pieces of at most `most` UTF-16 units, at a paragraph's end if one is near, else at a sentence's,
 * else between words, else between two signs as people see them. Nothing is lost but blank space around a cut and at
 * the ends, which Telegram takes away as well; pieces without anything to see are left out, as Telegram refuses them.
 */
export function splitMarked(marked: MarkedText, most: number): readonly MarkedText[] {
  const text = textOf(marked);
  const pieces: MarkedText[] = [];
  let from = 0;
  while (from < text.length) {
    from += blankLength(text.slice(from));
    const to = from + cutAt(text.slice(from, from + most + LOOK_AHEAD), most);
    const piece = slice(marked, from, from + text.slice(from, to).trimEnd().length);
    if (piece.length > 0) pieces.push(piece);
    from = to;
  }
  return pieces;
}

function blankLength(text: string): number {
  return text.length - text.trimStart().length;
}

/** Where a piece that may have `most` units ends. */
function cutAt(text: string, most: number): number {
  if (text.length <= most) return text.length;
  return (
    lastEnd(text, /\S(?=[^\S\n]*\n[^\S\n]*\n)/g, most / 2, most) ??
    lastEnd(text, /[.!?…]["'”’)]*(?=\s)|\S(?=[^\S\n]*\n)/g, most / 4, most) ??
    lastEnd(text, /\S(?=\s)/g, most / 4, most) ??
    lastSign(text, most)
  );
}

/** The end of the last match that leaves a piece of `least` to `most` units. */
function lastEnd(text: string, pattern: RegExp, least: number, most: number): number | null {
  let end: number | null = null;
  for (const match of text.matchAll(pattern)) {
    const at = match.index + match[0].length;
    if (at > most) break;
    if (at >= least) end = at;
  }
  return end;
}

const signs = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** One sign (an emoji of many parts, a letter with accents) stays whole, unless it alone is longer than a piece. */
function lastSign(text: string, most: number): number {
  let end = 0;
  for (const { index, segment } of signs.segment(text)) {
    if (index + segment.length > most) break;
    end = index + segment.length;
  }
  if (end > 0) return end;
  const code = text.charCodeAt(most - 1);
  const cutsPair = most > 1 && code >= 0xd800 && code <= 0xdbff;
  return cutsPair ? most - 1 : most;
}

function slice(marked: MarkedText, from: number, to: number): MarkedText {
  const runs: Run[] = [];
  let at = 0;
  for (const run of marked) {
    const text = run.text.slice(Math.max(0, from - at), Math.max(0, to - at));
    if (text !== '') runs.push({ ...run, text });
    at += run.text.length;
  }
  return runs;
}
