import type { FC } from 'hono/jsx';
import type { Booking } from '../../src/index.ts';
import { dayOf, daysBetween, wordsOf } from '../../src/index.ts';
import { dialled } from '../pages/blocks.tsx';
import { Camera } from '../pages/icons.tsx';
import type { StandingLine } from '../pages/put-right.ts';
import { Van, type VanSight } from '../pages/silhouettes.tsx';
import { dayName, nightsWords } from '../pages/when.ts';
import { BriefView } from './brief-view.tsx';
import { Csrf, type FrameProps, yardPage } from './frame.tsx';
import { HistoryView } from './history-view.tsx';
import { HolderView } from './holder-view.tsx';
import type { Session } from './session.ts';
import type { ThreadFacts } from './thread-facts.ts';
import { firstNameOf, type YardWorld } from './world.ts';

/** What the page says of an action that did not come off; `text` goes back into the box. */
export type Told = { readonly says: string; readonly text: string };

export type ThreadPage = {
  readonly world: YardWorld;
  readonly session: Session;
  readonly facts: ThreadFacts;
  readonly told: Told | null;
  /** The suggested answer is to be changed before it is sent. */
  readonly change: boolean;
  /** One of the session's own lines, to be put right. */
  readonly right: StandingLine | null;
  /** Made anew with each page: a form sent twice counts once. */
  readonly key: string;
};

export function threadPage(props: ThreadPage, files: FrameProps['files']): ReturnType<typeof yardPage> {
  const { world, session, facts } = props;
  const path = `/yard/thread/${encodeURIComponent(facts.thread.id)}`;
  const name = firstNameOf(facts.booking);
  return yardPage({
    title: `${name} - ${world.firm.yard}`,
    files,
    live: `${path}/events`,
    kind: 'thread',
    children: (
      <>
        <Head world={world} facts={facts} />
        <main>
          <div class="column">
            <div id="live">
              <ThreadParts {...props} />
            </div>
            <ReplyBox {...props} path={path} to={name} />
          </div>
          <Aside path={path} session={session} facts={facts} world={world} keyed={props.key} />
        </main>
      </>
    ),
  });
}

function replyText({ told, change, right, facts }: ThreadPage): string {
  if (told !== null) return told.text;
  if (right?.reply != null) return wordsOf(right.reply);
  return change ? (facts.brief?.suggested ?? '') : '';
}

/** What the event stream sends again when it has changed. */
export const ThreadParts: FC<ThreadPage> = ({ world, session, facts, key }) => (
  <>
    <HolderView world={world} session={session} facts={facts} />
    {facts.brief === null || facts.thread.keeper === 'bot' ? null : (
      <BriefView world={world} session={session} facts={facts} brief={facts.brief} keyed={key} />
    )}
    {facts.booking === null ? null : <BookingFacts world={world} booking={facts.booking} />}
    <HistoryView world={world} session={session} facts={facts} />
  </>
);

/** The way back, and whose thread or hire this is. */
export const HirerSign: FC<{ van: VanSight | undefined; name: string; about: string }> = ({ van, name, about }) => (
  <>
    <a class="press" href="/yard">
      Back to the field
    </a>
    <div class="plate sign">
      {van === undefined ? null : <Van van={van} unit={0.9} />}
      <div>
        <h1>{name}</h1>
        <p>{about}</p>
      </div>
    </div>
  </>
);

const Head: FC<{ world: YardWorld; facts: ThreadFacts }> = ({ world, facts }) => {
  const { booking } = facts;
  const van = booking === null ? undefined : world.vans.get(booking.van);
  return (
    <header class="top">
      <HirerSign
        van={van}
        name={firstNameOf(booking)}
        about={booking === null ? 'No booking yet' : [van?.name ?? booking.van, placeOf(world, booking)].join(', ')}
      />
      {facts.others.length === 0 ? null : (
        <p class="others">
          Same hire, other threads:
          {facts.others.map((other) => (
            <a
              href={`/yard/thread/${encodeURIComponent(other.id)}`}
            >{` ${other.channel}${other.keeper === 'bot' ? '' : ' (waits or is with us)'}`}</a>
          ))}
        </p>
      )}
    </header>
  );
};

