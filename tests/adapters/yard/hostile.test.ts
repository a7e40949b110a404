import { request } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { hashOf, newToken } from '../../../adapters/files/tokens.ts';
import { DAY_MS } from '../../../src/index.ts';
import { aBooking, chatWorld, NOW_MS, type PagesWorld } from '../../helpers/pages-world.ts';
import { aPhoto } from '../../helpers/photos.ts';
import { webPerson } from '../../helpers/web-person.ts';
import { yardPerson } from '../../helpers/yard-person.ts';

/*
 * What somebody tries who means harm: from outside, with a hirer's link, with a colleague's page, from another site.
 */

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
const aPass = (world: PagesWorld) => world.passed({ booking: 'BR-2702', van: 'dunlin' });

/** Sends a path as it stands, which `fetch` would tidy first. */
function raw(
  world: PagesWorld,
  path: string,
  { method = 'GET', headers = {} }: { method?: string; headers?: Record<string, string> } = {},
): Promise<{ status: number; text: string; location: string }> {
  const { hostname, port } = new URL(world.origin);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, path, method, headers }, (answer) => {
      let text = '';
      answer.on('data', (part) => (text += part));
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, text, location: String(answer.headers.location ?? '') }),
      );
    });
    sent.on('error', reject);
    sent.end();
  });
}

async function cookieOf(world: PagesWorld, name = 'Nessa', role: 'staff' | 'operator' = 'staff'): Promise<string> {
  const answer = await webPerson(world, '/yard').post({}, `/yard/sign-in/${await world.invite(name, role)}`);
  return answer.headers.get('set-cookie')?.split(';')[0] ?? '';
}

describe('a stranger at the gate', () => {
  it('gets in by no link that is spent, old, of another use, guessed from its hash or bent', async () => {
    const world = await aWorld();
    const old = newToken();
    await world.store.putToken({ hash: old.hash, use: 'sign-in', subject: 'Nessa', data: {}, expiresMs: NOW_MS - 1 });
    const telegram = newToken();
    await world.store.putToken({
      hash: telegram.hash,
      use: 'staff-telegram',
      subject: 'Nessa',
      data: { role: 'operator' },
      expiresMs: NOW_MS + DAY_MS,
    });
    const good = await world.invite('Nessa');
    const session = (await cookieOf(world)).split('=')[1] ?? '';
    const stranger = webPerson(world, '/yard');
    for (const token of [
      old.token,
      telegram.token,
      await world.link(),
      session,
      hashOf(good),
      good.toUpperCase() === good ? good.toLowerCase() : good.toUpperCase(),
      `${good}%00`,
      `${good}%0a`,
      ` ${good}`,
      `${good}%2f`,
      `${good}'--`,
      `%2e%2e%2f${good}`,
      'x'.repeat(5_000),
      '%ff',
      '__proto__',
    ])
      expect([404, 410], token.slice(0, 60)).toContain((await stranger.post({}, `/yard/sign-in/${token}`)).status);
    expect((await stranger.get('/yard')).status).toBe(401);
    expect((await stranger.post({}, `/yard/sign-in/${good}`)).status).toBe(303);
  });

  it('spends no link by asking for it in any other way than the button', async () => {
    const world = await aWorld();
    const path = `/yard/sign-in/${await world.invite('Nessa')}`;
    for (const method of ['GET', 'HEAD', 'OPTIONS', 'PUT', 'DELETE', 'PATCH'])
      await raw(world, path, { method, headers: { purpose: 'prefetch' } });
    await raw(world, `${path}?_method=POST`, { headers: { 'x-http-method-override': 'POST' } });
    expect((await webPerson(world, '/yard').post({}, path)).status).toBe(303);
  });

  it('shares no link: of ten who press at once one gets in', async () => {
    const world = await aWorld();
    const path = `/yard/sign-in/${await world.invite('Nessa')}`;
    const answers = await Promise.all(Array.from({ length: 10 }, () => webPerson(world, '/yard').post({}, path)));
    expect(answers.map(({ status }) => status).sort()).toEqual([303, ...Array.from({ length: 9 }, () => 410)]);
  });

  it('is known by no cookie but one that was given out and holds', async () => {
    let nowMs = NOW_MS;
    const world = await aWorld({ web: { clock: { nowMs: () => nowMs } } });
    const cookie = await cookieOf(world);
    const secret = cookie.split('=')[1] ?? '';
    const chat = (await webPerson(world).get()).headers.get('set-cookie')?.split(';')[0]?.split('=')[1];
    const ask = async (value: string) => (await raw(world, '/yard/list', { headers: { cookie: value } })).status;
    expect(await ask(cookie)).toBe(200);
    for (const value of [
      '',
      hashOf(secret),
      secret.slice(0, -1),
      `${secret}A`,
      chat ?? '',
      await world.invite('Nessa', 'operator'),
      '../../x',
      'x'.repeat(4_000),
      'null',
    ])
      expect(await ask(`yard=${value}`), value.slice(0, 40)).toBe(401);
    nowMs += 14 * DAY_MS;
    expect(await ask(cookie)).toBe(401);
  });

  it('keeps no hold on a browser that signs in afterwards', async () => {
    const world = await aWorld();
    const planted = await cookieOf(world, 'Gethin');
    const answer = await fetch(`${world.origin}/yard/sign-in/${await world.invite('Nessa')}`, {
      method: 'POST',
      headers: { cookie: planted },
      redirect: 'manual',
    });
    expect(answer.headers.get('set-cookie')?.split(';')[0]).not.toBe(planted);
    expect((await raw(world, '/yard', { headers: { cookie: planted } })).status).toBe(401);
  });

  it('is shown to nobody by a crooked path, and sent to no other site', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    for (const path of [
      `/yard/../yard/thread/${id}`,
      `/yard//thread/${id}`,
      `/yard/thread/${id}/`,
      `/yard/thread/${id}%2f`,
      `/YARD/thread/${id}`,
      `/yard/%2e%2e/yard/thread/${id}`,
      `/yard;/thread/${id}`,
      `/yard/sign-in/../thread/${id}`,
      `/yard/-/../thread/${id}`,
      `/yard/passkeys/../thread/${id}`,
      `/chat/../yard/thread/${id}`,
      `//evil.invalid/yard/thread/${id}`,
      '/yard/-/..%2f..%2fpackage.json',
      '/yard/-/picture/..%2f..%2f..%2fpackage/json.light.svg',
      `/yard/thread/${id}/file/..%2f..%2fpackage.json`,
    ]) {
      const { status, text, location } = await raw(world, path);
      expect([400, 401, 404], path).toContain(status);
      expect(text, path).not.toContain('Ngozi');
      expect(text, path).not.toContain('"dependencies"');
      expect(location, path).toBe('');
    }
  });
});

