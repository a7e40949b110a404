import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { hashOf, newToken } from '../../adapters/files/tokens.ts';
import { HOUR_MS } from '../../src/index.ts';
import { seriousFaults } from '../helpers/axe.ts';
import { inBrowser } from '../helpers/in-browser.ts';
import { chatWorld, NOW_MS } from '../helpers/pages-world.ts';
import { freePort, passkeyDevice } from '../helpers/passkey-device.ts';
import { webPerson } from '../helpers/web-person.ts';
import { yardPerson } from '../helpers/yard-person.ts';

const SIGN_IN = '/yard/passkeys/sign-in';

describe('passkeys in a browser', () => {
  const { keep, newContext } = inBrowser();

  /** Nessa, signed in by a link, on a device that can hold passkeys. */
  async function open(options: { size?: { width: number; height: number }; role?: 'staff' | 'operator' } = {}) {
    const port = await freePort();
    const url = `http://localhost:${port}`;
    let nowMs = NOW_MS;
    const world = keep(await chatWorld({ port, yard: { url }, web: { clock: { nowMs: () => nowMs } } }));
    const context = await newContext({ viewport: options.size ?? { width: 360, height: 740 } });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    const device = await passkeyDevice(page);
    const byLink = async (): Promise<void> => {
      await page.goto(`${url}/yard/sign-in/${await world.invite('Nessa', options.role)}`);
      await page.click('text=Open the gate');
      await page.waitForSelector('.field');
    };
    await byLink();
    return { world, url, page, context, device, faults, byLink, later: (ms: number) => (nowMs += ms) };
  }

  async function addTo(page: Page, url: string, label = 'Blue phone'): Promise<void> {
    await page.goto(`${url}/yard/passkeys`);
    await page.fill('#label', label);
    await page.click('text=Add this device');
    await page.waitForSelector(`.keys >> text=${label}`);
  }

  async function signOut(page: Page, url: string): Promise<void> {
    await page.goto(`${url}/yard`);
    await page.click('text=Sign out');
    await page.waitForSelector('text=Open by passkey');
  }

  /** What the device signs when it is asked to open the yard, caught before the server sees it. */
  async function caught(page: Page, url: string): Promise<string> {
    await page.goto(`${url}/yard/sign-in`);
    const sent = new Promise<string>((resolve) => {
      void page.route(`**${SIGN_IN}`, async (route) => {
        resolve(new URLSearchParams(route.request().postData() ?? '').get('answer') ?? '');
        await route.abort();
      });
    });
    await page.click('text=Open by passkey');
    const answer = await sent;
    await page.unroute(`**${SIGN_IN}`);
    return answer;
  }

  it('are added after a link, open the yard again, are listed and removed', async () => {
    const { page, url, device, world, faults } = await open();
    await addTo(page, url);
    expect(await device.count()).toBe(1);
    expect(await page.textContent('.keys')).toContain('not used yet');
    await signOut(page, url);
    expect((await world.store.tokens('session', NOW_MS)).length).toBe(0);
    await page.click('text=Open by passkey');
    await page.waitForSelector('.field');
    expect(await page.textContent('.door')).toContain('Nessa');
    await page.goto(`${url}/yard/passkeys`);
    expect(await page.textContent('.keys')).toContain('last used Tuesday 27 July');
    await page.click('.keys >> text=Remove');
    // The session that the key began ended with it.
    await page.goto(`${url}/yard`);
    await page.click('text=Open by passkey');
    await page.waitForSelector('text=This passkey does not open the yard.');
    expect(faults).toEqual([]);
  });

  it('are the same after a restart', async () => {
    const { page, url, world } = await open();
    await addTo(page, url);
    await world.halt();
    await world.start();
    await signOut(page, url);
    await page.click('text=Open by passkey');
    await page.waitForSelector('.field');
  });

  it('are offered once a device, and not added by a device that cannot confirm its owner', async () => {
    const { page, url, device } = await open();
    await device.confirms(false);
    await page.goto(`${url}/yard/passkeys`);
    await page.click('text=Add this device');
    await page.waitForSelector('text=did not confirm that it is you');
    await device.confirms(true);
    await addTo(page, url);
    await page.click('text=Add this device');
    await page.waitForSelector('text=This device has a passkey for the yard already.');
    expect(await page.locator('.keys li').count()).toBe(1);
  });

  it('sign in once for each question, however often and with whatever change the answer comes', async () => {
    const { page, url, world, later } = await open();
    await addTo(page, url);
    await signOut(page, url);
    const thief = webPerson(world, '/yard');
    const tries = async (answer: string) => (await thief.post({ answer }, SIGN_IN)).status;

    const answer = await caught(page, url);
    const given = JSON.parse(answer);
    const withData = (change: object): string => {
      const data = JSON.parse(Buffer.from(given.response.clientDataJSON, 'base64url').toString());
      const clientDataJSON = Buffer.from(JSON.stringify({ ...data, ...change })).toString('base64url');
      return JSON.stringify({ ...given, response: { ...given.response, clientDataJSON } });
    };
    for (const changed of [
      '',
      '[]',
      '{"id":"x"}',
      answer.slice(0, -1),
      'x'.repeat(50_000),
      JSON.stringify({ ...given, id: 'AAAA', rawId: 'AAAA' }),
      JSON.stringify({ ...given, response: { ...given.response, signature: 'AAAA' } }),
      JSON.stringify({ ...given, response: { ...given.response, userHandle: 'AAAA' } }),
      JSON.stringify({ ...given, response: { ...given.response, userHandle: undefined } }),
      withData({ origin: 'https://yard.invalid' }),
      withData({ challenge: 'AAAA' }),
      withData({ challenge: '' }),
      withData({ type: 'webauthn.create' }),
      withData({}).replace(given.response.authenticatorData, Buffer.alloc(37).toString('base64url')),
    ])
      expect(await tries(changed), changed.slice(0, 80)).toBe(403);
    expect((await thief.get('/yard')).status).toBe(401);

    const both = await Promise.all([1, 2, 3].map(() => tries(answer)));
    expect(both.sort()).toEqual([204, 403, 403]);
    expect(await tries(answer)).toBe(403);

    const old = await caught(page, url);
    later(6 * 60_000);
    expect(await tries(old)).toBe(403);
  });

  it('take no question of another kind or another person', async () => {
    const { page, url, world, context } = await open();
    await page.goto(`${url}/yard/passkeys`);
    const sent = new Promise<{ answer: string; csrf: string }>((resolve) => {
      void page.route('**/yard/passkeys', async (route) => {
        const fields = new URLSearchParams(route.request().postData() ?? '');
        resolve({ answer: fields.get('answer') ?? '', csrf: fields.get('csrf') ?? '' });
        await route.abort();
      });
    });
    await page.click('text=Add this device');
    const { answer, csrf } = await sent;
    const gethin = await yardPerson(world, 'Gethin');
    const html = await (await gethin.get('/yard/passkeys')).text();
    const own = /name="csrf" value="([^"]+)"/.exec(html)?.[1] ?? '';
    // Nessa's device, offered as Gethin's; Nessa's form from Gethin's session; no form at all.
    expect((await gethin.post({ csrf: own, answer }, '/yard/passkeys')).status).toBe(422);
    expect((await gethin.post({ csrf, answer }, '/yard/passkeys')).status).toBe(403);
    expect((await gethin.post({ answer }, '/yard/passkeys')).status).toBe(403);
    expect((await gethin.post({}, '/yard/passkeys/question')).status).toBe(403);
    expect((await gethin.post({ answer }, SIGN_IN)).status).toBe(403);
    expect(await world.store.tokens('passkey', NOW_MS)).toEqual([]);
    // Nessa herself may still send it, once.
    const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
    const send = () =>
      fetch(`${world.origin}/yard/passkeys`, {
        method: 'POST',
        headers: { cookie },
        body: new URLSearchParams({ csrf, answer, label: '<b>phone</b>' }),
      });
    expect((await send()).status).toBe(204);
    expect((await send()).status).toBe(422);
    expect(await (await fetch(`${world.origin}/yard/passkeys`, { headers: { cookie } })).text()).toContain(
      '&lt;b&gt;phone&lt;/b&gt;',
    );
  });

  it('cannot be added from a session that is older than an hour', async () => {
    const { page, url, later, world, context, byLink } = await open();
    later(HOUR_MS + 1);
    await page.goto(`${url}/yard/passkeys`);
    expect(await page.locator('#add-passkey').count()).toBe(0);
    await page.goto(`${url}/yard`);
    const csrf = (await page.getAttribute('.door [name=csrf]', 'value')) ?? '';
    const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
    const post = (path: string, fields: Record<string, string>) =>
      fetch(world.origin + path, { method: 'POST', headers: { cookie }, body: new URLSearchParams(fields) });
    expect((await post('/yard/passkeys/question', { csrf })).status).toBe(403);
    expect((await post('/yard/passkeys', { csrf, answer: '{}' })).status).toBe(403);
    await byLink();
    await addTo(page, url);
  });

  it('are removed by their owner and by operators, and by nobody else', async () => {
    const { page, url, world } = await open();
    await addTo(page, url);
    const [key] = await world.store.tokens('passkey', NOW_MS);
    const passkey = key?.hash ?? '';
    const gethin = await yardPerson(world, 'Gethin');
    expect(await (await gethin.get('/yard/passkeys')).text()).not.toContain('Blue phone');
    const csrf = /name="csrf" value="([^"]+)"/.exec(await (await gethin.get('/yard/passkeys')).text())?.[1] ?? '';
    expect((await gethin.post({ csrf, passkey }, '/yard/passkeys/remove')).status).toBe(404);
    // Other secrets' hashes are no passkeys, whoever asks.
    const link = newToken();
    await world.store.putToken({
      hash: link.hash,
      use: 'session',
      subject: 'Gethin',
      data: {},
      expiresMs: NOW_MS + 9e6,
    });
    expect((await gethin.post({ csrf, passkey: hashOf(link.token) }, '/yard/passkeys/remove')).status).toBe(404);
    expect(await world.store.tokens('passkey', NOW_MS)).toHaveLength(1);
    await signOut(page, url);
    await page.click('text=Open by passkey');
    await page.waitForSelector('.field');
    const dilys = await yardPerson(world, 'Dilys', 'operator');
    expect(await (await dilys.get('/yard/passkeys')).text()).toContain('Nessa: Blue phone');
    expect((await dilys.press('/yard/passkeys', '/yard/passkeys/remove')).status).toBe(200);
    expect(await world.store.tokens('passkey', NOW_MS)).toEqual([]);
    await page.goto(`${url}/yard`);
    expect(await page.textContent('main')).toContain('You are not signed in on this device.');
  });

  it('let their owner do what an operator has said last, not what they were made for', async () => {
    const { page, url, world } = await open({ role: 'operator' });
    await addTo(page, url);
    await page.goto(`${url}/yard`);
    await page.waitForSelector('.door >> text=Let someone in');
    const dilys = await yardPerson(world, 'Dilys', 'operator');
    await dilys.press('/yard/people', '/yard/people', { name: 'Nessa', role: 'staff' });
    await page.goto(`${url}/yard`);
    expect(await page.locator('.door >> text=Let someone in').count()).toBe(0);
    await signOut(page, url);
    await page.click('text=Open by passkey');
    await page.waitForSelector('.door');
    expect(await page.locator('.door >> text=Let someone in').count()).toBe(0);
    await dilys.press('/yard/people', '/yard/people', { name: 'Nessa', role: 'operator' });
    await page.goto(`${url}/yard`);
    await page.waitForSelector('.door >> text=Let someone in');
  });

  it('end with every session and link of somebody who is shut out, until a new link is made', async () => {
    const { page, url, world, context } = await open();
    await addTo(page, url);
    const answer = await caught(page, url);
    const elsewhere = await yardPerson(world, 'Nessa');
    const unspent = await world.invite('Nessa');
    const dilys = await yardPerson(world, 'Dilys', 'operator');
    expect(await (await dilys.get('/yard/people')).text()).toContain('Shut Nessa out');
    const shutOut = (name: string) => dilys.press('/yard/people', '/yard/people/remove', { name });
    expect((await shutOut('Dilys')).status).toBe(409);
    expect(await (await shutOut('Nessa')).text()).not.toContain('Shut Nessa out');
    expect((await elsewhere.get('/yard')).status).toBe(401);
    expect((await elsewhere.post({ answer }, SIGN_IN)).status).toBe(403);
    expect((await elsewhere.post({}, `/yard/sign-in/${unspent}`)).status).toBe(410);
    for (const use of ['session', 'passkey', 'sign-in'] as const)
      expect(await world.store.tokens(use, NOW_MS, 'Nessa')).toEqual([]);
    await page.goto(`${url}/yard`);
    expect(await page.textContent('main')).toContain('You are not signed in on this device.');
    // A link that was being made at that very moment lets nobody in either.
    const late = await world.invite('Nessa', 'operator');
    expect((await elsewhere.post({}, `/yard/sign-in/${late}`)).status).toBe(410);
    const made = await (await dilys.press('/yard/people', '/yard/people', { name: 'Nessa', role: 'staff' })).text();
    const again = /yard\/sign-in\/([\w-]+)/.exec(made)?.[1] ?? '';
    expect((await elsewhere.post({}, `/yard/sign-in/${again}`)).status).toBe(303);
    expect((await elsewhere.get('/yard')).status).toBe(200);
    expect((await context.cookies()).length).toBeGreaterThan(0);
    const gethin = await yardPerson(world, 'Gethin');
    const csrf = /name="csrf" value="([^"]+)"/.exec(await (await gethin.get('/yard')).text())?.[1] ?? '';
    expect((await gethin.post({ csrf, name: 'Dilys' }, '/yard/people/remove')).status).toBe(403);
    expect((await dilys.post({ csrf, name: 'Gethin' }, '/yard/people/remove')).status).toBe(403);
  });

  it('are shown on a page that has nothing serious for axe at 360 px', async () => {
    const { page, url } = await open();
    await addTo(page, url, 'A rather long name for a telephone, blue');
    expect(await seriousFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await signOut(page, url);
    expect(await seriousFaults(page)).toEqual([]);
  });

  it('are not offered where the browser cannot hold them for this address', async () => {
    const { world, context } = await open();
    const page = await context.newPage();
    await page.goto(`${world.origin}/yard/sign-in`);
    expect(await page.locator('#open-by-passkey').isVisible()).toBe(false);
  });
});
