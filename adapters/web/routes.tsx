import { getConnInfo } from '@hono/node-server/conninfo';
import { type Context, Hono } from 'hono';
import { HOUR_MS, type Line } from '../../src/index.ts';
import { createAllowance } from '../http/allowance.ts';
import { eventStream, type Told } from '../http/event-stream.ts';
import { fewAtOnce, limitBody, readForm } from '../http/forms.ts';
import { sameSiteOnly } from '../http/same-site.ts';
import { MOST_PHOTO_BYTES } from '../http/uploads.ts';
import { asset, serveAssets } from '../pages/assets.ts';
import { BASE_CSS } from '../pages/base-style.ts';
import { chatPage, OneLine, Plate } from './chat-page.tsx';
import { CHAT_CSS } from './chat-style.ts';
import { takeForm } from './take.ts';
import { again, CHANNEL, type Visitor, visitorOf } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** Read whole before it is judged, so that the words sent with too large a photo are still taken. */
const MOST_BODY_BYTES = 2.5 * MOST_PHOTO_BYTES;
const BODIES_AT_ONCE = 8;

/** The pages under /chat. */
export function webRoutes(world: WebWorld): Hono {
  const app = new Hono();
  const style = asset('chat', 'css', BASE_CSS + CHAT_CSS);
  const script = asset('chat', 'js', world.script);
  const newThreads = createAllowance({ most: world.newThreadsAnHour ?? 60, windowMs: HOUR_MS });
  serveAssets(app, [style, script]);

  const show = async (c: Context, visitor: Visitor, refused?: { says: string; text: string }) => {
    const lines = visitor.thread === null ? [] : await world.store.lines(visitor.thread.id);
    const all = c.req.query('all') !== undefined;
    const paths = { style: `/chat/-/${style.file}`, script: `/chat/-/${script.file}` };
    return c.html(
      chatPage({ world, visitor, lines, all, ...paths, ...(refused === undefined ? {} : { refused }) }),
      refused === undefined ? 200 : 422,
    );
  };

  app.get('/-/picture/:picture/:file', (c) => {
    const named = /^([a-z0-9-]*)\.(light|dark)\.svg$/i.exec(c.req.param('file'));
    const use = { picture: c.req.param('picture'), touch: named?.[1] || null };
    const svg = named === null ? null : world.pictureSvg(use, named[2] === 'dark' ? 'dark' : 'light');
    if (svg === null) return c.notFound();
    return c.body(svg, 200, { 'Content-Type': 'image/svg+xml', 'Cache-Control': 'public, max-age=3600' });
  });

  const look = async (c: Context) => show(c, await visitorOf(c, world));
  app.get('/', look);
  app.get('/:token', look);

  const events = async (c: Context) => {
    const visitor = await visitorOf(c, world);
    return eventStream(c, world.wakes, visitor.address, teller(lastSeen(c), world, visitor));
  };
  app.get('/events', events);
  app.get('/:token/events', events);

  const file = async (c: Context) => openFile(c, world, await visitorOf(c, world));
  app.get('/file/:file', file);
  app.get('/:token/file/:file', file);

  const tooMuch = limitBody(MOST_BODY_BYTES, (c) =>
    refuse(c, 413, 'That is too large to take in. Send a photo under 10 MB, or say in words what it shows.'),
  );
  const crowded = fewAtOnce(BODIES_AT_ONCE, (c) => {
    c.header('Retry-After', '3');
    return refuse(c, 503, 'Many people are sending at once. Send it again in a few seconds.');
  });
  const take = async (c: Context) => {
    const read = await readForm(c);
    if (read.kind === 'unreadable') return refuse(c, 400, 'That could not be read. Send it again from the page.');
    const visitor = await visitorOf(c, world);
    if (visitor.thread === null && visitor.token === null && !newThreads.take(callerOf(c), world.clock.nowMs())) {
      return refuse(
        c,
        429,
        `Too many new conversations from here. Open your own link, or ring ${world.firm.phone}. If anyone is in danger call 999.`,
      );
    }
    const taken = await takeForm(world, visitor, read.form);
    if (wantsData(c)) {
      return taken.kind === 'refused'
        ? c.json({ says: taken.says }, 422)
        : c.json({ says: taken.kind === 'taken' ? taken.refused : null }, 202);
    }
    if (taken.kind === 'refused') return show(c, visitor, taken);
    if (taken.kind === 'taken') {
      await untilAnswered(world, visitor);
      if (taken.refused !== null) return show(c, await again(world, visitor), { says: taken.refused, text: '' });
    }
    return c.redirect(`${visitor.path}#here`, 303);
  };
  app.post('/', sameSiteOnly, crowded, tooMuch, take);
  app.post('/:token', sameSiteOnly, crowded, tooMuch, take);
  return app;
}

