import { randomBytes } from 'node:crypto';
import { mkdir, open, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';

export const MOST_PHOTO_BYTES = 10 * 1024 * 1024;

export type Kept =
  | { readonly kind: 'kept'; readonly file: string; readonly type: string }
  | { readonly kind: 'too-big'; readonly mostBytes: number }
  | { readonly kind: 'not-a-photo' }
  | { readonly kind: 'empty' };

/** Photos that hirers send, as files in the data folder under names of our own. */
export type Uploads = {
  /** Resolves when the bytes are on the disk. */
  readonly keep: (bytes: Uint8Array) => Promise<Kept>;
  /** Null for a name that is not ours or not there. */
  readonly read: (file: string) => Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string } | null>;
};

/** What the first bytes say: the sender's word for the type is not trusted. Signatures as the formats publish them. */
const SIGNATURES: readonly {
  readonly ending: string;
  readonly type: string;
  readonly fits: (b: Uint8Array) => boolean;
}[] = [
  { ending: 'jpg', type: 'image/jpeg', fits: (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff },
  { ending: 'png', type: 'image/png', fits: (b) => ascii(b, 1, 3) === 'PNG' && b[0] === 0x89 },
  { ending: 'gif', type: 'image/gif', fits: (b) => ascii(b, 0, 4) === 'GIF8' },
  { ending: 'webp', type: 'image/webp', fits: (b) => ascii(b, 0, 4) === 'RIFF' && ascii(b, 8, 4) === 'WEBP' },
  { ending: 'avif', type: 'image/avif', fits: (b) => ascii(b, 4, 8) === 'ftypavif' },
  { ending: 'heic', type: 'image/heic', fits: (b) => /^ftyp(heic|heix|mif1|msf1)$/.test(ascii(b, 4, 8)) },
];

const FILE = /^[a-f0-9]{32}\.(jpg|png|gif|webp|avif|heic)$/;

export function createUploads(folder: string, { mostBytes = MOST_PHOTO_BYTES } = {}): Uploads {
  return {
    keep: async (bytes) => {
      if (bytes.length === 0) return { kind: 'empty' };
      if (bytes.length > mostBytes) return { kind: 'too-big', mostBytes };
      const found = SIGNATURES.find((signature) => signature.fits(bytes));
      if (found === undefined) return { kind: 'not-a-photo' };
      const file = `${randomBytes(16).toString('hex')}.${found.ending}`;
      await mkdir(folder, { recursive: true });
      await writeWhole(join(folder, file), bytes);
      return { kind: 'kept', file, type: found.type };
    },
    read: async (file) => {
      const found = FILE.test(file) ? SIGNATURES.find((one) => file.endsWith(one.ending)) : undefined;
      if (found === undefined) return null;
      try {
        return { bytes: new Uint8Array(await readFile(join(folder, file))), type: found.type };
      } catch (error) {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
        throw error;
      }
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
