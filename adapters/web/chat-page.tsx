import { randomBytes } from 'node:crypto';
import type { FC } from 'hono/jsx';
import type { Line, Reply, Thread } from '../../src/index.ts';
import { dialled, type Finds } from '../pages/blocks.tsx';
import { Beware, Camera } from '../pages/icons.tsx';
import { page } from '../pages/page.tsx';
import { isSaid, Said } from '../pages/said.tsx';
import { Van, type VanSight } from '../pages/silhouettes.tsx';
import { dayAt, dayName, sameDay } from '../pages/when.ts';
import type { Visitor } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** Lines shown when the page opens; those before are one press away, so that a long week stays a small page. */
const SHOWN = 40;

export type ChatPage = {
  readonly world: WebWorld;
  readonly visitor: Visitor;
  readonly lines: readonly Line[];
  readonly all: boolean;
  readonly style: string;
  readonly script: string;
  /** Something that went wrong with what was sent, in words; the box then keeps the text. */
  readonly refused?: { readonly says: string; readonly text: string };
};

export function chatPage(props: ChatPage): ReturnType<typeof page> {
  const { world, visitor } = props;
  const lines = props.lines.filter(isSaid);
  const van = visitor.booking === null ? null : world.vanOf(visitor.booking);
  const from = props.all ? 0 : Math.max(0, lines.length - SHOWN);
  return page({
    title: van === null ? world.firm.name : `${van.name} - ${world.firm.name}`,
    style: props.style,
    script: props.script,
    body: {
      class: 'chat',
      'data-path': visitor.path,
      'data-after': String(props.lines.at(-1)?.id ?? 0),
    },
    children: (
      <>
        <Plate world={world} visitor={visitor} />
        <main>
          <div class="talk" role="log" aria-label="What was said" aria-live="polite">
            {from > 0 ? (
              <p class="earlier">
                <a href={`${visitor.path}?all`}>Show what was said before</a>
              </p>
            ) : null}
            {visitor.ended ? <Ended world={world} /> : null}
            {lines.length === 0 ? <Welcome world={world} visitor={visitor} /> : null}
            <Lines world={world} visitor={visitor} lines={lines} from={from} />
          </div>
        </main>
        <Box visitor={visitor} world={world} refused={props.refused} />
      </>
    ),
  });
}

/** The enamel sign: which van is spoken of, and who has the thread. */
export const Plate: FC<{ world: WebWorld; visitor: Visitor }> = ({ world, visitor }) => {
  const { booking, thread } = visitor;
  const van = booking === null ? null : world.vanOf(booking);
  const site = booking?.site == null ? null : world.siteName(booking.site);
  return (
    <header id="plate">
      <div class={thread === null || thread.keeper === 'bot' ? 'plate' : 'plate held'}>
        {van === null ? null : <Van van={van} unit={0.9} />}
        <div class="words">
          <h1>{van === null ? world.firm.name : van.name}</h1>
          {booking === null ? null : (
            <p class="where">
              {site}
              {booking.to === null ? null : (
                <span class="home">{`${site === null ? '' : ', '}home ${dayName(booking.to)}`}</span>
              )}
            </p>
          )}
          <Holder thread={thread} />
        </div>
      </div>
    </header>
  );
};

const Holder: FC<{ thread: Thread | null }> = ({ thread }) => {
  switch (thread?.keeper) {
    case 'waiting':
      return <p class="holder">Passed to the yard</p>;
    case 'staff':
      return <p class="holder">{`${thread.keeperName ?? 'A person'} has your thread`}</p>;
    default:
      return null;
  }
};

const Ended: FC<{ world: WebWorld }> = ({ world }) => (
  <div class="care">
    <Beware />
    <strong>This link no longer opens a hire</strong>
    <p>{`Type the code from your document wallet below, or ring ${world.firm.name} on ${world.firm.phone}. If anyone is in danger call 999 first.`}</p>
  </div>
);

/** The page before a word was said: the van on its pitch, or the fleet and a place for the code. */
const Welcome: FC<{ world: WebWorld; visitor: Visitor }> = ({ world, visitor }) => {
  const { booking } = visitor;
  const van = booking === null ? null : world.vanOf(booking);
  const reply = world.welcome(booking);
  const line: Line = {
    id: 0,
    threadId: '',
    atMs: world.clock.nowMs(),
    who: 'bot',
    text: '',
    reply,
    message: null,
    sent: null,
  };
  return (
    <>
      <Pitch vans={van === null ? world.fleet : [van]} peg={booking?.pitch ?? null} />
      <OneLine world={world} visitor={visitor} line={line} open={true} here={false} />
      {booking === null ? <Code path={visitor.path} /> : null}
    </>
  );
};

/** Grass under wheels. One van stands large with the number of its pitch beside it; a fleet stands in a row. */
const Pitch: FC<{ vans: readonly VanSight[]; peg: string | null }> = ({ vans, peg }) =>
  vans.length === 0 ? null : (
    <div class={vans.length === 1 ? 'pitch one' : 'pitch'}>
      <div class="ground">
        {vans.map((van) => (
          <Van van={van} unit={vans.length === 1 ? 2 : 1} />
        ))}
        {peg === null ? null : (
          <p class="peg">
            <span class="hush">Pitch</span> {peg}
          </p>
        )}
      </div>
    </div>
  );

