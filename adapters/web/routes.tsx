import { getConnInfo } from '@hono/node-server/conninfo';
import { type Context, Hono } from 'hono';
import { HOUR_MS } from '../../src/index.ts';
import { createAllowance } from '../http/allowance.ts';
import { eventStream, type Told } from '../http/event-stream.ts';
import { fewAtOnce, limitBody, readForm } from '../http/forms.ts';
import { sendFile, sendPicture } from '../http/open-file.ts';
import { sameSiteOnly } from '../http/same-site.ts';
import { MOST_FILE_BYTES } from '../http/uploads.ts';
import { asset, serveAssets } from '../pages/assets.ts';
import { BASE_CSS } from '../pages/base-style.ts';
import { asTheyStand } from '../pages/put-right.ts';
import { isSaid } from '../pages/said.tsx';
import { chatPage } from './chat-page.tsx';
import { CHAT_CSS } from './chat-style.ts';
import { OneLine } from './lines.tsx';
import { Plate } from './plate.tsx';
import { takeForm } from './take.ts';
import { untilAnswered } from './until-answered.ts';
import { again, type Visitor, visitorOf } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** Read whole before it is judged, so that the words sent with too large a photo are still taken. */
const MOST_BODY_BYTES = 2.5 * MOST_FILE_BYTES;
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

  app.get('/-/picture/:picture/:file', (c) => sendPicture(c, world.pictureSvg));

  const events = async (c: Context) => {
    const visitor = await visitorOf(c, world);
    return eventStream(c, world.wakes, visitor.address, teller(lastSeen(c), world, visitor));
  };
  app.get('/events', events);
  app.get('/:token/events', events);

  const file = async (c: Context) => openFile(c, world, await visitorOf(c, world));
  app.get('/file/:file', file);
  app.get('/:token/file/:file', file);

  // After the addresses that are words of our own: no token may hide them.
  const look = async (c: Context) => show(c, await visitorOf(c, world));
  app.get('/', look);
  app.get('/:token', look);

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
      await untilAnswered(world, visitor.address, world.patienceMs ?? 2500);
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
    const said = asTheyStand(lines).filter(isSaid);
    const right = lines.some((line) => line.reply?.putsRight !== undefined)
      ? asTheyStand(await world.store.lines(visitor.thread.id)).filter((line) => (line.putRightMs ?? 0) > 0)
      : [];
    const lastSaid = said.findLastIndex((line) => line.who === 'hirer');
    return [
      ...(changed ? [{ event: 'plate', data: head }] : []),
      ...said.map((line, i) => ({
        event: 'line',
        id: String(line.id),
        data: String(<OneLine world={world} visitor={visitor} line={line} open={i > lastSaid} here={false} />),
      })),
      ...right.map((line) => ({
        event: 'right',
        id: String(seen),
        data: String(<OneLine world={world} visitor={visitor} line={line} open={false} here={false} />),
      })),
    ];
  };
}

/** The browser's own memory of the stream; on the first visit, the last line that the page was drawn with. */
function lastSeen(c: Context): number {
  return Number(c.req.header('last-event-id') ?? c.req.query('after')) || 0;
}

/** A file is open to those in whose thread it was sent, and to nobody else. */
async function openFile(c: Context, world: WebWorld, visitor: Visitor): Promise<Response> {
  const lines = visitor.thread === null ? [] : await world.store.lines(visitor.thread.id);
  return sendFile(c, c.req.param('file') ?? '', lines, { uploads: world.uploads, elsewhere: world.openFile });
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
