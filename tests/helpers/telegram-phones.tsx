import { type Context, Hono } from 'hono';
import { html, raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { type GroupOnTelegram, type PersonOnTelegram, seen } from './telegram-people.ts';
import { PHONES_SCRIPT, PHONES_STYLE } from './telegram-phones-look.ts';
import type { Button, Kept, Place, World } from './telegram-world.ts';

/** A telephone that can be picked up on the page: whose it is, and what they call themselves on Telegram. */
export type Phone = { readonly label: string; readonly person: PersonOnTelegram };

export type Phones = {
  readonly world: World;
  readonly group: GroupOnTelegram;
  readonly hirers: readonly Phone[];
  readonly staff: readonly Phone[];
  readonly token: string;
};

/** What a telephone shows: whose, the chat, the message that is being answered or changed. All of it stands in the address. */
type Held = {
  readonly side: 'hirer' | 'staff';
  readonly phones: readonly Phone[];
  readonly index: number;
  readonly room: string;
  readonly answering: number | null;
  readonly changing: number | null;
};

/**
 * The page on which one person plays a hirer and the staff: two telephones side by side, on a stand-in for Telegram. It is
 * for trying the staff group without an account; nothing on it is the program's own.
 */
export function phonePages(phones: Phones): Hono {
  const { world, group } = phones;
  const toasts: Toasts = new Map();
  const app = new Hono();

  app.get('/', (context) => {
    const hirer = held(context, 'hirer', phones.hirers);
    const staff = held(context, 'staff', phones.staff);
    const body = (
      <main>
        <Telephone held={hirer} phones={phones} here={context.req.url} toasts={toasts} />
        <Telephone held={staff} phones={phones} here={context.req.url} toasts={toasts} />
      </main>
    );
    return context.html(
      html`<!doctype html><html lang="en-GB"><meta charset="utf-8" /><meta name="viewport" content="width=device-width" /><title>Telephones</title><style>${raw(PHONES_STYLE)}</style>${body}<script>${raw(PHONES_SCRIPT)}</script></html>`,
    );
  });

  app.post('/say', async (context) => {
    const form = await context.req.parseBody();
    const person = personOf(phones, form.user);
    const text = String(form.text ?? '').trim();
    const link = /[?&]start=([\w-]+)/.exec(text)?.[1];
    const { place, topic } = roomOf(group, person, String(form.room));
    const number = (name: string) => (form[name] === undefined || form[name] === '' ? null : Number(form[name]));
    const changing = number('changing');
    const own = changing === null ? undefined : world.find(place, changing);
    const photo = form.photo instanceof File && form.photo.size > 0 ? form.photo : null;
    if (link !== undefined) person.says(`/start ${link}`);
    else if (own !== undefined) person.edits(own, text);
    else if (photo !== null)
      person.sends('photo', {
        place,
        topic,
        replyTo: number('answering'),
        bytes: new Uint8Array(await photo.arrayBuffer()),
        ...(text === '' ? {} : { caption: text }),
      });
    else if (text !== '') person.saysIn(place, text, { topic, replyTo: number('answering') });
    return context.redirect(without(String(form.back), link === undefined ? null : String(form.side)), 303);
  });

  app.post('/press', async (context) => {
    const form = await context.req.parseBody();
    const person = personOf(phones, form.user);
    const { place } = roomOf(group, person, String(form.room));
    const kept = world.find(place, Number(form.message));
    if (kept === undefined) return context.text('That message is no longer here.', 404);
    toasts.set(toastKey(person, String(form.room)), {
      query: person.pressesData(String(form.data), kept),
      untilMs: Date.now() + TOAST_MS,
    });
    return context.redirect(without(String(form.back), null), 303);
  });

  return app;

  function held(context: Context, side: Held['side'], all: readonly Phone[]): Held {
    const number = (name: string) => {
      const said = context.req.query(name);
      return said === undefined ? null : Number(said);
    };
    return {
      side,
      phones: all,
      index: Math.min(number(side) ?? 0, all.length - 1),
      room: side === 'hirer' ? 'bot' : (context.req.query('room') ?? 'group'),
      answering: side === 'staff' ? number('answering') : null,
      changing: number(`${side}-changing`),
    };
  }
}

function personOf(phones: Phones, user: unknown): PersonOnTelegram {
  const found = [...phones.hirers, ...phones.staff].find(({ person }) => person.user.id === Number(user));
  if (found === undefined) throw new Error('no such telephone');
  return found.person;
}

/** 'bot': the chat with the bot alone; 'group': General; a number: the forum topic. */
function roomOf(
  group: GroupOnTelegram,
  person: PersonOnTelegram,
  room: string,
): { readonly place: Place; readonly topic: number | null } {
  if (room === 'bot') return { place: person.place, topic: null };
  return { place: group.place, topic: room === 'group' ? null : Number(room) };
}

/** The address without the message that was answered or changed; a link opens the chat with the bot. */
function without(back: string, opened: string | null): string {
  const url = new URL(back, 'http://here');
  for (const name of ['answering', 'hirer-changing', 'staff-changing']) url.searchParams.delete(name);
  if (opened === 'staff') url.searchParams.set('room', 'bot');
  return `${url.pathname}${url.search}`;
}

function at(here: string, change: Readonly<Record<string, string | number | null>>): string {
  const url = new URL(without(here, null), 'http://here');
  for (const [name, value] of Object.entries(change))
    if (value === null) url.searchParams.delete(name);
    else url.searchParams.set(name, String(value));
  return `${url.pathname}${url.search}`;
}

type TelephoneProps = {
  readonly held: Held;
  readonly phones: Phones;
  readonly here: string;
  readonly toasts: Toasts;
};

/** The words that the app shows for a moment after a press, by whose screen and which chat. */
type Toasts = Map<string, { readonly query: string; readonly untilMs: number }>;
const TOAST_MS = 6_000;
const toastKey = (person: PersonOnTelegram, room: string) => `${person.user.id} ${room}`;

const Telephone: FC<TelephoneProps> = ({ held, phones, here, toasts }) => {
  const { side, index, room, answering, changing } = held;
  const phone = held.phones[index] as Phone;
  const { person } = phone;
  const { place, topic } = roomOf(phones.group, person, room);
  const said = place.messages.filter((kept) => kept.topic === topic && kept.content.forum_topic_created === undefined);
  const pressed = toasts.get(toastKey(person, room));
  const toast =
    pressed === undefined || pressed.untilMs < Date.now()
      ? null
      : (phones.world.queries.get(pressed.query)?.text ?? null);
  const changed = said.find((kept) => kept.message_id === changing);
  const fields = (
    <>
      <input type="hidden" name="user" value={String(person.user.id)} />
      <input type="hidden" name="room" value={room} />
      <input type="hidden" name="side" value={side} />
      <input type="hidden" name="back" value={here} />
    </>
  );
  return (
    <section aria-label={side === 'hirer' ? "A hirer's telephone" : 'A telephone of the staff'}>
      <nav>
        {held.phones.map((each, i) => (
          <a href={at(here, { [side]: i })} aria-current={i === index ? 'true' : undefined}>
            {each.label}
          </a>
        ))}
      </nav>
      {side === 'staff' && <Rooms group={phones.group} room={room} here={here} />}
      <div class="said" id={`${side}-said`}>
        {said.map((kept) => (
          <Line kept={kept} person={person} side={side} here={here} phones={phones}>
            {fields}
          </Line>
        ))}
        {toast !== null && <p class="toast">On the screen: {toast}</p>}
      </div>
      <form method="post" action="/say" enctype="multipart/form-data">
        {fields}
        <input type="hidden" name="answering" value={answering === null ? '' : String(answering)} />
        <input type="hidden" name="changing" value={changing === null ? '' : String(changing)} />
        {(answering ?? changing) !== null && (
          <p>
            {changing === null ? 'Answering' : 'Changing'} number {answering ?? changing}.{' '}
            <a href={at(here, {})}>Never mind</a>
          </p>
        )}
        <textarea name="text" rows={2} aria-label="Message" placeholder="Words, or a t.me link to open">
          {String(changed?.content.text ?? changed?.content.caption ?? '')}
        </textarea>
        <input type="file" name="photo" accept="image/*" aria-label="A photo" />
        <button type="submit">Send</button>
      </form>
    </section>
  );
};

const Rooms: FC<{ readonly group: GroupOnTelegram; readonly room: string; readonly here: string }> = ({
  group,
  room,
  here,
}) => {
  const topics = [...group.place.topics.values()].filter((topic) => !topic.deleted);
  const rooms = [
    { key: 'bot', name: 'The bot alone' },
    { key: 'group', name: group.place.forum ? 'Group: General' : 'Group' },
    ...topics.map((topic) => ({ key: String(topic.id), name: `${topic.name}${topic.closed ? ' (closed)' : ''}` })),
  ];
  return (
    <nav id="rooms">
      {rooms.map(({ key, name }) => (
        <a href={at(here, { room: key })} aria-current={key === room ? 'true' : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
};

type LineProps = {
  readonly kept: Kept;
  readonly person: PersonOnTelegram;
  readonly side: Held['side'];
  readonly here: string;
  readonly phones: Phones;
  readonly children?: unknown;
};

const Line: FC<LineProps> = ({ kept, person, side, here, phones, children }) => {
  const { id, text, media, replyTo } = seen(kept);
  const markup = kept.content.reply_markup as { inline_keyboard: Button[][] } | undefined;
  const mine = kept.from.id === person.user.id;
  return (
    <article class={mine ? 'mine' : ''}>
      <small>
        {id} {kept.from.first_name}
        {replyTo === null ? '' : `, answering ${replyTo}`}
        {kept.edited ? ', changed' : ''}
      </small>
      {media !== null && <Media kept={kept} media={media} phones={phones} />}
      <p>{text}</p>
      {(markup?.inline_keyboard ?? []).flat().map((button) => (
        <form method="post" action="/press">
          {children}
          <input type="hidden" name="message" value={String(id)} />
          <input type="hidden" name="data" value={button.callback_data ?? ''} />
          <button type="submit">{button.text}</button>
        </form>
      ))}
      <small>
        {kept.reactions.join(' ')} {side === 'staff' && <a href={at(here, { answering: id })}>Answer this</a>}{' '}
        {mine && <a href={at(here, { [`${side}-changing`]: id })}>Change</a>}
      </small>
    </article>
  );
};

const Media: FC<{ readonly kept: Kept; readonly media: string; readonly phones: Phones }> = ({
  kept,
  media,
  phones,
}) => {
  if (media !== 'photo') return <p>({media === 'document' ? 'a file' : media})</p>;
  const sizes = kept.content.photo as readonly { readonly file_id: string }[];
  const file = phones.world.files.get(sizes.at(-1)?.file_id ?? '');
  return <img src={`/file/bot${phones.token}/${file?.path ?? ''}`} alt={file?.name ?? 'A photo'} />;
};