function placeOf(world: YardWorld, booking: Booking): string {
  const site = world.sites.get(booking.site ?? '') ?? 'on the road';
  return booking.pitch === null ? site : `${site}, pitch ${booking.pitch}`;
}

/** What one wants to know before ringing them. */
export const BookingFacts: FC<{ world: YardWorld; booking: Booking }> = ({ world, booking }) => {
  const today = dayOf(world.clock.nowMs(), world.firm.timeZone);
  const facts: [string, string | null][] = [
    ['Hirer', booking.hirer],
    [
      'Stays',
      booking.to === null ? null : `${nightsWords(daysBetween(today, booking.to))}, back ${dayName(booking.to)}`,
    ],
    ['Hook-up', booking.amps === null ? null : booking.amps === 0 ? 'none' : `${booking.amps} A`],
    ['Booking', booking.ref],
    ['Note', booking.note === '' ? null : booking.note],
  ];
  return (
    <dl class="facts-table">
      {facts.map(([name, value]) =>
        value === null ? null : (
          <div>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ),
      )}
      {booking.phone === null ? null : (
        <div>
          <dt>Telephone</dt>
          <dd>
            <a href={dialled(booking.phone)}>{booking.phone}</a>
          </dd>
        </div>
      )}
    </dl>
  );
};

/** A note that stays in the yard, and handing the thread to a colleague. */
const Aside: FC<{ path: string; session: Session; facts: ThreadFacts; world: YardWorld; keyed: string }> = (props) => {
  const { path, session, facts, world, keyed } = props;
  const others = world.people.filter((name) => name !== session.name);
  return (
    <section class="aside" aria-label="In the yard">
      <form method="post" action={`${path}/note`}>
        <Csrf session={session} />
        <input type="hidden" name="key" value={keyed} />
        <label for="note">A note that stays in the yard</label>
        <textarea id="note" name="text" rows={2} maxlength={4000} required />
        <button class="press" type="submit">
          Keep the note
        </button>
      </form>
      {facts.thread.keeper === 'bot' || others.length === 0 ? null : (
        <form method="post" action={`${path}/pass`}>
          <Csrf session={session} />
          <label for="to">Hand it to</label>
          <select id="to" name="to">
            {others.map((name) => (
              <option value={name}>{name}</option>
            ))}
          </select>
          <button class="press" type="submit">
            Hand over
          </button>
        </form>
      )}
    </section>
  );
};

const ReplyBox: FC<ThreadPage & { path: string; to: string }> = (props) => {
  const { path, to, session, told, right, key } = props;
  const text = replyText(props);
  return (
    <footer class="box">
      <p class="signal" role="status" id="signal">
        {told?.says ?? (right === null ? '' : `These words take the place of those you sent to ${to}.`)}
      </p>
      <form
        id="box"
        class={right === null ? undefined : 'righting'}
        method="post"
        action={`${path}/${right === null ? 'say' : 'put-right'}`}
        enctype="multipart/form-data"
      >
        <Csrf session={session} />
        <input type="hidden" name="key" value={key} />
        {right === null ? null : <input type="hidden" name="line" value={String(right.id)} />}
        <label class="hush" for="text">{`Your words to ${to}`}</label>
        <textarea
          id="text"
          name="text"
          rows={text === '' ? 1 : 6}
          maxlength={8000}
          placeholder={`To ${to}`}
          autofocus={text !== ''}
        >
          {text}
        </textarea>
        {right === null ? (
          <label class="press photo">
            <Camera />
            <span class="hush">Add a photo or video</span>
            <input class="hush" type="file" name="photo" accept="image/*,video/*,audio/*,application/pdf" />
          </label>
        ) : null}
        <button class="press next" type="submit">
          {right === null ? 'Send' : 'Put it right'}
        </button>
      </form>
    </footer>
  );
};
