import { afterEach, describe, expect, it } from 'vitest';
import { hashOf, newToken } from '../../../adapters/files/tokens.ts';
import { aBooking, aReply, chatWorld, NOW_MS, type PagesWorld } from '../../helpers/pages-world.ts';
import { aPhoto } from '../../helpers/photos.ts';
import { type WebPerson, webPerson } from '../../helpers/web-person.ts';

/* What somebody tries who wants to read or write in another hirer's thread. */

const worlds: PagesWorld[] = [];
afterEach(async () => {
  for (const world of worlds.splice(0)) await world.stop();
});

/** Ngozi has written, with a photo, by the link of her hire. */
async function ngoziWrote() {
  const world = await chatWorld({
    answer: ({ text }) => [aReply({ blocks: [{ kind: 'line', text: `heard ${text}` }] })],
  });
  worlds.push(world);
  const token = await world.link();
  const ngozi = webPerson(world, `/chat/${token}`);
  await ngozi.post({ key: 'ngozis-key-1', text: 'our secret', photo: new File([aPhoto()], 'x.png') });
  const [thread] = await world.store.threads({});
  const file = world.received
    .flatMap(({ attachments }) => attachments)
    .map((one) => ('file' in one ? one.file : ''))[0];
  return { world, token, ngozi, address: thread?.address ?? '', id: thread?.id ?? '', file: file ?? '' };
}

async function seen(person: WebPerson, path: string): Promise<string> {
  const answer = await person.get(path);
  return `${answer.status} ${await answer.text()}`;
}

describe('another hirer', () => {
  it('reads nothing of a thread with the very link of its hire', async () => {
    const { world, token, file } = await ngoziWrote();
    const finder = webPerson(world, `/chat/${token}`);
    expect(await seen(finder, `/chat/${token}`)).not.toContain('our secret');
    expect((await finder.get(`/chat/${token}/file/${file}`)).status).toBe(404);
    await finder.post({ text: 'mine' });
    expect(await seen(finder, `/chat/${token}?all`)).not.toContain('our secret');
    expect((await finder.get(`/chat/${token}/file/${file}`)).status).toBe(404);
  });

  it('gets into no thread by what stands in the store: its address, its id, the hash of its link', async () => {
    const { world, token, address, id } = await ngoziWrote();
    for (const cookie of [address, id, hashOf(token), token]) {
      const answer = await fetch(`${world.origin}/chat/${token}`, { headers: { cookie: `pitchhand=${cookie}` } });
      expect(await answer.text(), cookie).not.toContain('our secret');
    }
    for (const path of [address, id, hashOf(token), `${token}%00`, `${token}/`, `${token}/../${token}`, '__proto__'])
      expect(await seen(webPerson(world), `/chat/${path}`), path).not.toContain('our secret');
  });

  it('opens no file by its name, bent or not', async () => {
    const { world, file } = await ngoziWrote();
    const other = webPerson(world);
    await other.post({ text: 'hello' });
    for (const name of [
      file,
      `${file}.half`,
      `.%2f${file}`,
      '..%2fpitchhand.db',
      '..%2f..%2fpackage.json',
      '%2fetc%2fpasswd',
      '%00',
      '__proto__',
    ])
      expect((await other.get(`/chat/file/${name}`)).status, name).toBe(404);
  });

  it('has no file of another thread by writing its name into a form', async () => {
    const { world, file } = await ngoziWrote();
    const other = webPerson(world);
    await other.post({ text: 'look', photo: file, attachments: JSON.stringify([{ kind: 'photo', file }]), file });
    expect(world.received.at(-1)).toMatchObject({ text: 'look', attachments: [] });
    expect((await other.get(`/chat/file/${file}`)).status).toBe(404);
  });

  it('silences and repeats nobody by using their form’s key', async () => {
    const { world } = await ngoziWrote();
    const other = webPerson(world);
    await other.post({ key: 'ngozis-key-1', text: 'me too' });
    expect(world.received.at(-1)).toMatchObject({ text: 'me too' });
  });

  it('speaks for nobody: fields that only staff and channels may set count for nothing', async () => {
    const { world } = await ngoziWrote();
    const other = webPerson(world);
    await other.post({
      text: 'x',
      from: 'Nessa',
      who: 'Nessa',
      address: 'telegram',
      channel: 'telegram',
      edit: 'true',
      startToken: 'y',
    });
    expect(world.received.at(-1)).toMatchObject({ channel: 'web', from: null, edit: false, startToken: null });
  });

  it('is bound to no hire by a link that is old or meant for staff', async () => {
    const { world } = await ngoziWrote();
    const old = newToken();
    await world.store.putToken({ hash: old.hash, use: 'chat', subject: 'BR-2702', data: {}, expiresMs: NOW_MS - 1 });
    for (const token of [old.token, await world.invite('Nessa'), 'x'.repeat(200), '%ff', '..%2f..']) {
      const html = await seen(webPerson(world), `/chat/${token}`);
      expect(html, token).not.toContain('Dunlin</h1>');
      expect(html, token).not.toContain(aBooking().firstName);
    }
  });

  it('overhears nothing on the stream of another', async () => {
    const { world, ngozi, token } = await ngoziWrote();
    const other = webPerson(world, `/chat/${token}`);
    await other.post({ text: 'mine' });
    const reader = (await other.get(`/chat/${token}/events?after=0`)).body?.getReader();
    let text = '';
    while (!text.includes('heard mine')) text += new TextDecoder().decode((await reader?.read())?.value);
    await ngozi.post({ text: 'only for you' });
    await other.post({ text: 'last' });
    while (!text.includes('heard last')) text += new TextDecoder().decode((await reader?.read())?.value);
    await reader?.cancel();
    expect(text).not.toMatch(/our secret|only for you/);
  });

  it('cannot break out of a line into the stream', async () => {
    const { world } = await ngoziWrote();
    const person = webPerson(world);
    await person.post({ text: 'a\n\nevent: plate\ndata: <h1>Free!</h1>\r\rid: 1\u2028event: x' });
    const reader = (await person.get('/chat/events?after=0')).body?.getReader();
    let text = '';
    while (!text.includes('heard a')) text += new TextDecoder().decode((await reader?.read())?.value);
    await reader?.cancel();
    expect(text).not.toMatch(/^event: plate$/m);
    expect(text).not.toContain('<h1>Free!');
    expect(text).not.toContain('\r');
  });
});
