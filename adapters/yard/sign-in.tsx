import type { Context } from 'hono';
import type { FC } from 'hono/jsx';
import { Van } from '../pages/silhouettes.tsx';
import { Csrf, type FrameProps, yardPage } from './frame.tsx';
import type { Session } from './session.ts';
import type { Role, YardWorld } from './world.ts';

type Files = FrameProps['files'];

/** The yard's own board. */
export const Sign: FC<{ world: YardWorld }> = ({ world }) => (
  <header class="plate sign">
    <h1>{world.firm.yard}</h1>
    <p>{world.firm.name}</p>
  </header>
);

const Fleet: FC<{ world: YardWorld }> = ({ world }) => (
  <div class="fleet" aria-hidden="true">
    {[...world.vans.values()].slice(0, 8).map((van) => (
      <Van van={van} unit={1} />
    ))}
  </div>
);

/** Opening the link shows this; only the button spends it, so that no preview of a message can. */
export function signInPage(world: YardWorld, files: Files, path: string): ReturnType<typeof yardPage> {
  return yardPage({
    title: `Sign in - ${world.firm.yard}`,
    files,
    kind: 'gatehouse',
    children: (
      <main>
        <Sign world={world} />
        <Fleet world={world} />
        <form method="post" action={path}>
          <p>This link lets you in once, on this device.</p>
          <button class="press next" type="submit">
            Open the gate
          </button>
        </form>
      </main>
    ),
  });
}

type WhyShut = 'signed-out' | 'spent';

export function shut(
  c: Context,
  world: YardWorld,
  files: Files,
  why: WhyShut,
  host: string | null,
  status: 200 | 401 | 404 | 410 = 401,
) {
  return c.html(shutPage(world, files, why, host), status);
}

/** For those who are not signed in, and for links that have been used. `host`: where passkeys open, or null. */
function shutPage(world: YardWorld, files: Files, why: WhyShut, host: string | null): ReturnType<typeof yardPage> {
  return yardPage({
    title: world.firm.yard,
    files,
    kind: 'gatehouse',
    children: (
      <main>
        <Sign world={world} />
        <Fleet world={world} />
        <p>
          {why === 'spent'
            ? 'This link has been used or is too old.'
            : 'This is the yard. You are not signed in on this device.'}
        </p>
        {host === null ? null : (
          <form id="open-by-passkey" data-host={host} hidden>
            <button class="press next" type="submit">
              Open by passkey
            </button>
            <p role="status" />
          </form>
        )}
        <p>
          Ask an operator for a new link, or run <code>pitchhand sign-in YOURNAME</code> where the program runs.
        </p>
      </main>
    ),
  });
}

/** A one-time link: shown once and kept nowhere. */
export type Made = { readonly name: string; readonly url: string };

const MAY: Readonly<Record<Role, string>> = {
  staff: 'answers hirers',
  operator: 'answers hirers and lets others in',
};

/** Operators make one-time links for others, and see and end who can come in. */
export function peoplePage(
  world: YardWorld,
  files: Files,
  session: Session,
  {
    made,
    all,
  }: { readonly made: Made | null; readonly all: readonly { readonly name: string; readonly role: Role }[] },
): ReturnType<typeof yardPage> {
  return yardPage({
    title: `Let someone in - ${world.firm.yard}`,
    files,
    kind: 'gatehouse',
    children: (
      <main>
        <Sign world={world} />
        {made === null ? null : (
          <section class="made" role="status">
            <p>{`For ${made.name}, good for one sign-in within a day:`}</p>
            <p>
              <code>{made.url}</code>
            </p>
          </section>
        )}
        <form method="post" action="/yard/people">
          <Csrf session={session} />
          <label for="name">Name, as on the rota</label>
          <input id="name" name="name" list="rota" required maxlength={60} autocomplete="off" />
          <datalist id="rota">
            {world.people.map((name) => (
              <option value={name} />
            ))}
          </datalist>
          <label for="role">May</label>
          <select id="role" name="role">
            <option value="staff">answer hirers</option>
            <option value="operator">answer hirers and let others in</option>
          </select>
          <button class="press next" type="submit">
            Make a link
          </button>
        </form>
        <section aria-labelledby="inside">
          <h2 id="inside">Who can come in</h2>
          <ul class="keys">
            {all.map(({ name, role }) => (
              <li>
                <form method="post" action="/yard/people/remove">
                  <Csrf session={session} />
                  <input type="hidden" name="name" value={name} />
                  <span>
                    <strong>{name}</strong>
                    {MAY[role]}
                  </span>
                  {name === session.name ? (
                    <span>You</span>
                  ) : (
                    <button class="press" type="submit" aria-label={`Shut ${name} out`}>
                      Shut out
                    </button>
                  )}
                </form>
              </li>
            ))}
          </ul>
          <p>Whoever is shut out loses every link, open page and passkey at once. A new link lets them in again.</p>
        </section>
        <p>
          <a href="/yard">Back to the field</a>
        </p>
      </main>
    ),
  });
}
