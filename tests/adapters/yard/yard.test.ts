import { afterEach, describe, expect, it } from 'vitest';
import { aBooking, chatWorld, NOW_MS, type PagesWorld } from '../../helpers/pages-world.ts';
import { aPhoto } from '../../helpers/photos.ts';
import { webPerson } from '../../helpers/web-person.ts';
import { yardPerson } from '../../helpers/yard-person.ts';

const worlds: PagesWorld[] = [];
afterEach(async () => {
  for (const world of worlds.splice(0)) await world.stop();
});
async function aWorld(options: Parameters<typeof chatWorld>[0] = {}): Promise<PagesWorld> {
  const world = await chatWorld(options);
  worlds.push(world);
  await world.store.putBookings([aBooking()]);
  return world;
}
/** A hirer of Dunlin who has written once and gets no answer from the bot. */
async function aTalk(text: string) {
  const world = await aWorld({ answer: () => [] });
  const hirer = webPerson(world, `/chat/${await world.link()}`);
  await hirer.post({ text });
  const [thread] = await world.store.threads({});
  return { world, hirer, path: `/yard/thread/${thread?.id}` };
}
const aPass = (world: PagesWorld, brief = {}) => world.passed({ booking: 'BR-2702', van: 'dunlin' }, brief);

describe('signing in to the yard', () => {
  it('is not spent by opening the link, only by the button, and only once', async () => {
    const world = await aWorld();
    const path = `/yard/sign-in/${await world.invite('Nessa')}`;
    const nessa = webPerson(world, '/yard');
    for (let i = 0; i < 3; i++) expect(await (await nessa.get(path)).text()).toContain('Open the gate');
    expect((await nessa.get('/yard')).status).toBe(401);
    expect((await nessa.post({}, path)).status).toBe(303);
    expect(await (await nessa.get('/yard')).text()).toContain('Nessa');
    const thief = webPerson(world, '/yard');
    expect((await thief.post({}, path)).status).toBe(410);
    expect((await thief.get('/yard')).status).toBe(401);
  });

  it('is asked for on every page and action', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const stranger = webPerson(world, '/yard');
    for (const path of [
      '/yard',
      '/yard/list',
      '/yard/turnaround',
      '/yard/events',
      '/yard/people',
      `/yard/thread/${id}`,
      `/yard/thread/${id}/events`,
      `/yard/thread/${id}/file/x.png`,
      '/yard/booking/BR-2702',
    ])
      expect((await stranger.get(path)).status, path).toBe(401);
    for (const act of ['take', 'give-back', 'say', 'note', 'pass'])
      expect((await stranger.post({ text: 'x' }, `/yard/thread/${id}/${act}`)).status).toBe(401);
    expect((await world.store.thread(id))?.keeper).toBe('waiting');
  });

  it('opens nothing to a chat link, and a session opens no chat', async () => {
    const world = await aWorld();
    const chat = await world.link();
    const stranger = webPerson(world, '/yard');
    expect((await stranger.post({}, `/yard/sign-in/${chat}`)).status).toBe(410);
    expect(await (await stranger.get(`/chat/${await world.invite('Nessa')}`)).text()).toContain(
      'no longer opens a hire',
    );
  });

  it('holds its cookie back from scripts and other sites', async () => {
    const world = await aWorld({ yard: { secure: true } });
    const answer = await webPerson(world, '/yard').post({}, `/yard/sign-in/${await world.invite('Nessa')}`);
    const cookie = answer.headers.get('set-cookie') ?? '';
    for (const part of [/HttpOnly/i, /SameSite=Lax/i, /Secure/i, /Path=\/yard/i]) expect(cookie).toMatch(part);
  });

  it('ends with signing out, for good', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    expect((await nessa.press('/yard', '/yard/sign-out')).status).toBe(303);
    expect((await nessa.get('/yard')).status).toBe(401);
  });

  it('lets operators make links, and staff not', async () => {
    const world = await aWorld();
    const gethin = await yardPerson(world, 'Gethin');
    expect((await gethin.get('/yard/people')).status).toBe(403);
    expect((await gethin.press('/yard', '/yard/people', { name: 'Friend', role: 'operator' })).status).toBe(403);
    const nessa = await yardPerson(world, 'Nessa', 'operator');
    const html = await (await nessa.press('/yard/people', '/yard/people', { name: 'Dilys', role: 'staff' })).text();
    const token = /yard\.test\/yard\/sign-in\/([\w-]+)/.exec(html)?.[1] ?? '';
    const dilys = webPerson(world, '/yard');
    await dilys.post({}, `/yard/sign-in/${token}`);
    expect(await (await dilys.get()).text()).toContain('Dilys');
    expect((await dilys.get('/yard/people')).status).toBe(403);
  });
});

