import type { Context } from 'hono';
import type { Line, PictureUse } from '../../src/index.ts';
import type { Uploads } from './uploads.ts';

type Opened = { readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string };

/**
 * Sends a file that was said along in these lines; anything else is not there. `elsewhere` opens what another channel
 * brought.
 */
export async function sendFile(
  c: Context,
  name: string,
  lines: readonly Line[],
  from: { readonly uploads: Uploads; readonly elsewhere?: ((file: string) => Promise<Opened | null>) | undefined },
): Promise<Response> {
  if (!lines.some((line) => filesIn(line).includes(name))) return c.notFound();
  const found = (await from.uploads.read(name)) ?? (await from.elsewhere?.(name)) ?? null;
  if (found === null) return c.notFound();
  return c.body(found.bytes, 200, {
    'Content-Type': found.type,
    // Whatever the file is, it may do nothing on our address.
    'Content-Security-Policy': "default-src 'none'; sandbox",
    'Cache-Control': 'private, max-age=86400',
  });
}

function filesIn(line: Line): readonly string[] {
  const replied = (line.reply?.blocks ?? []).flatMap((block) =>
    block.kind === 'attachment' ? [block.attachment] : [],
  );
  return [...(line.message?.attachments ?? []), ...replied].flatMap((one) => ('file' in one ? [one.file] : []));
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