/** What an open page has not seen yet: new lines, and the head when the van or who has the thread has changed. */
function teller(after: number, world: WebWorld, first: Visitor): () => Promise<Told> {
  let seen = after;
  let plate = String(<Plate world={world} visitor={first} />);
  return async () => {
    const visitor = await again(world, first);
    if (visitor.thread === null) return [];
    const lines = await world.store.lines(visitor.thread.id, seen);
    seen = lines.at(-1)?.id ?? seen;
    const head = String(<Plate world={world} visitor={visitor} />);
    const changed = head !== plate;
    plate = head;
    const lastSaid = lines.findLastIndex((line) => line.who === 'hirer');
    return [
      ...(changed ? [{ event: 'plate', data: head }] : []),
      ...lines.map((line, i) => ({
        event: 'line',
        id: String(line.id),
        data: String(<OneLine world={world} visitor={visitor} line={line} open={i > lastSaid} here={false} />),
      })),
    ];
  };
}

/** The browser's own memory of the stream; on the first visit, the last line that the page was drawn with. */
function lastSeen(c: Context): number {
  return Number(c.req.header('last-event-id') ?? c.req.query('after')) || 0;
}

/** Without scripting the page is shown again once; it waits a little, so that the answer is mostly on it. */
async function untilAnswered(world: WebWorld, visitor: Visitor): Promise<void> {
  const bell = world.wakes.join(visitor.address);
  try {
    const untilMs = world.clock.nowMs() + (world.patienceMs ?? 2500);
    for (;;) {
      const thread = await world.store.threadAt({ channel: CHANNEL, address: visitor.address });
      const lines = thread === null ? [] : await world.store.lines(thread.id);
      const leftMs = untilMs - world.clock.nowMs();
      if (lines.at(-1)?.who !== 'hirer' || thread?.keeper === 'staff' || leftMs <= 0) return;
      if ((await bell.wait(Math.min(leftMs, 500))) === 'closed') return;
    }
  } finally {
    bell.leave();
  }
}

/** A file is open to those in whose thread it was sent, and to nobody else. */
async function openFile(c: Context, world: WebWorld, visitor: Visitor): Promise<Response> {
  const name = c.req.param('file') ?? '';
  const lines = visitor.thread === null ? [] : await world.store.lines(visitor.thread.id);
  if (!lines.some((line) => filesIn(line).includes(name))) return c.notFound();
  const found = (await world.uploads.read(name)) ?? (await world.openFile?.(name)) ?? null;
  if (found === null) return c.notFound();
  return c.body(found.bytes, 200, {
    'Content-Type': found.type,
    'Content-Security-Policy': "default-src 'none'; sandbox",
    'Cache-Control': 'private, max-age=86400',
  });
}

function filesIn(line: Line): readonly string[] {
  const replied = (line.reply?.blocks ?? []).flatMap((block) =>
    block.kind === 'attachment' ? [block.attachment] : [],
  );
  return [...(line.message?.attachments ?? []), ...replied].flatMap((one) => ('file' in one ? [one.file] : []));
}

function wantsData(c: Context): boolean {
  return (c.req.header('accept') ?? '').includes('application/json');
}

function refuse(c: Context, status: 400 | 413 | 429 | 503, says: string): Response {
  return wantsData(c) ? c.json({ says }, status) : c.text(`${says}\n`, status);
}

function callerOf(c: Context): string {
  return getConnInfo(c).remote.address ?? 'unknown';
}