const Code: FC<{ path: string }> = ({ path }) => (
  <form class="code" method="post" action={path}>
    <input type="hidden" name="key" value={freshKey()} />
    <label for="code">Code on your document wallet</label>
    <div>
      <input
        id="code"
        name="text"
        required
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxlength={40}
      />
      <button class="press next" type="submit">
        Open my van
      </button>
    </div>
  </form>
);

const Lines: FC<{ world: WebWorld; visitor: Visitor; lines: readonly Line[]; from: number }> = ({
  world,
  visitor,
  lines,
  from,
}) => {
  const lastSaid = lines.findLastIndex((line) => line.who === 'hirer');
  const notice = lines.findLastIndex((line) => line.reply?.kind === 'notice');
  const here = Math.max(notice, lastSaid);
  return (
    <>
      {lines.slice(from).map((line, i) => {
        const before = lines[from + i - 1];
        const newDay = before !== undefined && !sameDay(before.atMs, line.atMs, world.firm.timeZone);
        return (
          <>
            {newDay ? <p class="day">{dayAt(line.atMs, world.firm.timeZone)}</p> : null}
            <OneLine world={world} visitor={visitor} line={line} open={from + i > lastSaid} here={from + i === here} />
          </>
        );
      })}
    </>
  );
};

/** `open`: nothing was said after it, so that what it offers can still be pressed. */
export const OneLine: FC<{ world: WebWorld; visitor: Visitor; line: Line; open: boolean; here: boolean }> = (props) => {
  const { world, visitor, line, open, here } = props;
  return (
    <Said
      line={line}
      hirer="You said"
      firm={`${world.firm.name} said`}
      zone={world.firm.timeZone}
      finds={findsFor(world, visitor)}
      tick={true}
      here={here}
      sentAs={line.message === null ? null : sentKey(line.message.key, visitor.address)}
    >
      {open && line.reply !== null && line.reply.choices.length > 0 ? (
        <Choices reply={line.reply} path={visitor.path} />
      ) : null}
    </Said>
  );
};

const Choices: FC<{ reply: Reply; path: string }> = ({ reply, path }) => {
  const listed = reply.choices.length > 2 || reply.choices.some((choice) => choice.label.length > 24);
  return (
    <form class={listed ? 'choices many' : 'choices'} method="post" action={path}>
      <input type="hidden" name="key" value={freshKey()} />
      {reply.choices.map((choice, i) => (
        <button class={choice.tone === 'next' ? 'press next' : 'press'} type="submit" name="choice" value={choice.id}>
          {listed ? <span class="digit">{i + 1}</span> : null}
          <span>{choice.label}</span>
        </button>
      ))}
    </form>
  );
};

const Box: FC<{ visitor: Visitor; world: WebWorld; refused: ChatPage['refused'] }> = ({ visitor, world, refused }) => (
  <footer class="box">
    <p class="signal" role="status" id="signal">
      {refused?.says ?? ''}
    </p>
    <form id="box" method="post" action={visitor.path} enctype="multipart/form-data">
      <input type="hidden" name="key" value={freshKey()} />
      <label class="hush" for="text">
        {'Your question, in your own words'}
      </label>
      <textarea
        id="text"
        name="text"
        rows={1}
        maxlength={8000}
        autocomplete="off"
        autocapitalize="sentences"
        enterkeyhint="send"
        placeholder={'Ask here'}
      >
        {refused?.text ?? ''}
      </textarea>
      <label class="press photo">
        <Camera />
        <span class="hush">Add a photo or video</span>
        <input class="hush" type="file" name="photo" accept="image/*,video/*,audio/*,application/pdf" />
      </label>
      <button class="press next" type="submit">
        Send
      </button>
    </form>
    <noscript>
      <p>
        <a href={`${visitor.path}#here`}>Look for an answer</a> or ring{' '}
        <a href={dialled(world.firm.phone)}>{world.firm.phone}</a>
      </p>
    </noscript>
  </footer>
);

function findsFor(world: WebWorld, visitor: Visitor): Finds {
  return {
    picture: (use, theme) =>
      world.pictureSvg(use, theme) === null
        ? null
        : `/chat/-/picture/${encodeURIComponent(use.picture)}/${encodeURIComponent(use.touch ?? '')}.${theme}.svg`,
    file: (file) => `${visitor.path}/file/${encodeURIComponent(file)}`,
  };
}

/** The key under which a message is stored: the sender's own, within their thread. A press counts once for each choice. */
export function storedKey(key: string, choice: string | null, address: string): string {
  return `${address}.${key}${choice === null ? '' : `.${choice}`}`;
}

function sentKey(stored: string, address: string): string | null {
  return stored.startsWith(`${address}.`) ? (stored.slice(address.length + 1).split('.')[0] ?? null) : null;
}

export function freshKey(): string {
  return randomBytes(12).toString('base64url');
}
