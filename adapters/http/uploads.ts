import { randomBytes } from 'node:crypto';
import { mkdir, open, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import type { Attachment } from '../../src/index.ts';

export const MOST_FILE_BYTES = 10 * 1024 * 1024;

export type Kept =
  | {
      readonly kind: 'kept';
      readonly attachment: 'photo' | 'voice' | 'video' | 'file';
      readonly file: string;
      readonly type: string;
    }
  | { readonly kind: 'too-big'; readonly mostBytes: number }
  | { readonly kind: 'not-ours-to-open' }
  | { readonly kind: 'empty' };

/** Photos, videos, sound and papers that people send, as files in the data folder under names of our own. */
export type Uploads = {
  /** Resolves when the bytes are on the disk. */
  readonly keep: (bytes: Uint8Array) => Promise<Kept>;
  /** Null for a name that is not ours or not there. */
  readonly read: (file: string) => Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string } | null>;
  /** The same for another channel that sends the thing on. */
  readonly open: (attachment: Attachment) => Promise<OpenedFile | null>;
};

/** What one channel hands to another of something that a person sent. */
export type OpenedFile = { readonly bytes: Uint8Array; readonly name: string };

type Signature = {
  readonly ending: string;
  readonly type: string;
  readonly as: 'photo' | 'voice' | 'video' | 'file';
  readonly fits: (bytes: Uint8Array) => boolean;
};

/**
 * What the first bytes say: the sender's word for the type is not trusted. Signatures as the formats publish them; the
 * first that fits counts, so the boxes of one family ('ftyp') stand from the narrowest to the widest.
 */
const SIGNATURES: readonly Signature[] = [
  { ending: 'jpg', type: 'image/jpeg', as: 'photo', fits: (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff },
  { ending: 'png', type: 'image/png', as: 'photo', fits: (b) => ascii(b, 1, 3) === 'PNG' && b[0] === 0x89 },
  { ending: 'gif', type: 'image/gif', as: 'photo', fits: (b) => ascii(b, 0, 4) === 'GIF8' },
  {
    ending: 'webp',
    type: 'image/webp',
    as: 'photo',
    fits: (b) => ascii(b, 0, 4) === 'RIFF' && ascii(b, 8, 4) === 'WEBP',
  },
  { ending: 'avif', type: 'image/avif', as: 'photo', fits: (b) => ascii(b, 4, 8) === 'ftypavif' },
  { ending: 'heic', type: 'image/heic', as: 'photo', fits: (b) => /^ftyp(heic|heix|mif1|msf1)$/.test(ascii(b, 4, 8)) },
  { ending: 'm4a', type: 'audio/mp4', as: 'voice', fits: (b) => ascii(b, 4, 7) === 'ftypM4A' },
  { ending: 'mov', type: 'video/quicktime', as: 'video', fits: (b) => ascii(b, 4, 6) === 'ftypqt' },
  { ending: 'mp4', type: 'video/mp4', as: 'video', fits: (b) => ascii(b, 4, 4) === 'ftyp' },
  {
    ending: 'webm',
    type: 'video/webm',
    as: 'video',
    fits: (b) => b[0] === 0x1a && ascii(b, 1, 1) === 'E' && b[2] === 0xdf && b[3] === 0xa3,
  },
  { ending: 'ogg', type: 'audio/ogg', as: 'voice', fits: (b) => ascii(b, 0, 4) === 'OggS' },
  {
    ending: 'wav',
    type: 'audio/wav',
    as: 'voice',
    fits: (b) => ascii(b, 0, 4) === 'RIFF' && ascii(b, 8, 4) === 'WAVE',
  },
  {
    ending: 'mp3',
    type: 'audio/mpeg',
    as: 'voice',
    fits: (b) => ascii(b, 0, 3) === 'ID3' || (b[0] === 0xff && ((b[1] ?? 0) & 0xe6) === 0xe2),
  },
  { ending: 'pdf', type: 'application/pdf', as: 'file', fits: (b) => ascii(b, 0, 5) === '%PDF-' },
];

const FILE = /^[a-f0-9]{32}\.[a-z0-9]{3,4}$/;

/** The type that the first bytes give away; null when it is none of ours. */
export function typeOf(bytes: Uint8Array): string | null {
  return SIGNATURES.find((signature) => signature.fits(bytes))?.type ?? null;
}

export function createUploads(folder: string, { mostBytes = MOST_FILE_BYTES } = {}): Uploads {
  const read: Uploads['read'] = async (file) => {
    const found = FILE.test(file) ? SIGNATURES.find((one) => file.endsWith(`.${one.ending}`)) : undefined;
    if (found === undefined) return null;
    try {
      return { bytes: new Uint8Array(await readFile(join(folder, file))), type: found.type };
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
      throw error;
    }
  };
  return {
    read,
    keep: async (bytes) => {
      if (bytes.length === 0) return { kind: 'empty' };
      if (bytes.length > mostBytes) return { kind: 'too-big', mostBytes };
      const found = SIGNATURES.find((signature) => signature.fits(bytes));
      if (found === undefined) return { kind: 'not-ours-to-open' };
      const file = `${randomBytes(16).toString('hex')}.${found.ending}`;
      await mkdir(folder, { recursive: true });
      await writeWhole(join(folder, file), bytes);
      return { kind: 'kept', attachment: found.as, file, type: found.type };
    },
    open: async (attachment) => {
      if (!('file' in attachment)) return null;
      const found = await read(attachment.file);
      return found === null ? null : { bytes: found.bytes, name: attachment.name ?? attachment.file };
    },
  };
}

/** Under another name first and synced: a crash in between never leaves half a photo under a name that a message holds. */
async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const half = `${path}.half`;
  const handle = await open(half, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await rename(half, path);
}

function ascii(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}
