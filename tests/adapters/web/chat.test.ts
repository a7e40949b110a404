import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import type { Message } from '../../../src/index.ts';
import { aBooking, aReply, chatWorld, type PagesWorld } from '../../helpers/pages-world.ts';
import { aPhoto } from '../../helpers/photos.ts';
import { readLines, webPerson } from '../../helpers/web-person.ts';

const worlds: PagesWorld[] = [];
afterEach(async () => {
  for (const world of worlds.splice(0)) await world.stop();
});
async function aWorld(options: Parameters<typeof chatWorld>[0] = {}): Promise<PagesWorld> {
  const world = await chatWorld(options);
  worlds.push(world);
  return world;
}
const echo = (message: Message) => [aReply({ blocks: [{ kind: 'line', text: `heard ${message.text}` }] })];

describe('the chat page', () => {
  it('shows the van of the link by name and drawing before a word is said', async () => {
    const world = await aWorld();
    const html = await (await webPerson(world, `/chat/${await world.link()}`).get()).text();
    expect(html).toContain('<h1>Dunlin</h1>');
    expect(html).toContain('<svg class="van"');
    expect(html).toContain('Hello. This is the bot for Dunlin.');
  });

  it('stores nothing when a link is only opened', async () => {
    const world = await aWorld();
    const path = `/chat/${await world.link()}`;
    await webPerson(world, path).get();
    await webPerson(world).get();
    expect(world.received).toEqual([]);
    expect(await world.store.threads({})).toEqual([]);
  });

  it('takes a message without scripting and shows the answer after the redirect', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world, `/chat/${await world.link()}`);
    const answer = await person.post({ key: 'abcdefgh1', text: 'is it on?' });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(`${person.path}#here`);
    expect((await person.screen()).map((line) => line.text)).toEqual([
      'heard',
      '\u2018is it on?\u2019',
      'heard is it on?',
    ]);
  });

  it('begins a thread with the token of its link, once, before the first words', async () => {
    const world = await aWorld();
    const token = await world.link();
    const person = webPerson(world, `/chat/${token}`);
    await person.post({ key: 'abcdefgh1', text: 'one' });
    await person.post({ key: 'abcdefgh2', text: 'two' });
    expect(world.received.map(({ text, startToken }) => ({ text, startToken }))).toEqual([
      { text: '', startToken: token },
      { text: 'one', startToken: null },
      { text: 'two', startToken: null },
    ]);
  });

  it('takes the same key once, however often it is sent', async () => {
    const world = await aWorld();
    const person = webPerson(world);
    await person.get();
    for (let i = 0; i < 3; i++) await person.post({ key: 'abcdefgh1', text: 'once' });
    expect(world.received.map((message) => message.text)).toEqual(['once']);
  });

  it('keeps the keys of two people apart', async () => {
    const world = await aWorld();
    await webPerson(world).post({ key: 'abcdefgh1', text: 'mine' });
    await webPerson(world).post({ key: 'abcdefgh1', text: 'yours' });
    expect(world.received.map((message) => message.text)).toEqual(['mine', 'yours']);
  });

  it('gives each person who opens a link a thread of their own', async () => {
    const world = await aWorld({ answer: echo });
    const path = `/chat/${await world.link()}`;
    const [ngozi, kwame] = [webPerson(world, path), webPerson(world, path)];
    await ngozi.post({ key: 'abcdefgh1', text: 'from Ngozi' });
    await kwame.post({ key: 'abcdefgh2', text: 'from Kwame' });
    const screen = (await ngozi.screen()).map((line) => line.text).join(' ');
    expect(screen).toContain('from Ngozi');
    expect(screen).not.toContain('Kwame');
    expect(await world.store.threads({})).toHaveLength(2);
  });

  it('keeps the thread when a new link to the same hire is opened on the same device', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world, `/chat/${await world.link()}`);
    await person.post({ key: 'abcdefgh1', text: 'before' });
    const html = await (await person.get(`/chat/${await world.link()}`)).text();
    expect(readLines(html).map((line) => line.text)).toContain('\u2018before\u2019');
  });

  it('shows no more of a link that has ended than that it has, and still takes a danger', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world, '/chat/AAAAAAAAAAAAAAAAAAAAAA');
    const html = await (await person.get()).text();
    expect(html).toContain('This link no longer opens a hire');
    expect(html).not.toContain('Dunlin</h1>');
    await person.post({ key: 'abcdefgh1', text: 'smell gas' });
    expect(world.received.map(({ text, startToken }) => ({ text, startToken }))).toEqual([
      { text: 'smell gas', startToken: null },
    ]);
  });

  it('hands on a press with the words that stood on the button', async () => {
    const world = await aWorld({
      answer: () => [aReply({ choices: [{ id: 'topic:fridge-warm', label: 'It is <not> cold', tone: 'quiet' }] })],
    });
    const person = webPerson(world);
    await person.post({ key: 'abcdefgh1', text: 'fridge' });
    const [choice] = (await person.screen()).at(-1)?.choices ?? [];
    expect(choice).toEqual({ id: 'topic:fridge-warm', label: 'It is <not> cold' });
    await person.post({ key: 'abcdefgh2', choice: choice?.id ?? '' });
    expect(world.received.at(-1)).toMatchObject({ choice: 'topic:fridge-warm', text: 'It is <not> cold' });
  });

  it('offers nothing to press that was asked before the last words', async () => {
    const world = await aWorld({
      answer: () => [aReply({ choices: [{ id: 'worked', label: 'That worked', tone: 'quiet' }] })],
    });
    const person = webPerson(world);
    await person.post({ key: 'abcdefgh1', text: 'one' });
    await person.post({ key: 'abcdefgh2', text: 'two' });
    expect((await person.screen()).map((line) => line.choices.length)).toEqual([0, 0, 0, 1]);
  });

  it('escapes everything, whatever is typed', async () => {
    const world = await aWorld({ answer: echo });
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 200 }), async (text) => {
        const person = webPerson(world);
        const hostile = `<script>alert(1)</script>"'${text}`;
        expect((await person.post({ text: hostile })).status).toBe(303);
        const html = await (await person.get()).text();
        expect(html).not.toContain('<script>alert');
        expect(readLines(html)).toHaveLength(2);
      }),
      { numRuns: 30 },
    );
  });

  it('keeps a photo with its words, and opens it to nobody outside the thread', async () => {
    const world = await aWorld();
    const person = webPerson(world);
    await person.post({ key: 'abcdefgh1', text: 'what is this lamp?', photo: new File([aPhoto()], 'lamp.png') });
    const [attachment] = world.received[0]?.attachments ?? [];
    expect(world.received[0]).toMatchObject({ text: 'what is this lamp?', attachments: [{ kind: 'photo' }] });
    const path = `/chat/file/${attachment !== undefined && 'file' in attachment ? attachment.file : ''}`;
    const mine = await person.get(path);
    expect(new Uint8Array(await mine.arrayBuffer())).toEqual(aPhoto());
    expect(mine.headers.get('content-security-policy')).toContain('sandbox');
    expect((await webPerson(world).get(path)).status).toBe(404);
  });

  it('refuses a photo over 10 MB kindly and takes the words that came with it', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world);
    const photo = new File([aPhoto(10 * 1024 * 1024 + 1)], 'big.png');
    const answer = await person.post({ key: 'abcdefgh1', text: 'smell gas', photo });
    expect(await answer.text()).toContain('larger than 10 MB');
    expect(world.received).toMatchObject([{ text: 'smell gas', attachments: [] }]);
  });

  it('refuses a body past all measure without reading it whole', async () => {
    const world = await aWorld();
    const answer = await webPerson(world).post({ text: 'x', photo: new File([aPhoto(27 * 1024 * 1024)], 'huge.png') });
    expect(answer.status).toBe(413);
    expect(await answer.text()).toContain('under 10 MB');
    expect(world.received).toEqual([]);
  });

  it('asks for a very long text in parts and keeps it in the box', async () => {
    const world = await aWorld();
    const answer = await webPerson(world).post({ text: 'ab '.repeat(6000) });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('Send it in two or three parts');
    expect(html).toContain('ab ab ab');
  });

  it('takes a text over 4,096 letters as it is', async () => {
    const world = await aWorld();
    const text = 'word '.repeat(1000).trim();
    await webPerson(world).post({ text });
    expect(world.received[0]?.text).toBe(text);
  });

  it('does nothing for an empty form, a strange body or a form from another site', async () => {
    const world = await aWorld();
    const person = webPerson(world);
    expect((await person.post({ text: '  ' })).status).toBe(303);
    const strange = await fetch(`${world.origin}/chat`, {
      method: 'POST',
      body: '{"text":"hi"}',
      headers: { 'content-type': 'application/json' },
    });
    expect(strange.status).toBe(400);
    const foreign = await fetch(`${world.origin}/chat`, {
      method: 'POST',
      body: new URLSearchParams({ text: 'hi' }),
      headers: { origin: 'http://evil.test' },
    });
    expect(foreign.status).toBe(403);
    expect(world.received).toEqual([]);
  });

  it('lets one network address begin only so many threads without a booking', async () => {
    const world = await aWorld({ web: { newThreadsAnHour: 2 } });
    const statuses = [];
    for (let i = 0; i < 3; i++) statuses.push((await webPerson(world).post({ text: 'K7QM-4T2X' })).status);
    expect(statuses).toEqual([303, 303, 429]);
    const booked = webPerson(world, `/chat/${await world.link()}`);
    expect((await booked.post({ text: 'hello' })).status).toBe(303);
  });

  it('shows the last forty lines of a long week, and all on a press', async () => {
    const world = await aWorld();
    const person = webPerson(world);
    for (let i = 0; i < 25; i++) await person.post({ text: `number ${i}` });
    const html = await (await person.get()).text();
    expect(readLines(html)).toHaveLength(40);
    expect(html).toContain('Show what was said before');
    expect(readLines(await (await person.get('/chat?all')).text())).toHaveLength(50);
  });

  it('puts the call first in a notice, whatever its order in the reply', async () => {
    const world = await aWorld({
      answer: () => [
        aReply({
          kind: 'notice',
          blocks: [
            { kind: 'line', text: 'Get out now.' },
            { kind: 'steps', items: ['Leave the door open.'] },
            { kind: 'call', label: 'Emergency', number: '999' },
          ],
        }),
      ],
    });
    const person = webPerson(world);
    await person.post({ text: 'smell gas' });
    const html = await (await person.get()).text();
    expect(html).toMatch(/role="alert".*href="tel:999".*Get out now\..*Leave the door open\./s);
    expect(html).toMatch(/<article class="line notice" id="here"/);
  });

  it('keeps its cookie from scripts and other sites, and over https alone where there is https', async () => {
    const plain = await (await aWorld()).origin;
    const cookie = (await fetch(`${plain}/chat`)).headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/HttpOnly/i);
    expect(cookie).toMatch(/SameSite=Lax/i);
    expect(cookie).not.toMatch(/Secure/i);
    const safe = await aWorld({ web: { secure: true } });
    expect((await fetch(`${safe.origin}/chat`)).headers.get('set-cookie')).toMatch(/Secure/i);
  });

  it('stores no secret of the visitor: neither cookie nor token stands in a thread', async () => {
    const world = await aWorld();
    const token = await world.link();
    const person = webPerson(world, `/chat/${token}`);
    const cookie = /pitchhand=([^;]+)/.exec((await person.get()).headers.get('set-cookie') ?? '')?.[1] ?? '';
    await person.post({ text: 'hi' });
    const threads = JSON.stringify(await world.store.threads({}));
    expect(cookie.length).toBeGreaterThan(15);
    expect(threads).not.toContain(cookie);
    expect(threads).not.toContain(token);
  });

  it('stays under 60 KB with style and script', async () => {
    const world = await aWorld({
      answer: () => [aReply({ blocks: [{ kind: 'steps', items: ['One', 'Two', 'Three', 'Four'] }] })],
    });
    const person = webPerson(world, `/chat/${await world.link()}`);
    for (let i = 0; i < 20; i++) await person.post({ text: `and what of the number ${i} then?` });
    const html = await (await person.get()).text();
    const files = [...html.matchAll(/(?:href|src)="(\/chat\/-\/[^"]+)"/g)].map(([, path = '']) => path);
    expect(files).toHaveLength(2);
    const parts = await Promise.all(
      files.map(async (path) => (await (await person.get(path)).arrayBuffer()).byteLength),
    );
    const bytes = parts.reduce((sum, part) => sum + part, Buffer.byteLength(html));
    console.log(
      `chat page with 40 lines: ${bytes} bytes (page ${Buffer.byteLength(html)}, style and script ${parts.join(', ')})`,
    );
    expect(bytes).toBeLessThan(60_000);
  });
});

