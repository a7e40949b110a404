import type { Context } from 'hono';
import type { Attachment, Line, PictureUse } from '../../src/index.ts';
import { type OpenedFile, typeOf, type Uploads } from './uploads.ts';

/** Fetches what came through another channel; null when it cannot. */
export type OpenElsewhere = (attachment: Attachment) => Promise<OpenedFile | null>;

/** Sends a file that was said along in these lines; anything else is not there. */
export async function sendFile(
  c: Context,
  name: string,
  lines: readonly Line[],
  from: { readonly uploads: Uploads; readonly elsewhere?: OpenElsewhere | undefined },
): Promise<Response> {
  const attachment = lines.flatMap(attachmentsIn).find((one) => 'file' in one && one.file === name);
  if (attachment === undefined) return c.notFound();
  const found = (await from.uploads.open(attachment)) ?? (await from.elsewhere?.(attachment)) ?? null;
  if (found === null) return c.notFound();
  const type = typeOf(found.bytes);
  return c.body(new Uint8Array(found.bytes), 200, {
    'Content-Type': type ?? 'application/octet-stream',
    'Content-Disposition': type === null || type === 'application/pdf' ? 'attachment' : 'inline',
    // Whatever the file is, it may do nothing on our address but be seen and heard.
    'Content-Security-Policy': "default-src 'none'; img-src 'self'; media-src 'self'; sandbox",
    'Cache-Control': 'private, max-age=86400',
  });
}

function attachmentsIn(line: Line): readonly Attachment[] {
  const replied = (line.reply?.blocks ?? []).flatMap((block) =>
    block.kind === 'attachment' ? [block.attachment] : [],
  );
  return [...(line.message?.attachments ?? []), ...replied];
}

/** The drawing that an address names: `:picture/:touch.light.svg`, without the touch when nothing is to be ringed. */
export function sendPicture(
  c: Context,
  pictureSvg: (use: Pick<PictureUse, 'picture' | 'touch'>, theme: 'light' | 'dark') => string | null,
): Response | Promise<Response> {
  const named = /^(.*)\.(light|dark)\.svg$/.exec(c.req.param('file') ?? '');
  const use = { picture: c.req.param('picture') ?? '', touch: named?.[1] || null };
  const svg = named === null ? null : pictureSvg(use, named[2] === 'dark' ? 'dark' : 'light');
  if (svg === null) return c.notFound();
  return c.body(svg, 200, { 'Content-Type': 'image/svg+xml', 'Cache-Control': 'public, max-age=3600' });
}
