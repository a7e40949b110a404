import type { FC } from 'hono/jsx';
import { dayAt } from '../pages/when.ts';
import { Csrf, type FrameProps, yardPage } from './frame.tsx';
import type { Passkey } from './passkeys.ts';
import type { Session } from './session.ts';
import { Sign } from './sign-in.tsx';
import type { YardWorld } from './world.ts';

export type PasskeysSaid = 'removed' | 'not-yours' | null;

type Props = {
  readonly world: YardWorld;
  readonly session: Session;
  /** The session's own; for an operator everybody's. */
  readonly all: readonly Passkey[];
  readonly host: string | null;
  readonly mayAdd: boolean;
  readonly said: PasskeysSaid;
};

const SAID: Readonly<Record<Exclude<PasskeysSaid, null>, string>> = {
  removed: 'Removed. That device has to come by a link now.',
  'not-yours': 'There is no such passkey of yours.',
};

/** The devices that open the yard without a link: one's own, and for operators everybody's. */
export function passkeysPage(props: Props, files: FrameProps['files']): ReturnType<typeof yardPage> {
  const { world, session, all, host, mayAdd, said } = props;
  const own = all.filter(({ owner }) => owner === session.name);
  const others = all.filter(({ owner }) => owner !== session.name);
  return yardPage({
    title: `Passkeys - ${world.firm.yard}`,
    files,
    kind: 'gatehouse',
    children: (
      <main>
        <Sign world={world} />
        {said === null ? null : (
          <p class="made" role="status">
            {SAID[said]}
          </p>
        )}
        <section aria-labelledby="own">
          <h2 id="own">{own.length === 0 ? 'No device of yours has a passkey' : 'Your devices'}</h2>
          <p>A passkey lets this device open the yard by finger, face or PIN, without a new link.</p>
          <Keys session={session} keys={own} world={world} />
        </section>
        {mayAdd ? (
          <form id="add-passkey" data-host={host} hidden>
            <Csrf session={session} />
            <label for="label">Call this device</label>
            <input id="label" name="label" maxlength={40} autocomplete="off" placeholder="My phone" />
            <button class="press next" type="submit">
              Add this device
            </button>
            <p role="status" />
          </form>
        ) : (
          <p>
            {host === null
              ? 'Passkeys need the yard to be reached by a name over https.'
              : 'To add this device, sign out and in again first: it is too long ago.'}
          </p>
        )}
        {others.length === 0 ? null : (
          <section aria-labelledby="others">
            <h2 id="others">Everybody else’s</h2>
            <Keys session={session} keys={others} world={world} />
          </section>
        )}
        <p>
          <a href="/yard">Back to the field</a>
        </p>
      </main>
    ),
  });
}

const Keys: FC<{ session: Session; keys: readonly Passkey[]; world: YardWorld }> = ({ session, keys, world }) => {
  const day = (ms: number): string => dayAt(ms, world.firm.timeZone);
  return (
    <ul class="keys">
      {keys.map(({ hash, owner, label, addedMs, usedMs }) => (
        <li>
          <form method="post" action="/yard/passkeys/remove">
            <Csrf session={session} />
            <input type="hidden" name="passkey" value={hash} />
            <span>
              <strong>{owner === session.name ? label : `${owner}: ${label}`}</strong>
              {`added ${day(addedMs)}, ${usedMs === null ? 'not used yet' : `last used ${day(usedMs)}`}`}
            </span>
            <button class="press" type="submit" aria-label={`Remove ${label}`}>
              Remove
            </button>
          </form>
        </li>
      ))}
    </ul>
  );
};
