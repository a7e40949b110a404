import { type Context, Hono } from 'hono';
import type { Attachment, Event } from '../../src/index.ts';
import { type Form, fewAtOnce, limitBody, readForm } from '../http/forms.ts';
import { freshKey } from '../http/fresh-key.ts';
import { sendFile, sendPicture } from '../http/open-file.ts';
import { sameSiteOnly } from '../http/same-site.ts';
import { MOST_FILE_BYTES } from '../http/uploads.ts';
import { asset, serveAssets } from '../pages/assets.ts';
import { BASE_CSS } from '../pages/base-style.ts';
import type { StandingLine } from '../pages/put-right.ts';
import { bookingPage } from './booking-page.tsx';
import { type As, type Day, DayParts, dayPage } from './day-page.tsx';
import { doorRoutes } from './door-routes.tsx';
import { fieldAt } from './field.ts';
import { growthRoutes } from './growth-routes.tsx';
import { GROWTH_CSS } from './growth-style.ts';
import { live } from './live.ts';
import { createOnce } from './once.ts';
import { passkeyRoutes } from './passkey-routes.tsx';
import { createPasskeys } from './passkeys.ts';
import { ownForm, type Session, signedIn } from './session.ts';
import { shut } from './sign-in.tsx';
import { type ThreadFacts, threadFacts } from './thread-facts.ts';
import { ThreadParts, type Told, threadPage } from './thread-page.tsx';
import { turnaroundPage } from './turnaround-page.tsx';
import { type ActionEnd, YARD, type YardWorld } from './world.ts';
import { YARD_CSS } from './yard-style.ts';

const MOST_BODY_BYTES = 2.5 * MOST_FILE_BYTES;
const BODIES_AT_ONCE = 8;
const KEYS_KEPT = 2000;

/** The pages under /yard. */
export function yardRoutes(world: YardWorld): Hono {
  const app = new Hono();
  const style = asset('yard', 'css', BASE_CSS + YARD_CSS + GROWTH_CSS);
  const script = asset('yard', 'js', world.script);
  const files = { style: `/yard/-/${style.file}`, script: `/yard/-/${script.file}` };
  const firstTime = createOnce(KEYS_KEPT);
  const picture = asset('graph', 'js', world.pictureScript);
  serveAssets(app, [style, script, picture]);

  app.use(sameSiteOnly);
  app.use(fewAtOnce(BODIES_AT_ONCE * 8, (c) => c.text('Many are here at once. Try again in a few seconds.\n', 503)));
  app.use(limitBody(MOST_BODY_BYTES, (c) => c.text('That is too large. Send a photo under 10 MB.\n', 413)));
  const passkeys = createPasskeys(world);
  app.route('/', doorRoutes(world, passkeys.host, files));
  app.route('/passkeys', passkeyRoutes(world, passkeys, files));

  app.use(signedIn(world, (c) => shut(c, world, files, 'signed-out', passkeys.host)));
  app.route('/growth', growthRoutes(world, world.growth, files, `/yard/-/${picture.file}`));
  app.get('/-/picture/:picture/:file', (c) => sendPicture(c, world.pictureSvg));

  const day = (as: As) => async (c: Context) => c.html(dayPage(world, files, c.get('session'), await today(world), as));
  app.get('/', day('field'));
  app.get('/list', day('list'));
  app.get('/turnaround', async (c) => c.html(turnaroundPage(world, files, await today(world))));
  app.get('/events', (c) => {
    const as: As = c.req.query('as') === 'list' ? 'list' : 'field';
    return live(c, world, async () => String(<DayParts world={world} day={await today(world)} as={as} />));
  });

  app.get('/booking/:ref', async (c) => {
    const booking = await world.store.booking(c.req.param('ref'));
    if (booking === null) return c.text('There is no such booking.\n', 404);
    const threads = await world.store.threads({ booking: booking.ref });
    const [only] = threads;
    if (only !== undefined && threads.length === 1) return c.redirect(`/yard/thread/${encodeURIComponent(only.id)}`);
    return c.html(bookingPage(world, files, booking, threads));
  });

  const showThread = async (c: Context, told: Told | null, status: 200 | 409 | 422 = 200) => {
    const facts = await threadFacts(world, c.req.param('id') ?? '');
    if (facts === null) return c.text('There is no such thread.\n', 404);
    const session = c.get('session');
    const change = c.req.query('change') !== undefined;
    const right = ownLine(facts, session, Number(c.req.query('right')));
    return c.html(threadPage({ world, session, facts, told, change, right, key: freshKey() }, files), status);
  };
  app.get('/thread/:id', (c) => showThread(c, null));
  app.get('/thread/:id/events', (c) => {
    const key = freshKey();
    return live(c, world, async () => {
      const facts = await threadFacts(world, c.req.param('id'));
      if (facts === null) return null;
      const session = c.get('session');
      const parts = { world, session, facts, told: null, change: false, right: null, key };
      return String(<ThreadParts {...parts} />);
    });
  });
  app.get('/thread/:id/file/:file', async (c) => {
    const lines = await world.store.lines(c.req.param('id'));
    return sendFile(c, c.req.param('file'), lines, { uploads: world.uploads, elsewhere: world.openFile });
  });

  /** One action: the form must be this session's own and is taken once; what stands in the way is said, with the words kept. */
  const action =
    (act: (id: string, session: Session, form: Form) => Promise<ActionEnd | Told>) => async (c: Context) => {
      const read = await readForm(c);
      const session = c.get('session');
      if (read.kind === 'unreadable') return c.text('That could not be read. Send it again from the page.\n', 400);
      if (!ownForm(session, read.form.text('csrf')))
        return c.text('This form is not from your own page. Open the page again.\n', 403);
      const id = c.req.param('id') ?? '';
      const end = firstTime(read.form.text('key')) ? await act(id, session, read.form) : ({ kind: 'done' } as const);
      world.wakes.wake(YARD);
      if ('says' in end) return showThread(c, end, 422);
      switch (end.kind) {
        case 'no-such-thread':
          return c.text('There is no such thread.\n', 404);
        case 'taken-by':
          return showThread(c, { says: `${end.name} has it. Nothing was sent.`, text: read.form.text('text') }, 409);
        case 'done':
          return c.redirect(`/yard/thread/${encodeURIComponent(id)}#last`, 303);
      }
    };
  const { actions } = world;
  app.post(
    '/thread/:id/take',
    action((id, session) => actions.take(id, session.name)),
  );
  app.post(
    '/thread/:id/give-back',
    action((id, session) => actions.giveBack(id, session.name)),
  );
  app.post(
    '/thread/:id/pass',
    action(async (id, session, form) => {
      const to = form.text('to');
      return world.people.includes(to)
        ? actions.pass(id, session.name, to)
        : { says: 'That name is not on the rota.', text: '' };
    }),
  );
  app.post(
    '/thread/:id/note',
    action(async (id, session, form) => {
      const text = form.text('text').trim();
      return text === '' ? { says: 'The note was empty.', text: '' } : actions.note(id, session.name, text);
    }),
  );
  app.post(
    '/thread/:id/say',
    action(async (id, session, form) => {
      const text = form.text('text').replace(/\r\n?/g, '\n').trim();
      const sent = await fileOf(world, form.file('photo'));
      if ('says' in sent) return { says: sent.says, text };
      if (text === '' && sent.attachments.length === 0) return { says: 'There was nothing to send.', text };
      return actions.say(id, session.name, text, sent.attachments);
    }),
  );
  app.post(
    '/thread/:id/put-right',
    action((id, session, form) => {
      const text = form.text('text').replace(/\r\n?/g, '\n').trim();
      return text === ''
        ? Promise.resolve({ says: 'There was nothing to put in its place.', text })
        : actions.putRight(id, session.name, Number(form.text('line')), text);
    }),
  );
  return app;
}