describe('a hostile site in a colleague’s browser', () => {
  it('can send no form, whatever it says of itself, and sign nobody in as somebody else', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const cookie = await cookieOf(world);
    const page = await (await fetch(`${world.origin}/yard/thread/${id}`, { headers: { cookie } })).text();
    const csrf = /name="csrf" value="([^"]+)"/.exec(page)?.[1] ?? '';
    const link = `/yard/sign-in/${await world.invite('Gethin')}`;
    for (const from of [
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { origin: 'https://evil.invalid' },
      { origin: 'null' },
      { origin: `${world.origin}.evil.invalid` },
      { origin: world.origin.replace(/\d+$/, '1') },
    ] as Record<string, string>[]) {
      for (const path of [`/yard/thread/${id}/take`, link, '/yard/sign-out', '/yard/passkeys/sign-in']) {
        const answer = await fetch(world.origin + path, {
          method: 'POST',
          headers: { cookie, ...from },
          body: new URLSearchParams({ csrf }),
          redirect: 'manual',
        });
        expect(answer.status, `${path} from ${JSON.stringify(from)}`).toBe(403);
      }
    }
    expect((await world.store.thread(id))?.keeper).toBe('waiting');
    expect((await webPerson(world, '/yard').post({}, link)).status).toBe(303);
  });

  it('gets round the form’s token in no shape', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const cookie = await cookieOf(world);
    const path = `/yard/thread/${id}`;
    const page = await (await fetch(world.origin + path, { headers: { cookie } })).text();
    const csrf = /name="csrf" value="([^"]+)"/.exec(page)?.[1] ?? '';
    const twice = new FormData();
    twice.append('csrf', 'wrong');
    twice.append('csrf', csrf);
    const asFile = new FormData();
    asFile.append('csrf', new File([csrf], 'csrf'));
    const post = async (body: BodyInit | null, at = `${path}/take`, type?: string): Promise<number> => {
      const headers = type === undefined ? { cookie } : { cookie, 'content-type': type };
      return (await fetch(world.origin + at, { method: 'POST', headers, body, redirect: 'manual' })).status;
    };
    expect(await post(twice)).toBe(403);
    expect(await post(asFile)).toBe(403);
    expect(await post(new URLSearchParams(), `${path}/take?csrf=${csrf}`)).toBe(403);
    expect(await post(new URLSearchParams({ csrf: csrf.slice(0, -1) }))).toBe(403);
    expect(await post(new URLSearchParams({ csrf: `${csrf} ` }))).toBe(403);
    expect(await post(`csrf=${csrf}`, `${path}/take`, 'text/plain')).toBe(400);
    expect(await post(JSON.stringify({ csrf }), `${path}/take`, 'application/json')).toBe(400);
    expect(await post(null)).toBe(400);
    expect((await world.store.thread(id))?.keeper).toBe('waiting');
    expect(await post(new URLSearchParams({ csrf }))).toBe(303);
  });

  it('changes nothing by a picture’s address', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const headers = { cookie: await cookieOf(world) };
    for (const act of ['take', 'give-back', 'say', 'note', 'pass'])
      expect((await raw(world, `/yard/thread/${id}/${act}?text=x&to=Gethin`, { headers })).status).toBe(404);
    expect((await raw(world, '/yard/sign-out', { headers })).status).toBe(404);
    expect((await raw(world, '/yard', { headers })).status).toBe(200);
    expect((await world.store.thread(id))?.keeper).toBe('waiting');
  });

  it('may frame no page and run nothing in one', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    const headers = (await nessa.get('/yard')).headers;
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
    expect(headers.get('content-security-policy')).not.toContain('unsafe');
    expect(headers.get('cache-control')).toBe('no-store');
  });
});