describe('the event stream of the chat page', () => {
  async function events(person: ReturnType<typeof webPerson>, after: number, wanted: number): Promise<string> {
    const answer = await person.get(`${person.path}/events?after=${after}`);
    const reader = answer.body?.getReader();
    const text = new TextDecoder();
    let all = '';
    while (reader !== undefined && (all.match(/^event:/gm)?.length ?? 0) < wanted) {
      const { value, done } = await reader.read();
      if (done) break;
      all += text.decode(value);
    }
    await reader?.cancel();
    return all;
  }

  it('tells what came after the last line seen, then what comes', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world);
    await person.post({ text: 'first' });
    await person.post({ text: 'second' });
    const told = events(person, 1, 5);
    await new Promise((resolve) => setTimeout(resolve, 100));
    await person.post({ text: 'third' });
    const text = await told;
    expect(text).not.toContain('\u2018first\u2019');
    for (const part of ['heard first', '\u2018second\u2019', 'heard second', '\u2018third\u2019', 'heard third'])
      expect(text).toContain(part);
    expect(text).toMatch(/^id: 6$/m);
  });

  it('tells when the hire has moved to another van', async () => {
    const world = await aWorld({ answer: echo });
    const person = webPerson(world, `/chat/${await world.link()}`);
    await person.post({ text: 'hello' });
    const told = events(person, 99, 1);
    await new Promise((resolve) => setTimeout(resolve, 100));
    await world.store.putBookings([aBooking({ van: 'wren' })]);
    await world.tell((await world.store.threads({}))[0]?.id ?? '', aReply());
    expect(await told).toContain('<h1>Wren</h1>');
  });
});
