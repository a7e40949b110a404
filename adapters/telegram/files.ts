import type { Api } from 'grammy';
import type { Attachment } from '../../src/index.ts';
import { readHandle } from './file-handle.ts';
import type { OpenedFile } from './send.ts';

/**
 * Fetches what a person sent over Telegram (https://core.telegram.org/bots/api#getfile: up to 20 MB, the link holds for an
 * hour, so it is asked for each time).
 *
 * @param root Where files are fetched from, token included.
 * @returns    Null when the handle is not ours, has no file, or Telegram will not give it.
 */
export async function openFile(api: Api, root: string, attachment: Attachment): Promise<OpenedFile | null> {
  if (attachment.kind === 'location' || attachment.kind === 'contact') return null;
  const handle = readHandle(attachment.file);
  if (handle === null || handle.way === 'copy') return null;
  try {
    const { file_path: path } = await api.raw.getFile({ file_id: handle.fileId });
    if (path === undefined) return null;
    const response = await fetch(`${root}/${path}`);
    if (!response.ok) return null;
    const name = attachment.name ?? path.split('/').at(-1) ?? attachment.kind;
    return { bytes: new Uint8Array(await response.arrayBuffer()), name };
  } catch {
    return null;
  }
}
