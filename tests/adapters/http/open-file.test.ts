import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hono } from 'hono';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sendFile, sendPicture } from '../../../adapters/http/open-file.ts';
import { createUploads } from '../../../adapters/http/uploads.ts';
import type { Attachment, Line } from '../../../src/index.ts';
import { aFile, aPhoto } from '../../helpers/photos.ts';

const aLine = (attachment: Attachment): Line => ({
  id: 1,
  threadId: 't',
  atMs: 0,
  who: 'Gethin',
  text: '',
  reply: { kind: 'relay', from: 'Gethin', topic: null, blocks: [{ kind: 'attachment', attachment }], choices: [] },
  message: null,
  sent: 'delivered',
});

describe('a file of a thread', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'pitchhand-files-'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  const ask = async (name: string, lines: readonly Line[], elsewhere?: Parameters<typeof sendFile>[3]['elsewhere']) => {
    const app = new Hono();
    app.get('/', (c) => sendFile(c, name, lines, { uploads: createUploads(folder), elsewhere }));
    return app.request('/');
  };

  it('that came over another channel is fetched there and given with the type of its bytes', async () => {
    const lines = [aLine({ kind: 'photo', file: 'tg:photo:abc' })];
    const answer = await ask('tg:photo:abc', lines, async () => ({ bytes: aPhoto(), name: 'x.exe' }));
    expect(answer.headers.get('content-type')).toBe('image/png');
    expect(new Uint8Array(await answer.arrayBuffer())).toEqual(aPhoto());
    expect((await ask('tg:photo:abc', lines)).status).toBe(404);
    expect((await ask('tg:photo:abc', lines, async () => null)).status).toBe(404);
  });

  it('that is not of this thread is not there, although it lies in the folder', async () => {
    const kept = await createUploads(folder).keep(aPhoto());
    const file = kept.kind === 'kept' ? kept.file : '';
    expect((await ask(file, [])).status).toBe(404);
    expect((await ask(file, [aLine({ kind: 'photo', file })])).status).toBe(200);
  });

  it('that could run something is saved, not shown', async () => {
    const page = new TextEncoder().encode('<script>alert(1)</script>');
    const answer = await ask('tg:document:x', [aLine({ kind: 'file', file: 'tg:document:x' })], async () => ({
      bytes: page,
      name: 'x.html',
    }));
    expect(answer.headers.get('content-type')).toBe('application/octet-stream');
    expect(answer.headers.get('content-disposition')).toBe('attachment');
    const paper = await ask('p', [aLine({ kind: 'file', file: 'p' })], async () => ({
      bytes: aFile('file'),
      name: 'p.pdf',
    }));
    expect(paper.headers.get('content-disposition')).toBe('attachment');
  });
});

describe('a drawing', () => {
  const app = new Hono();
  app.get('/:picture/:file', (c) =>
    sendPicture(c, (use, theme) => (use.picture === 'panel' ? `<svg>${use.touch} ${theme}</svg>` : null)),
  );

  it('is named by its address, with or without a part to ring', async () => {
    expect(await (await app.request('/panel/hot.water.dark.svg')).text()).toBe('<svg>hot.water dark</svg>');
    expect(await (await app.request('/panel/.light.svg')).text()).toBe('<svg>null light</svg>');
  });

  it('that is not there is said to be so', async () => {
    for (const path of ['/other/.light.svg', '/panel/.blue.svg', '/panel/light'])
      expect((await app.request(path)).status).toBe(404);
  });
});