describe('who belongs to the yard', () => {
  it('is what an operator said last: a new role holds at once, and shutting out ends link, cookie and Telegram name', async () => {
    const dismissed: string[] = [];
    const world = await aWorld({ yard: { dismissed: async (name) => void dismissed.push(name) } });
    const nessa = await yardPerson(world, 'Nessa', 'operator');
    const gethin = await yardPerson(world, 'Gethin');
    const unused = await world.invite('Gethin');
    expect((await gethin.get('/yard/people')).status).toBe(403);
    await nessa.press('/yard/people', '/yard/people', { name: 'Gethin', role: 'operator' });
    expect((await gethin.get('/yard/people')).status).toBe(200);
    expect((await nessa.press('/yard/people', '/yard/people/remove', { name: 'Gethin' })).status).toBe(200);
    expect(dismissed).toEqual(['Gethin']);
    expect((await gethin.get('/yard')).status).toBe(401);
    expect((await webPerson(world).post({}, `/yard/sign-in/${unused}`)).status).toBe(410);
    expect((await nessa.press('/yard/people', '/yard/people/remove', { name: 'Nessa' })).status).toBe(409);
    expect(dismissed).toEqual(['Gethin']);
  });
});

describe('forms of the yard', () => {
  it('are refused without the page\u2019s own token, with a colleague\u2019s, and from another site', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const nessa = await yardPerson(world, 'Nessa');
    const dilys = await yardPerson(world, 'Dilys');
    const path = `/yard/thread/${id}`;
    expect((await nessa.post({}, `${path}/take`)).status).toBe(403);
    const foreign = /name="csrf" value="([^"]+)"/.exec(await (await dilys.get(path)).text())?.[1] ?? '';
    expect((await nessa.post({ csrf: foreign }, `${path}/take`)).status).toBe(403);
    expect((await world.store.thread(id))?.keeper).toBe('waiting');
    expect((await nessa.press(path, `${path}/take`)).status).toBe(303);
    expect((await world.store.thread(id))?.keeper).toBe('staff');
  });

  it('that are pressed twice count once', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const nessa = await yardPerson(world, 'Nessa');
    const path = `/yard/thread/${id}`;
    const html = await (await nessa.get(path)).text();
    const field = (name: string) => new RegExp(`id="box".*?name="${name}" value="([^"]+)"`, 's').exec(html)?.[1] ?? '';
    for (let i = 0; i < 2; i++)
      await nessa.post({ csrf: field('csrf'), key: field('key'), text: 'On my way.' }, `${path}/say`);
    expect((await world.store.lines(id)).filter((line) => line.text === 'On my way.')).toHaveLength(1);
  });
});

