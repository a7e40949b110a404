import type { Api } from 'grammy';
import type { Attachment, Booking, BriefLine, Reply, StoredEvent, Thread } from '../../src/index.ts';
import { briefTitle } from '../../src/index.ts';
import type { DeskNotes, Room, Seat } from './desk-notes.ts';
import type { DeskStore } from './desk-types.ts';
import {
  alarmMarked,
  briefKeyboard,
  briefMarked,
  linesOfPass,
  reminderMarked,
  SAYS,
  type Standing,
  UNNAMED,
} from './desk-words.ts';
import { ChannelError, toChannelError } from './errors.ts';
import type { Keyboard } from './keyboard.ts';
import { TELEGRAM } from './limits.ts';
import type { Log } from './log.ts';
import { type MarkedText, plain } from './marked-text.ts';
import type { Pace } from './pace.ts';
import { type Part, partsOf } from './parts.ts';
import { isTopicTrouble, type Place, type Sender } from './send.ts';

type Loud = { readonly urgent?: boolean; readonly silent?: boolean };
type Head = {
  readonly title: string;
  readonly firstName: string;
  readonly lines: readonly BriefLine[];
  readonly suggested: string | null;
  readonly pass: Pass | null;
};
type Pass = StoredEvent & { readonly event: Extract<StoredEvent['event'], { kind: 'passed' }> };

export type RoomsParts = {
  readonly api: Api;
  readonly sender: Sender;
  readonly pace: Pace;
  readonly notes: DeskNotes;
  readonly store: DeskStore;
  readonly log: Log;
};

export type Rooms = ReturnType<typeof createRooms>;

/**
 * Where each booking's conversations stand in the group. In a forum each has a forum topic: made at the first pass,
 * reopened at the next, closed when given back, made anew when somebody deleted it. Elsewhere everything hangs on the
 * brief as replies. A forum that was a plain group, or the other way about, is noticed at the next pass.
 */