function ownLine(facts: ThreadFacts, session: Session, id: number): StandingLine | null {
  const found = facts.history.find((entry) => entry.kind === 'line' && entry.line.id === id);
  return found?.kind === 'line' && found.line.reply?.from === session.name ? found.line : null;
}

async function fileOf(
  world: YardWorld,
  file: File | null,
): Promise<{ readonly attachments: readonly Attachment[] } | { readonly says: string }> {
  if (file === null) return { attachments: [] };
  const kept = await world.uploads.keep(new Uint8Array(await file.arrayBuffer()));
  switch (kept.kind) {
    case 'kept':
      return { attachments: [{ kind: kept.attachment, file: kept.file }] };
    case 'empty':
      return { attachments: [] };
    case 'too-big':
      return { says: 'That is larger than 10 MB. Nothing was sent.' };
    case 'not-ours-to-open':
      return { says: 'That is no photo, video, sound or PDF. Nothing was sent.' };
  }
}

async function today(world: YardWorld): Promise<Day> {
  const { store, vans, sites, aimMinutes, firm } = world;
  const nowMs = world.clock.nowMs();
  const [bookings, threads, workshop] = await Promise.all([
    store.bookings(),
    store.threads({ keeper: ['waiting', 'staff'] }),
    world.workshop(),
  ]);
  const field = fieldAt({ bookings, threads, vans, sites, aimMinutes, timeZone: firm.timeZone }, nowMs);
  const questions = await Promise.all(
    threads.map(async (thread) => [thread.id, await lastQuestion(world, thread.id)] as const),
  );
  return { field, questions: new Map(questions), workshop, nowMs };
}

async function lastQuestion(world: YardWorld, threadId: string): Promise<string> {
  const passes = await world.store.events({ threadId, kinds: ['passed'] });
  const last: Event | undefined = passes.at(-1)?.event;
  return last?.kind === 'passed' ? last.brief.question : '';
}
