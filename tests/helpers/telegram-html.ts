/** A text as the server keeps it, and what its marks cover: offsets and lengths in UTF-16 units. */
export type Marked = {
  readonly text: string;
  readonly entities: readonly { readonly type: string; readonly offset: number; readonly length: number }[];
};

const TYPES: Readonly<Record<string, string>> = {
  b: 'bold',
  strong: 'bold',
  i: 'italic',
  em: 'italic',
  u: 'underline',
  ins: 'underline',
  s: 'strikethrough',
  strike: 'strikethrough',
  del: 'strikethrough',
  code: 'code',
  pre: 'pre',
  a: 'text_link',
  blockquote: 'blockquote',
  'tg-spoiler': 'spoiler',
};
const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };

/**
 * Reads HTML as the Bot API says it does: a few tags, four named entities, numeric ones
 * (https://core.telegram.org/bots/api#html-style). Anything else is refused with a 400, as there.
 *
 * @throws Error with the server's kind of words.
 */
export function parseHtml(html: string): Marked {
  let text = '';
  const open: { tag: string; offset: number }[] = [];
  const entities: { type: string; offset: number; length: number }[] = [];
  let at = 0;
  while (at < html.length) {
    const char = html[at] as string;
    if (char === '<') {
      const end = html.indexOf('>', at);
      if (end < 0) throw new Error(`can't parse entities: Unclosed start tag at byte offset ${at}`);
      const inside = html.slice(at + 1, end);
      const closing = inside.startsWith('/');
      const tag = (closing ? inside.slice(1) : inside).split(/\s/)[0]?.toLowerCase() ?? '';
      const type = TYPES[tag];
      if (type === undefined)
        throw new Error(`can't parse entities: Unsupported start tag "${tag}" at byte offset ${at}`);
      if (!closing) open.push({ tag, offset: text.length });
      else {
        const last = open.pop();
        if (last?.tag !== tag) throw new Error(`can't parse entities: Unmatched end tag at byte offset ${at}`);
        if (text.length > last.offset) entities.push({ type, offset: last.offset, length: text.length - last.offset });
      }
      at = end + 1;
    } else if (char === '&') {
      const match = /^&(?:#(\d+)|#x([0-9a-f]+)|([a-z]+));/i.exec(html.slice(at, at + 12));
      const named = match?.[3] === undefined ? undefined : NAMED[match[3]];
      if (match === null || (match[3] !== undefined && named === undefined)) {
        text += '&';
        at += 1;
      } else {
        text +=
          named ??
          String.fromCodePoint(match[1] === undefined ? Number.parseInt(match[2] ?? '', 16) : Number(match[1]));
        at += match[0].length;
      }
    } else {
      text += char;
      at += 1;
    }
  }
  if (open.length > 0)
    throw new Error(`can't parse entities: Can't find end tag corresponding to start tag "${open[0]?.tag}"`);
  return { text, entities };
}
