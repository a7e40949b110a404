import { type Context, Hono } from 'hono';
import { DAY_MS } from '../../src/index.ts';
import { readForm } from '../http/forms.ts';
import type { FrameProps } from './frame.tsx';
import { admit, dismiss, members, roleNow } from './members.ts';
import { beginSession, endSession, ownForm, type Session, signedIn } from './session.ts';
import { type Made, peoplePage, shut, signInPage } from './sign-in.tsx';
import { roleOf, YARD, type YardWorld } from './world.ts';

type Files = FrameProps['files'];

const TOKEN = /^[A-Za-z0-9_-]{8,64}$/;

/**
 * The way in and out: one-time links, spent by the button's POST and never by opening them.
 *
 * @param host Where passkeys open too, or null.
 */
export function doorRoutes(world: YardWorld, host: string | null, files: Files): Hono {
  const app = new Hono();

  app.get('/sign-in', (c) => shut(c, world, files, 'signed-out', host, 200));
  app.get('/sign-in/:token', (c) => {
    const token = c.req.param('token');
    return TOKEN.test(token)
      ? c.html(signInPage(world, files, `/yard/sign-in/${token}`))
      : shut(c, world, files, 'spent', host, 404);
  });
  app.post('/sign-in/:token', async (c) => {
    const given = c.req.param('token');
    const token = TOKEN.test(given)
      ? await world.store.spendToken(world.tokens.hashOf(given), 'sign-in', world.clock.nowMs())
      : null;
    const role = token === null ? null : await roleNow(world.store, token.subject, token.data['role']);
    if (token === null || role === null) return shut(c, world, files, 'spent', host, 410);
    await beginSession(c, world, { name: token.subject, role });
    return c.redirect('/yard', 303);
  });

  const inside = signedIn(world, (c) => shut(c, world, files, 'signed-out', host));
  app.post('/sign-out', inside, async (c) => {
    const read = await readForm(c);
    if (read.kind === 'unreadable' || !ownForm(c.get('session'), read.form.text('csrf')))
      return c.text('This form is not from your own page.\n', 403);
    await endSession(c, world);
    return c.redirect('/yard/sign-in', 303);
  });

  const people = async (session: Session, made: Made | null) =>
    peoplePage(world, files, session, { made, all: await members(world.store, world.clock.nowMs()) });

  app.get('/people', inside, async (c) =>
    c.get('session').role === 'operator' ? c.html(await people(c.get('session'), null)) : notYours(c),
  );
  app.post('/people/remove', inside, async (c) => {
    const session = c.get('session');
    if (session.role !== 'operator') return notYours(c);
    const read = await readForm(c);
    if (read.kind === 'unreadable' || !ownForm(session, read.form.text('csrf')))
      return c.text('This form is not from your own page.\n', 403);
    const name = read.form.text('name');
    if (name === session.name) return c.text('Nobody can shut themselves out: ask another operator.\n', 409);
    await dismiss(world.store, name, world.clock.nowMs());
    await world.dismissed?.(name);
    world.wakes.wake(YARD);
    return c.html(await people(session, null));
  });
  app.post('/people', inside, async (c) => {
    const session = c.get('session');
    if (session.role !== 'operator') return notYours(c);
    const read = await readForm(c);
    if (read.kind === 'unreadable' || !ownForm(session, read.form.text('csrf')))
      return c.text('This form is not from your own page.\n', 403);
    const name = read.form.text('name').trim();
    if (name === '' || name.length > 60) return c.text('A name is needed, at most 60 letters long.\n', 422);
    const { token, hash } = world.tokens.newToken();
    const role = roleOf(read.form.text('role'));
    if (name === session.name && role !== session.role)
      return c.text('Nobody can change what they themselves may do: ask another operator.\n', 409);
    await admit(world.store, name, role);
    await world.store.putToken({
      hash,
      use: 'sign-in',
      subject: name,
      data: { role },
      expiresMs: world.clock.nowMs() + DAY_MS,
    });
    return c.html(await people(session, { name, url: `${world.url}/yard/sign-in/${token}` }));
  });
  return app;
}

function notYours(c: Context): Response {
  return c.text('Only an operator may let others in.\n', 403);
}
