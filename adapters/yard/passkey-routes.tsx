import { Hono } from 'hono';
import { HOUR_MS } from '../../src/index.ts';
import { type Form, readForm } from '../http/forms.ts';
import type { FrameProps } from './frame.tsx';
import { type PasskeysSaid, passkeysPage } from './passkey-page.tsx';
import type { Passkeys } from './passkeys.ts';
import { beginSession, ownForm, type Session, signedIn } from './session.ts';
import { shut } from './sign-in.tsx';
import type { YardWorld } from './world.ts';

const LABEL_UNITS = 40;
/** A session somebody else got hold of must not earn itself a lasting key: only a fresh one may add. */
const MAY_ADD_MS = HOUR_MS;

/** Signing in by passkey, and each person's own list of them. */
export function passkeyRoutes(world: YardWorld, passkeys: Passkeys, files: FrameProps['files']): Hono {
  const app = new Hono();
  const mayAdd = (session: Session): boolean =>
    passkeys.host !== null && world.clock.nowMs() - session.beganMs < MAY_ADD_MS;

  app.post('/sign-in/question', async (c) => c.json(await passkeys.askToSignIn()));
  app.post('/sign-in', async (c) => {
    const read = await readForm(c);
    const who = read.kind === 'unreadable' ? null : await passkeys.signIn(read.form.text('answer'));
    if (who === null) return c.text('This passkey does not open the yard. Ask an operator for a link.\n', 403);
    await beginSession(c, world, who);
    return c.body(null, 204);
  });

  app.use(signedIn(world, (c) => shut(c, world, files, 'signed-out', passkeys.host)));
  const shown = async (session: Session, said: PasskeysSaid) => {
    const all = await passkeys.list(session.role === 'operator' ? undefined : session.name);
    return passkeysPage({ world, session, all, host: passkeys.host, mayAdd: mayAdd(session), said }, files);
  };
  const ownFormOf = async (c: Parameters<typeof readForm>[0]): Promise<Form | null> => {
    const read = await readForm(c);
    return read.kind === 'form' && ownForm(c.get('session'), read.form.text('csrf')) ? read.form : null;
  };

  app.get('/', async (c) => c.html(await shown(c.get('session'), null)));
  app.post('/question', async (c) => {
    if ((await ownFormOf(c)) === null) return c.text('This form is not from your own page.\n', 403);
    if (!mayAdd(c.get('session'))) return c.text('Sign in again first: it was too long ago.\n', 403);
    return c.json(await passkeys.askToAdd(c.get('session')));
  });
  app.post('/', async (c) => {
    const session = c.get('session');
    const form = await ownFormOf(c);
    if (form === null) return c.text('This form is not from your own page.\n', 403);
    if (!mayAdd(session)) return c.text('Sign in again first: it was too long ago.\n', 403);
    const label = form.text('label').trim().slice(0, LABEL_UNITS) || 'A device';
    const end = await passkeys.add(session, form.text('answer'), label);
    if (end === 'added') return c.body(null, 204);
    return end === 'too-many'
      ? c.text('Ten devices are enough. Remove one first.\n', 409)
      : c.text('The device could not prove its key. Nothing was added.\n', 422);
  });
  app.post('/remove', async (c) => {
    const form = await ownFormOf(c);
    if (form === null) return c.text('This form is not from your own page.\n', 403);
    const session = c.get('session');
    const end = await passkeys.remove(session, form.text('passkey'));
    return c.html(await shown(session, end), end === 'removed' ? 200 : 404);
  });
  return app;
}