describe('a thread in the yard', () => {
  it('shows in one look who it is, what was asked, understood, tried and suggested', async () => {
    const world = await aWorld();
    const { id } = await aPass(world, {
      question: 'still <b>no</b> hot water',
      tried: ['Is the boiler switch lit? - yes'],
      understood: [{ topic: 'hotwater-none', title: 'There is no hot water', probability: 0.814 }],
      suggested: 'Turn the tap marked BOILER.',
    });
    const html = await (await (await yardPerson(world, 'Nessa')).get(`/yard/thread/${id}`)).text();
    for (const part of [
      'Ngozi',
      'Gullstone Sands, pitch 14',
      '4 nights, back Saturday 31 July',
      '10 A',
      'tel:07700900412',
      'still &lt;b&gt;no&lt;/b&gt; hot water',
      'There is no hot water (81 in 100)',
      'Is the boiler switch lit? - yes',
      'Turn the tap marked BOILER.',
    ])
      expect(html).toContain(part);
  });

  it('is taken by the first and told to the second', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const path = `/yard/thread/${id}`;
    const [nessa, gethin] = [await yardPerson(world, 'Nessa'), await yardPerson(world, 'Gethin')];
    await nessa.press(path, `${path}/take`);
    const answer = await gethin.press(path, `${path}/say`, { text: 'I can go there' });
    expect(answer.status).toBe(409);
    const html = await answer.text();
    expect(html).toContain('Nessa has it');
    expect(html).toContain('I can go there</textarea>');
    expect((await world.store.lines(id)).some((line) => line.who === 'Gethin')).toBe(false);
  });

  it('carries words and a photo to the hirer\u2019s page under the name on the rota', async () => {
    const { world, hirer, path } = await aTalk('a person please');
    const gethin = await yardPerson(world, 'Gethin');
    await gethin.press(path, `${path}/say`, { text: 'Like this:', photo: new File([aPhoto()], 'valve.png') });
    const last = (await hirer.screen()).at(-1);
    expect(last?.text).toMatch(/^Gethin Like this:/);
    expect(last?.media).toBe('photo');
  });

  it('shows a hirer\u2019s photo and plays their voice and video, whichever channel they came by', async () => {
    const opened: string[] = [];
    const world = await aWorld({
      yard: {
        openFile: async (attachment) => {
          if (!('file' in attachment)) return null;
          opened.push(attachment.file);
          return { bytes: aPhoto(), name: 'it' };
        },
      },
    });
    const { id } = await aPass(world, {});
    const attachments = (['photo', 'voice', 'video'] as const).map((kind) => ({ kind, file: `tg:${kind}:A-${kind}` }));
    const thread = await world.store.thread(id);
    const base = {
      channel: thread?.channel ?? '',
      address: thread?.address ?? '',
      choice: null,
      edit: false,
      from: null,
    };
    const message = { ...base, key: 'm', atMs: NOW_MS, text: 'look', attachments, startToken: null };
    await world.store.receive(message, () => {
      throw new Error('there is a thread');
    });
    const nessa = await yardPerson(world, 'Nessa');
    const html = await (await nessa.get(`/yard/thread/${id}`)).text();
    for (const [tag, kind] of [
      ['img', 'photo'],
      ['audio', 'voice'],
      ['video', 'video'],
    ]) {
      const src = new RegExp(`<${tag} src="([^"]*A-${kind})"`).exec(html)?.[1] ?? '';
      expect((await nessa.get(src)).status).toBe(200);
    }
    expect(opened).toEqual(attachments.map(({ file }) => file));
  });

  it('lets one put right what one said: the hirer\u2019s page shows the new words where the old stood', async () => {
    const { world, hirer, path } = await aTalk('a person please');
    const gethin = await yardPerson(world, 'Gethin');
    await gethin.press(path, `${path}/say`, { text: 'The red tap' });
    await gethin.press(path, `${path}/say`, { text: 'And ring me' });
    const own = (await (await gethin.get(path)).text()).match(/href="([^"]*\?right=\d+)#text"/)?.[1] ?? '';
    expect(await (await gethin.get(own)).text()).toMatch(/<textarea id="text".*The red tap<\/textarea>/s);
    expect((await gethin.press(own, `${path}/put-right`, { text: ' ' })).status).toBe(422);
    await gethin.press(own, `${path}/put-right`, { text: 'The blue tap' });
    const said = (await hirer.screen()).map((line) => line.text);
    expect(said.filter((text) => text.includes('Gethin')).map((text) => text.replace(/\d\d:\d\d/g, 'T'))).toEqual([
      'Gethin put right T The blue tap',
      'Gethin And ring me',
    ]);
    expect(await (await gethin.get(path)).text()).not.toContain('red tap');
    const nessa = await yardPerson(world, 'Nessa');
    expect(await (await nessa.get(path)).text()).not.toContain('?right=');
    expect(await (await nessa.get(own)).text()).not.toContain('put-right');
  });

  it('sends the suggestion as it is', async () => {
    const world = await aWorld();
    const { id } = await aPass(world, { suggested: 'Turn the tap.\nWait "ten" minutes.' });
    const path = `/yard/thread/${id}`;
    const nessa = await yardPerson(world, 'Nessa');
    const html = await (await nessa.get(path)).text();
    expect(html).toContain('Turn the tap.\nWait &quot;ten&quot; minutes.');
    const changed = await (await nessa.get(`${path}?change`)).text();
    expect(changed).toMatch(/<textarea id="text".*Turn the tap\.\nWait &quot;ten&quot; minutes\.<\/textarea>/s);
    await nessa.press(path, `${path}/say`);
    expect((await world.store.lines(id)).at(-1)).toMatchObject({
      who: 'Nessa',
      text: 'Turn the tap.\nWait "ten" minutes.',
    });
  });

  it('keeps a note in the yard', async () => {
    const { world, hirer, path } = await aTalk('hello');
    const nessa = await yardPerson(world, 'Nessa');
    await nessa.press(path, `${path}/note`, { text: 'has a bad back, send Gethin' });
    expect(await (await nessa.get(path)).text()).toContain('has a bad back');
    expect(JSON.stringify(await hirer.screen())).not.toContain('bad back');
  });

  it('goes back to the bot, and to a colleague by name', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const path = `/yard/thread/${id}`;
    const nessa = await yardPerson(world, 'Nessa');
    await nessa.press(path, `${path}/pass`, { to: 'Gethin' });
    expect(await world.store.thread(id)).toMatchObject({ keeper: 'staff', keeperName: 'Gethin' });
    expect((await nessa.press(path, `${path}/pass`, { to: 'Somebody Else' })).status).toBe(422);
    await nessa.press(path, `${path}/give-back`);
    expect(await world.store.thread(id)).toMatchObject({ keeper: 'bot', keeperName: null });
  });

  it('that does not exist is said to be so', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    expect((await nessa.get('/yard/thread/none')).status).toBe(404);
    expect((await nessa.get('/yard/booking/BR-1')).status).toBe(404);
    expect((await nessa.press('/yard', '/yard/sign-out', { csrf: 'x' })).status).toBe(403);
  });
});