describe('a colleague who oversteps', () => {
  it('speaks and takes under no other name', async () => {
    const world = await aWorld();
    const { id } = await aPass(world);
    const path = `/yard/thread/${id}`;
    const gethin = await yardPerson(world, 'Gethin');
    await gethin.press(path, `${path}/take`, { by: 'Nessa', name: 'Nessa', keeperName: 'Nessa' });
    await gethin.press(path, `${path}/say`, { by: 'Nessa', from: 'Nessa', who: 'Nessa', text: 'hello' });
    expect(await world.store.thread(id)).toMatchObject({ keeperName: 'Gethin' });
    expect((await world.store.lines(id)).at(-1)).toMatchObject({ who: 'Gethin', text: 'hello' });
  });

  it('reaches none of the operator’s pages', async () => {
    const world = await aWorld();
    const gethin = await yardPerson(world, 'Gethin');
    for (const path of ['', '/group/1', '/trial/x', '/trial/x/events', '/changes', '/figures', '/figures.csv', '/thin'])
      expect((await gethin.get(`/yard/growth${path}`)).status, path).toBe(403);
    for (const path of ['/group/1/try', '/trial/x/publish', '/changes/1/undo'])
      expect((await gethin.post({}, `/yard/growth${path}`)).status, path).toBe(403);
    expect((await gethin.post({ name: 'x', role: 'operator' }, '/yard/people')).status).toBe(403);
  });

  it('opens no file by the thread it was not sent in, nor by a bent name', async () => {
    const world = await aWorld({ answer: () => [] });
    const hirer = webPerson(world, `/chat/${await world.link()}`);
    await hirer.post({ text: 'this', photo: new File([aPhoto()], 'x.png') });
    const [sender] = await world.store.threads({});
    const file = world.received
      .flatMap(({ attachments }) => attachments)
      .map((one) => ('file' in one ? one.file : ''))[0];
    const { id: other } = await aPass(world);
    const nessa = await yardPerson(world, 'Nessa');
    expect((await nessa.get(`/yard/thread/${sender?.id}/file/${file}`)).status).toBe(200);
    for (const path of [
      `${other}/file/${file}`,
      `${sender?.id}/file/${file}.half`,
      `${sender?.id}/file/${String(file).toUpperCase()}`,
      `${sender?.id}/file/.%2f${file}`,
      `${sender?.id}/file/..%2fpitchhand.db`,
      `${sender?.id}/file/%2fetc%2fpasswd`,
      `${sender?.id}/file/${file}%00.png`,
      `__proto__/file/${file}`,
    ])
      expect((await nessa.get(`/yard/thread/${path}`)).status, path).toBe(404);
  });

  it('asks for threads that are none, and is told so', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    for (const id of ['__proto__', 'constructor', '%00', "'%20or%20'1'='1", 'x'.repeat(3_000)]) {
      expect((await nessa.get(`/yard/thread/${id}`)).status, id.slice(0, 20)).toBe(404);
      expect((await nessa.get(`/yard/booking/${id}`)).status, id.slice(0, 20)).toBe(404);
    }
  });

  it('sees nothing more on an open page once signed out, here or by an operator', async () => {
    const world = await aWorld();
    const nessa = await yardPerson(world, 'Nessa');
    const stream = await nessa.get('/yard/events?as=list');
    const reader = stream.body?.getReader();
    let text = '';
    const readOn = async (): Promise<boolean> => {
      const { value, done } = (await reader?.read()) ?? { value: undefined, done: true };
      text += new TextDecoder().decode(value);
      return !done;
    };
    while (!text.includes('event: live')) await readOn();
    await nessa.press('/yard', '/yard/sign-out');
    await aPass(world);
    while (await readOn());
    expect(text).not.toContain('can somebody ring me');
    expect((await nessa.get('/yard/events?as=list')).status).toBe(401);
  });
});

