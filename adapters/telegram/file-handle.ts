/**
 * The channel's own handle of something a person sent: which call sends it again, and its file id; or, for what has no
 * file (a poll), the message to copy. Written 'tg:photo:FILE_ID' and 'tg:copy:CHAT:MESSAGE'.
 */
export type FileHandle =
  | { readonly way: FileWay; readonly fileId: string }
  | { readonly way: 'copy'; readonly chat: number; readonly message: number };

export const FILE_WAYS = [
  'photo',
  'voice',
  'audio',
  'video',
  'video_note',
  'animation',
  'sticker',
  'document',
] as const;
export type FileWay = (typeof FILE_WAYS)[number];

export function fileHandle(way: FileWay, fileId: string): string {
  return `tg:${way}:${fileId}`;
}

export function copyHandle(chat: number, message: number): string {
  return `tg:copy:${chat}:${message}`;
}

/** Null when the handle is another channel's. */
export function readHandle(file: string): FileHandle | null {
  const match = /^tg:(\w+):(.+)$/s.exec(file);
  const [way, rest] = [match?.[1], match?.[2]];
  if (way === undefined || rest === undefined) return null;
  if (way === 'copy') {
    const [chat, message] = rest.split(':').map(Number);
    return Number.isSafeInteger(chat) && Number.isSafeInteger(message)
      ? { way: 'copy', chat: chat as number, message: message as number }
      : null;
  }
  const known = FILE_WAYS.find((each) => each === way);
  return known === undefined ? null : { way: known, fileId: rest };
}
