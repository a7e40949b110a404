import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createUploads } from '../../../adapters/http/uploads.ts';
import { aFile, aPhoto } from '../../helpers/photos.ts';

describe('uploads', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'pitchhand-uploads-'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('keep a photo under a name of their own and give it back byte for byte', async () => {
    const uploads = createUploads(folder);
    const kept = await uploads.keep(aPhoto());
    expect(kept).toMatchObject({ kind: 'kept', attachment: 'photo', type: 'image/png' });
    if (kept.kind !== 'kept') return;
    expect(await uploads.read(kept.file)).toEqual({ bytes: new Uint8Array(aPhoto()), type: 'image/png' });
    expect(await readdir(folder)).toEqual([kept.file]);
  });

  it('keep one of exactly 10 MB and refuse one byte more', async () => {
    const uploads = createUploads(folder);
    const most = aPhoto(10 * 1024 * 1024);
    expect((await uploads.keep(most)).kind).toBe('kept');
    expect(await uploads.keep(aPhoto(10 * 1024 * 1024 + 1))).toEqual({ kind: 'too-big', mostBytes: 10 * 1024 * 1024 });
  });

  it('judge by the first bytes, not by what the sender calls it', async () => {
    const page = new TextEncoder().encode('<html><script>alert(1)</script>');
    expect(await createUploads(folder).keep(page)).toEqual({ kind: 'not-ours-to-open' });
    expect(await createUploads(folder).keep(new Uint8Array())).toEqual({ kind: 'empty' });
  });

  it('tell photo, video, sound and paper apart', async () => {
    const uploads = createUploads(folder);
    for (const kind of ['photo', 'voice', 'video', 'file'] as const) {
      expect(await uploads.keep(aFile(kind))).toMatchObject({ kind: 'kept', attachment: kind });
    }
  });

  it('open nothing outside their own names', async () => {
    const uploads = createUploads(folder);
    for (const name of ['../secret.png', '/etc/hostname', `${'a'.repeat(32)}.png`, `${'a'.repeat(32)}.exe`, '']) {
      expect(await uploads.read(name)).toBeNull();
    }
  });
});