describe('a hirer who means the yard harm', () => {
  it('writes what stays text on every page of the yard, and in its streams', async () => {
    const evil = '<img src=x onerror=alert(1)>"\'>\n\nevent: live\ndata: <script>alert(2)</script>\r\rid: 9\n';
    const world = await aWorld({ answer: () => [] });
    await world.store.putBookings([aBooking({ firstName: '<i>N|;', hirer: '</title><script>', note: '<b>' })]);
    const { id } = await world.passed(
      { booking: 'BR-2702', van: 'dunlin' },
      { question: evil, tried: [evil], suggested: evil },
    );
    const nessa = await yardPerson(world, 'Nessa');
    for (const path of ['/yard', '/yard/list', `/yard/thread/${id}`, `/yard/thread/${id}?change`, '/yard/turnaround']) {
      const html = await (await nessa.get(path)).text();
      expect(html.match(/<script[^>]*>/g), path).toEqual([
        expect.stringMatching(/^<script type="module" src="\/yard\/-\//),
      ]);
      expect(html, path).not.toMatch(/<img src=x|<i>N/);
    }
    const reader = (await nessa.get(`/yard/thread/${id}/events`)).body?.getReader();
    let text = '';
    while (!text.includes('onerror')) text += new TextDecoder().decode((await reader?.read())?.value);
    await reader?.cancel();
    expect(text.match(/^event:.*$/gm)).toEqual(['event: live']);
    expect(text.match(/^(?!event: live$|retry: 2000$|data: |$).+$/gm)).toBeNull();
    expect(text).not.toContain('\r');
  });

  it('sends pages dressed as photos, which are refused or can do nothing', async () => {
    const world = await aWorld({ answer: () => [] });
    const hirer = webPerson(world, `/chat/${await world.link()}`);
    for (const page of [
      '<html><script>alert(1)</script>',
      '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>',
    ])
      expect((await hirer.post({ photo: new File([page], 'x.png', { type: 'image/png' }) })).status).toBe(422);
    const both = new Uint8Array([...aPhoto(), ...new TextEncoder().encode('<script>alert(1)</script>')]);
    await hirer.post({ photo: new File([both], 'x.html', { type: 'text/html' }) });
    const [thread] = await world.store.threads({});
    const file = world.received
      .flatMap(({ attachments }) => attachments)
      .map((one) => ('file' in one ? one.file : ''))[0];
    const answer = await (await yardPerson(world, 'Nessa')).get(`/yard/thread/${thread?.id}/file/${file}`);
    expect(answer.headers.get('content-type')).toBe('image/png');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('content-security-policy')).toContain('sandbox');
  });
});

describe('what is kept of secrets', () => {
  it('is hashes alone: no link, cookie or form token stands in the store', async () => {
    const world = await aWorld();
    const token = await world.invite('Nessa');
    const cookie = (await webPerson(world, '/yard').post({}, `/yard/sign-in/${token}`)).headers.get('set-cookie') ?? '';
    const secret = /yard=([^;]+)/.exec(cookie)?.[1] ?? '';
    const kept = JSON.stringify([
      await world.store.tokens('session', NOW_MS),
      await world.store.tokens('sign-in', NOW_MS),
      await world.store.notes(''),
    ]);
    expect(kept).toContain(hashOf(secret));
    expect(kept).not.toContain(secret);
    expect(kept).not.toContain(token);
  });
});
