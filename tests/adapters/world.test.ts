import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshLink } from '../../adapters/cli/booking-links.ts';
import { readConfig } from '../../adapters/config.ts';
import { demoBookings } from '../../adapters/demo/bookings.ts';
import { newToken } from '../../adapters/files/tokens.ts';
import { createLiveGraph } from '../../adapters/live-graph.ts';
import { learntFor } from '../../adapters/training/models.ts';
import { createWorld, type World } from '../../adapters/world.ts';
import { dayOf } from '../../src/index.ts';

/** A browser without scripting: follows redirects and keeps cookies. */
function aBrowser(origin: string) {
  const jar = new Map<string, string>();
  const go = async (path: string, form?: Record<string, string>): Promise<string> => {
    const response = await fetch(new URL(path, origin), {
      method: form === undefined ? 'GET' : 'POST',
      redirect: 'manual',
      headers: { cookie: [...jar].map(([name, value]) => `${name}=${value}`).join('; '), origin },
      ...(form === undefined ? {} : { body: new URLSearchParams(form) }),
    });
    for (const cookie of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
      jar.set(name, value);
    }
    const to = response.headers.get('location');
    return to === null ? response.text() : go(new URL(to, new URL(path, origin)).pathname);
  };
  return { go };
}

/** The fields of the first form on a page that goes to `action`. */
function formOn(page: string, action: RegExp): { readonly action: string; readonly fields: Record<string, string> } {
  const form = [...page.matchAll(/<form[^>]*action="([^"]+)"[^>]*>([\s\S]*?)<\/form>/g)].find(([, to]) =>
    action.test(to ?? ''),
  );
  if (form === undefined) throw new Error(`no form to ${action} on the page`);
  const fields = [...(form[2] ?? '').matchAll(/<input[^>]*type="hidden"[^>]*>/g)].map(
    ([input]) => [/name="([^"]*)"/.exec(input)?.[1] ?? '', /value="([^"]*)"/.exec(input)?.[1] ?? ''] as const,
  );
  return { action: form[1] ?? '', fields: Object.fromEntries(fields) };
}

describe('the whole house', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pitchhand-world-'));
  const config = readConfig({ PORT: '0', PITCHHAND_DATA: folder });
  const log = pino({ level: 'silent' });
  let world: World;
  let origin = '';

  beforeAll(async () => {
    const graph = createLiveGraph({
      folder: 'graph',
      cacheFolder: 'dist/graphs',
      log,
      learntFor: (knowledge) => learntFor('dist/graphs', knowledge),
    });
    world = await createWorld({ config, graph, clock: { nowMs: Date.now }, log });
    await world.store.putBookings(demoBookings(dayOf(Date.now(), 'Europe/London')));
    origin = `http://127.0.0.1:${(await world.start()).port}`;
  });
  afterAll(async () => {
    await world.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  async function chatOf(van: string): Promise<string> {
    const today = dayOf(Date.now(), 'Europe/London');
    const booking = (await world.store.bookings()).find(
      (each) => each.van === van && each.from <= today && (each.to ?? today) >= today,
    );
    if (booking === undefined) throw new Error(`no booking of ${van}`);
    return `/chat/${(await freshLink(booking, world.store, config, 'Europe/London')).token}`;
  }

  it('answers the same question for each van in its own words, and settles what it sent', async () => {
    const ask = async (van: string): Promise<string> => {
      const browser = aBrowser(origin);
      const path = await chatOf(van);
      await browser.go(path);
      return browser.go(path, { key: `${van}-fridge-0001`, text: 'how do I set the fridge' });
    };
    expect(await ask('dunlin')).toMatch(/AUTO/);
    expect(await ask('wren')).toMatch(/flame/);
    await world.shell.idle();
    for (const thread of await world.store.threads({})) {
      const said = (await world.store.lines(thread.id)).filter((line) => line.reply !== null);
      expect(said.map((line) => line.sent)).toEqual(said.map(() => 'delivered'));
    }
  });

  it('shows the notice to somebody without a booking', async () => {
    const browser = aBrowser(origin);
    await browser.go('/chat');
    expect(await browser.go('/chat', { key: 'unbooked-gas-0001', text: 'smell gas' })).toMatch(/Everybody out/);
  });

  it('carries a passed thread to staff on the yard page and their words back to the hirer', async () => {
    const hirer = aBrowser(origin);
    const path = await chatOf('curlew');
    await hirer.go(path);
    await hirer.go(path, { key: 'curlew-person-0001', text: 'can I speak to a person please' });

    const staff = aBrowser(origin);
    const { token, hash } = newToken();
    await world.store.putToken({
      hash,
      use: 'sign-in',
      subject: 'Gethin',
      data: { role: 'staff' },
      expiresMs: Date.now() + 60_000,
    });
    const door = await staff.go(`/yard/sign-in/${token}`);
    const signIn = formOn(door, /sign-in/);
    await staff.go(signIn.action, signIn.fields);
    const thread = (await world.store.threads({ keeper: ['waiting'] })).find((each) => each.van === 'curlew');
    const page = await staff.go(`/yard/thread/${thread?.id}`);
    expect(page).toMatch(/speak to a person/);
    const take = formOn(page, /\/take$/);
    const taken = await staff.go(take.action, take.fields);
    const say = formOn(taken, /\/say$/);
    await staff.go(say.action, { ...say.fields, text: 'Gethin here, what is the trouble?' });
    await world.shell.idle();
    expect(await hirer.go(path)).toMatch(/Gethin here, what is the trouble\?/);
  });

  it('answers health, readiness and metrics', async () => {
    expect((await fetch(`${origin}/healthz`)).status).toBe(200);
    expect((await fetch(`${origin}/readyz`)).status).toBe(200);
    expect(await (await fetch(`${origin}/metrics`)).text()).toMatch(/^pitchhand_http_requests_total/m);
  });
});