export function createRooms({ api, sender, pace, notes, store, log }: RoomsParts) {
  const raw = api.raw;

  async function call<T>(make: () => Promise<T>): Promise<T> {
    return make().catch((thrown: unknown) => {
      throw toChannelError(thrown);
    });
  }

  async function isForum(): Promise<boolean> {
    return (await call(() => raw.getChat({ chat_id: notes.chat() }))).is_forum === true;
  }

  /** A forum topic of that name, or null where the group has none or the bot may not make any. */
  async function makeTopic(title: string, urgent: boolean): Promise<number | null> {
    if (!(await isForum())) return null;
    try {
      const name = title.slice(0, TELEGRAM.topicNameUnits);
      const topic = await pace.run(notes.chat(), urgent, () =>
        call(() => raw.createForumTopic({ chat_id: notes.chat(), name })),
      );
      return topic.message_thread_id;
    } catch (thrown) {
      if (!(thrown instanceof ChannelError) || thrown.failure !== 'refused') throw thrown;
      log.warn({ why: thrown.message }, SAYS.topicFailed);
      return null;
    }
  }

  async function setClosed(key: string, room: Room, closed: boolean): Promise<void> {
    if (room.topic === null) return;
    const to = { chat_id: notes.chat(), message_thread_id: room.topic };
    try {
      await call(() => (closed ? raw.closeForumTopic(to) : raw.reopenForumTopic(to)));
    } catch (thrown) {
      // Somebody did it by hand already, or the bot may not: what follows shows whether it matters.
      if (!(thrown instanceof ChannelError) || thrown.failure !== 'refused') throw thrown;
    }
    await notes.putRoom(key, { ...room, closed });
  }

  /** The room for a thread, ready to be written in. */
  async function openRoom(threadId: string, title: string, urgent: boolean): Promise<{ key: string; room: Room }> {
    const thread = await store.thread(threadId);
    const key = thread?.booking ?? `thread:${threadId}`;
    const known = await notes.room(key);
    const topic = known?.topic ?? (await makeTopic(title, urgent));
    const room: Room = { topic, title, closed: known?.closed === true && known.topic === topic, latest: threadId };
    await notes.putRoom(key, room);
    if (room.closed) await setClosed(key, room, false);
    return { key, room: { ...room, closed: false } };
  }

  /** What stands at the head of a thread's room: its last pass, or (when staff begin) who is behind the booking. */
  async function headOf(threadId: string, from: Seat['from']): Promise<Head> {
    const pass =
      from === 'pass' ? ((await store.events({ threadId, kinds: ['passed'] })).at(-1) as Pass | undefined) : undefined;
    if (pass !== undefined) {
      const { brief } = pass.event;
      return {
        title: briefTitle(brief),
        firstName: brief.firstName ?? 'Hirer',
        lines: linesOfPass(pass.event),
        suggested: brief.suggested,
        pass,
      };
    }
    const thread = await store.thread(threadId);
    const booking = thread?.booking == null ? null : await store.booking(thread.booking);
    return { ...openingOf(thread, booking), suggested: null, pass: null };
  }

  /** Puts the brief into the thread's room. What follows hangs on it. */
  async function brief(threadId: string, standing: Standing, from: Seat['from'] = 'pass'): Promise<Seat> {
    const { title, firstName, lines, suggested, pass } = await headOf(threadId, from);
    const danger = pass?.event.urgency === 'danger';
    const loud: Loud = { urgent: danger };
    const { key, room } = await openRoom(threadId, title, danger);
    const place = { chat: notes.chat(), ...(room.topic === null ? {} : { topic: room.topic }), ...loud };
    const keyboard = briefKeyboard(threadId, standing, suggested !== null);
    let id: number;
    try {
      id = await sender.text(briefMarked(lines, standing), keyboard, place);
    } catch (thrown) {
      if (!(thrown instanceof ChannelError) || !isTopicTrouble(thrown)) throw thrown;
      await notes.putRoom(key, { ...room, topic: null });
      return brief(threadId, standing, from);
    }
    const seat: Seat = { room: key, brief: id, firstName, from };
    await notes.putSpoken(id, { thread: threadId, kind: 'told', text: '' });
    await notes.putSeat(threadId, seat);
    const attachments = pass?.event.brief.attachments ?? [];
    if (attachments.length > 0) await send(threadId, partsOf(relayed(null, '', attachments)), loud);
    if (pass !== null && danger && room.topic !== null)
      await sender.text(alarmMarked(title, pass.event.brief, pass.event.urgency), null, {
        chat: notes.chat(),
        urgent: true,
      });
    return seat;
  }

  /** Sends parts into a thread's room; each message remembers its thread and what a reply to it is about. */
  async function send(threadId: string, parts: readonly Part[], loud: Loud, quote = ''): Promise<void> {
    for (const part of parts) {
      const id = await inRoom(threadId, loud, (to) => sender.part(part, to));
      await notes.putSpoken(id, { thread: threadId, kind: 'told', text: quote });
    }
  }

  /** In the thread's forum topic, or below its brief. */
  async function whereabouts(threadId: string, seat: Seat): Promise<Pick<Place, 'topic' | 'replyTo'>> {
    const topic = (await notes.room(seat.room))?.topic ?? null;
    return topic === null ? { replyTo: ((await notes.seat(threadId)) ?? seat).brief } : { topic };
  }

  async function inRoom(threadId: string, loud: Loud, write: (to: Place) => Promise<number>): Promise<number> {
    const seat = (await notes.seat(threadId)) ?? (await brief(threadId, await standingOf(threadId)));
    const room = await notes.room(seat.room);
    try {
      return await write({ chat: notes.chat(), ...(await whereabouts(threadId, seat)), ...loud });
    } catch (thrown) {
      if (!(thrown instanceof ChannelError) || !isTopicTrouble(thrown) || room === null) throw thrown;
      if (/TOPIC_CLOSED/i.test(thrown.message) && !room.closed) await setClosed(seat.room, room, false);
      else {
        // Deleted by hand: a new one with the brief in it, and then this.
        await notes.putRoom(seat.room, { ...room, topic: null });
        await brief(threadId, await standingOf(threadId), seat.from);
      }
      return write({ chat: notes.chat(), ...(await whereabouts(threadId, seat)), ...loud });
    }
  }

  async function standingOf(threadId: string): Promise<Standing> {
    const thread = await store.thread(threadId);
    if (thread?.keeper === 'staff') return { kind: 'taken', by: await shownHolder(threadId, thread.keeperName) };
    return { kind: 'waiting' };
  }

  /** The keeper as staff know them: the rota name, or the Telegram name of somebody who has none. */
  async function shownHolder(threadId: string, name: string | null): Promise<string> {
    if (name !== null && name !== UNNAMED) return name;
    return (await notes.holder(threadId))?.shown ?? UNNAMED;
  }

  return {
    brief,
    shownHolder,
    standingOf,

    /** Something said, under a name in bold when there is one; a null name is the desk's own word. */
    line: (
      threadId: string,
      from: string | null,
      text: string,
      { attachments = [], ...loud }: Loud & { readonly attachments?: readonly Attachment[] },
    ): Promise<void> => send(threadId, partsOf(relayed(from, text, attachments)), loud),

    /** A word about the rota; whom it names is told by the app itself. */
    reminder: async (threadId: string, words: string, loud: Loud): Promise<void> => {
      const text = reminderMarked(words, await notes.staffUsers());
      const id = await inRoom(threadId, loud, (to) => sender.text(text, null, to));
      await notes.putSpoken(id, { thread: threadId, kind: 'told', text: '' });
    },

    /** What a hirer said: staff may reply to it. */
    hirerLine: (threadId: string, from: string, text: string, attachments: readonly Attachment[]): Promise<void> =>
      send(threadId, partsOf(relayed(from, text, attachments)), {}, text),

    /** Writes into the brief who has the thread now, and changes its presses. */
    async restate(threadId: string, standing: Standing): Promise<void> {
      const seat = await notes.seat(threadId);
      if (seat === null) return;
      const { lines, suggested } = await headOf(threadId, seat.from);
      await edit(seat.brief, briefMarked(lines, standing), briefKeyboard(threadId, standing, suggested !== null));
    },

    /** Closes the forum topic, unless another thread of the booking is still with people. */
    async close(threadId: string): Promise<void> {
      const seat = await notes.seat(threadId);
      const room = seat === null ? null : await notes.room(seat.room);
      if (seat === null || room === null || room.topic === null) return;
      const thread = await store.thread(threadId);
      const others =
        thread?.booking == null ? [] : await store.threads({ booking: thread.booking, keeper: ['waiting', 'staff'] });
      if (others.some((other) => other.id !== threadId)) return;
      await setClosed(seat.room, room, true);
    },

    /** An answer of the desk itself, below a message in the group. */
    answer: (text: string, to: { readonly message: number; readonly topic: number | null }): Promise<number> =>
      sender.text([plain(text)], null, {
        chat: notes.chat(),
        replyTo: to.message,
        ...(to.topic === null ? {} : { topic: to.topic }),
      }),
  };

  async function edit(message: number, text: MarkedText, keyboard: Keyboard): Promise<void> {
    try {
      await sender.edit(message, text, keyboard, notes.chat());
    } catch (thrown) {
      // Deleted by hand, or unchanged: the next brief will show it.
      if (!(thrown instanceof ChannelError) || thrown.failure !== 'refused') throw thrown;
    }
  }
}

function openingOf(
  thread: Thread | null,
  booking: Booking | null,
): { title: string; firstName: string; lines: readonly BriefLine[] } {
  const firstName = booking?.firstName ?? 'Hirer';
  const title =
    booking === null
      ? `Thread ${thread?.id.slice(0, 8) ?? ''}`
      : `${booking.van.charAt(0).toUpperCase()}${booking.van.slice(1)}, ${firstName}`;
  const who = [title, booking?.ref, booking?.phone].filter((part) => part != null).join(' · ');
  return {
    title,
    firstName,
    lines: [
      { kind: 'who', text: who },
      { kind: 'why', text: SAYS.opened(firstName) },
    ],
  };
}

function relayed(from: string | null, text: string, attachments: readonly Attachment[]): Reply {
  return {
    kind: 'relay',
    from,
    topic: null,
    blocks: [
      ...(text === '' ? [] : [{ kind: 'line' as const, text }]),
      ...attachments.map((attachment) => ({ kind: 'attachment' as const, attachment })),
    ],
    choices: [],
  };
}