describe('the day in the yard', () => {
  it('says the same as field and as list: who waits, danger on top', async () => {
    const world = await aWorld();
    await world.store.putBookings([aBooking({ ref: 'BR-2701', firstName: 'Pat', van: 'wren' })]);
    await world.passed({ booking: 'BR-2702', sinceMs: NOW_MS - 34 * 60_000 });
    await world.passed(
      { booking: 'BR-2701', reason: 'safety', sinceMs: NOW_MS - 60_000 },
      { question: 'alarm going off' },
    );
    const nessa = await yardPerson(world, 'Nessa');
    for (const path of ['/yard', '/yard/list']) {
      const html = await (await nessa.get(path)).text();
      expect(html).toContain('waits 34 min, 4 min late');
      expect(html).toContain('Danger');
      expect(html).toMatch(/data-danger="[^"]*;Pat"/);
      if (path === '/yard/list') expect(html.indexOf('Danger: Pat')).toBeLessThan(html.indexOf('Ngozi</strong>'));
    }
  });

  it('tells open pages at once that somebody waits, not at the next heartbeat', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    const stream = await nessa.get('/yard/events?as=field');
    const reader = stream.body?.getReader();
    const decoder = new TextDecoder();
    let text = '';
    const until = async (part: string) => {
      while (!text.includes(part)) text += decoder.decode((await reader?.read())?.value);
    };
    await until('event: live');
    await aPass(world);
    await until('waits since just now');
    await reader?.cancel();
  });

  it('opens a hire by its thread, its threads, or as it is', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    expect(await (await nessa.get('/yard/booking/BR-2702')).text()).toContain('Nobody of this hire has written yet.');
    const { id } = await aPass(world);
    expect((await nessa.get('/yard/booking/BR-2702')).headers.get('location')).toBe(`/yard/thread/${id}`);
    await aPass(world);
    expect(await (await nessa.get('/yard/booking/BR-2702')).text()).toMatch(/waits for us.*waits for us/s);
  });

  it('prints what to look at before the next hire', async () => {
    const world = await aWorld();
    const html = await (await (await yardPerson(world, 'Gethin')).get('/yard/turnaround')).text();
    expect(html).toContain('Rear nearside window stay is weak (since 2 July)');
  });

  it('stays under 100 KB with style and script', async () => {
    const world = await aWorld();
    for (let i = 0; i < 20; i++) await aPass(world);
    const nessa = await yardPerson(world, 'Nessa');
    for (const path of ['/yard', '/yard/list']) {
      const html = await (await nessa.get(path)).text();
      const files = [...html.matchAll(/(?:href|src)="(\/yard\/-\/[^"]+)"/g)].map(([, at = '']) => at);
      const parts = await Promise.all(files.map(async (at) => (await (await nessa.get(at)).arrayBuffer()).byteLength));
      const bytes = parts.reduce((sum, part) => sum + part, Buffer.byteLength(html));
      console.log(`${path}: ${bytes} bytes (page ${Buffer.byteLength(html)}, style and script ${parts.join(', ')})`);
      expect(bytes).toBeLessThan(100_000);
    }
  });
});
