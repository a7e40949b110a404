import type { Api } from 'grammy';
import { type Attachment, attachmentsText, type Event, never, type Store, type StoredEvent } from '../../src/index.ts';
import type { DeskNotes, Spoken } from './desk-notes.ts';
import type { DeskOut } from './desk-out.ts';
import type { Rooms } from './desk-rooms.ts';
import { type Press, readPress, SAYS, UNNAMED } from './desk-words.ts';
import type { StaffInbox } from './inbox.ts';
import { TELEGRAM } from './limits.ts';
import type { Log } from './log.ts';
import { plain, splitMarked, textOf } from './marked-text.ts';
import { attachmentsIn, wordsIn } from './message-of-update.ts';
import type { Sender } from './send.ts';
import type { DeskStore, StaffActions, StaffOutcome } from './staff-desk.ts';
import type { CallbackQuery, TelegramMessage, Update } from './update.ts';

export type DeskInParts = {
  readonly api: Api;
  readonly notes: DeskNotes;
  readonly rooms: Rooms;
  readonly out: DeskOut;
  readonly store: DeskStore;
  readonly sender: Sender;
  readonly actions: StaffActions;
  readonly spendStaffToken: (token: string) => Promise<string | null>;
  readonly trouble: (what: string | null) => void;
  readonly log: Log;
};

type Staff = { readonly user: number; readonly by: string; readonly shown: string };
type From = NonNullable<TelegramMessage['from']>;
type At = { readonly message: number; readonly topic: number | null };

/** Something a staff member wrote about a thread. `text` is as they typed it. */
type Said = {
  readonly updateId: number;
  readonly threadId: string;
  readonly staff: Staff;
  readonly text: string;
  readonly at: At;
};

/**
 * Reads the staff group. Updates are dealt with one after another, each once: what is done is noted by its update id,
 * and an action that a crash left half noted is looked for among the thread's events before it is done again.
 */
export function createDeskIn(parts: DeskInParts): StaffInbox {
  const { api, notes, rooms, out, store, sender, actions, spendStaffToken, trouble, log } = parts;
  let tail: Promise<void> = Promise.resolve();

  /** Words back to staff: without them nothing is lost, so their failure holds nothing up. */
  const courtesy = (call: Promise<unknown>) =>
    void call.catch((error: unknown) => log.warn({ why: String(error) }, 'a word to staff could not be said'));

  function handle(update: Update): Promise<void> {
    const mine = tail.then(() => handleOnce(update));
    tail = mine.catch(() => {});
    return mine;
  }

  async function handleOnce(update: Update): Promise<void> {
    const handled = await notes.handled();
    if (handled.done.includes(update.update_id)) return;
    await deal(update);
    await notes.putDone(await notes.handled(), update.update_id);
  }

  async function deal(update: Update): Promise<void> {
    const said = update.message ?? update.edited_message;
    if (update.callback_query !== undefined) return pressed(update.update_id, update.callback_query);
    if (update.my_chat_member !== undefined) return membership(update.my_chat_member.new_chat_member.status);
    if (said?.migrate_to_chat_id !== undefined) {
      await notes.move(said.migrate_to_chat_id);
      return out.wake();
    }
    const from = said === undefined ? null : speakerOf(said);
    if (said !== undefined && from !== null) return spoken(update.update_id, said, from, update.message === undefined);
  }

  function membership(status: string): void {
    const lost = status === 'left' || status === 'kicked';
    trouble(lost ? SAYS.groupLost : null);
    if (!lost) out.wake();
  }

  async function staffOf(from: From): Promise<Staff> {
    const name = await notes.staffName(from.id);
    return { user: from.id, by: name ?? UNNAMED, shown: name ?? from.first_name };
  }

  async function spoken(updateId: number, message: TelegramMessage, from: From, edit: boolean): Promise<void> {
    const text = wordsIn(message);
    const at: At = {
      message: message.message_id,
      topic: message.is_topic_message === true ? (message.message_thread_id ?? null) : null,
    };
    const to = /^\/to(?:@\w+)?\s+(\S+)\s*$/i.exec(text)?.[1];
    if (to !== undefined) return edit ? undefined : open(to.toUpperCase(), at);
    const attachments = attachmentsIn(message);
    if (text === '' && attachments.length === 0) return;
    const before = edit ? await notes.spoken(message.message_id) : null;
    // Telegram sends an edit as well when a link's preview appears.
    if (before !== null && before.text === text) return;
    const replied =
      message.reply_to_message === undefined ? null : await notes.spoken(message.reply_to_message.message_id);
    const threadId = (before ?? replied)?.thread ?? (await threadOfTopic(at.topic));
    if (threadId === null) return;
    const said: Said = { updateId, threadId, staff: await staffOf(from), text, at };
    const note = await noteIn(said, before);
    if (note !== null) return keep(said, note === '' ? attachmentsText(attachments) : note);
    if (edit) return tellHirer(said, `(Put right) ${text}`, []);
    return tellHirer(said, at.topic === null ? text : withQuote(text, replied), attachments);
  }

  /** The words of a note that stays in the yard, or null when they are for the hirer. */
  async function noteIn({ text, staff, threadId }: Said, before: Spoken | null): Promise<string | null> {
    const marked = /^yard:\s*(.*)$/is.exec(text)?.[1];
    if (marked !== undefined) return marked;
    if (before !== null) return before.kind === 'noted' ? text : null;
    return (await notes.keeping(staff.user)) === threadId ? text : null;
  }

  /** In a forum topic words without a reply go to the last hirer to speak there. */
  async function threadOfTopic(topic: number | null): Promise<string | null> {
    const key = topic === null ? null : await notes.roomOfTopic(topic);
    return key === null ? null : ((await notes.room(key))?.latest ?? null);
  }

  async function keep({ updateId, threadId, staff, text, at }: Said, note: string): Promise<void> {
    const leaves = { kind: 'staff-noted', by: staff.by, text: note } as const;
    const outcome = await once(updateId, threadId, leaves, () => actions.note(threadId, staff.by, note));
    await notes.putSpoken(at.message, { thread: threadId, kind: 'noted', text });
    // Only now: a crash before must not send to the hirer what was to stay here.
    if ((await notes.keeping(staff.user)) === threadId) await notes.putKeeping(staff.user, null);
    if (outcome.kind !== 'done') courtesy(rooms.answer(SAYS.noThread, at));
  }

  async function tellHirer(said: Said, words: string, attachments: readonly Attachment[]): Promise<void> {
    const { updateId, threadId, staff, text, at } = said;
    const wasKept = (await store.thread(threadId))?.keeper === 'staff';
    const leaves = { kind: 'staff-said', by: staff.by, text: words } as const;
    const outcome = await once(updateId, threadId, leaves, () => actions.say(threadId, staff.by, words, attachments));
    switch (outcome.kind) {
      case 'done': {
        const line = await lastLineBy(staff.by, threadId, store);
        await Promise.all([
          wasKept ? null : holds(threadId, staff),
          notes.putSpoken(at.message, { thread: threadId, kind: 'said', text }),
          line === null ? null : out.addMark({ thread: threadId, message: at.message, line }),
        ]);
        return;
      }
      case 'taken-by':
        return courtesy(rooms.answer(SAYS.notSent(await rooms.shownHolder(threadId, outcome.name)), at));
      case 'no-such-thread':
        return courtesy(rooms.answer(SAYS.notSentNoThread, at));
      default:
        return never(outcome);
    }
  }

  async function holds(threadId: string, staff: Staff): Promise<void> {
    await notes.putHolder(threadId, staff.user, staff.shown);
  }

  async function pressed(updateId: number, query: CallbackQuery): Promise<void> {
    const press = query.data === undefined ? null : readPress(query.data);
    const toast =
      press === null ? SAYS.noThread : await doPress(updateId, press.press, press.threadId, await staffOf(query.from));
    courtesy(api.raw.answerCallbackQuery({ callback_query_id: query.id, text: toast.slice(0, TELEGRAM.toastUnits) }));
    out.wake();
  }

  async function doPress(updateId: number, press: Press, threadId: string, staff: Staff): Promise<string> {
    switch (press) {
      case 'have':
        return take(threadId, staff);
      case 'back': {
        const outcome = await actions.giveBack(threadId, staff.by);
        return outcome.kind === 'done' ? SAYS.back : refusal(threadId, outcome);
      }
      case 'keep':
        await notes.putKeeping(staff.user, threadId);
        return SAYS.keep;
      case 'send':
        return sendSuggested(updateId, threadId, staff);
      default:
        return never(press);
    }
  }

  async function take(threadId: string, staff: Staff): Promise<string> {
    const thread = await store.thread(threadId);
    const holder = thread?.keeper === 'staff' && thread.keeperName === staff.by ? await notes.holder(threadId) : null;
    // Two people without a name on the rota are the same to the hirer, but not to each other.
    if (staff.by === UNNAMED && holder !== null && holder.user !== staff.user) return SAYS.othersHave(holder.shown);
    const outcome = await actions.take(threadId, staff.by);
    if (outcome.kind !== 'done') return refusal(threadId, outcome);
    await holds(threadId, staff);
    return staff.by === UNNAMED ? SAYS.youHaveUnnamed : SAYS.youHave;
  }

  async function sendSuggested(updateId: number, threadId: string, staff: Staff): Promise<string> {
    const pass = (await store.events({ threadId, kinds: ['passed'] })).at(-1)?.event;
    const suggested = pass?.kind === 'passed' ? pass.brief.suggested : null;
    if (suggested === null) return SAYS.nothingAtHand;
    const wasKept = (await store.thread(threadId))?.keeper === 'staff';
    const leaves = { kind: 'staff-said', by: staff.by, text: suggested } as const;
    const say = () => actions.say(threadId, staff.by, suggested, []);
    const outcome = await once(updateId, threadId, leaves, say, true);
    if (outcome.kind !== 'done') return refusal(threadId, outcome);
    if (!wasKept) await holds(threadId, staff);
    return SAYS.sent;
  }

  async function refusal(threadId: string, outcome: Exclude<StaffOutcome, { kind: 'done' }>): Promise<string> {
    return outcome.kind === 'taken-by'
      ? SAYS.othersHave(await rooms.shownHolder(threadId, outcome.name))
      : SAYS.noThread;
  }

  /**
   * Does it, unless the thread's events show that it was done before a crash. What it leaves is not told to the group,
   * where it was said, unless `tell` asks for it.
   */
  async function once(
    updateId: number,
    threadId: string,
    leaves: Extract<Event, { kind: 'staff-said' | 'staff-noted' }>,
    act: () => Promise<StaffOutcome>,
    tell = false,
  ): Promise<StaffOutcome> {
    const handled = await notes.handled();
    if (handled.acting?.update === updateId && handled.acting.thread === threadId) {
      const since = await store.events({ threadId, kinds: [leaves.kind], after: handled.acting.lastEvent });
      const same = ({ event }: StoredEvent) =>
        event.kind === leaves.kind && event.by === leaves.by && event.text === leaves.text;
      if (since.some(same)) return { kind: 'done' };
    } else {
      const last = (await store.events({ threadId })).at(-1)?.id ?? 0;
      await notes.putActing(handled, { update: updateId, thread: threadId, lastEvent: last });
    }
    const unexpect = tell ? () => {} : out.expectOwn(threadId, leaves.kind, leaves.by, leaves.text);
    try {
      const outcome = await act();
      if (outcome.kind !== 'done') unexpect();
      return outcome;
    } catch (error) {
      unexpect();
      throw error;
    }
  }

  /** '/to BR-2702': staff begin. */
  async function open(ref: string, at: At): Promise<void> {
    const booking = await store.booking(ref);
    if (booking === null) return courtesy(rooms.answer(SAYS.noBooking(ref), at));
    const threads = [...(await store.threads({ booking: booking.ref }))].sort((a, b) => b.sinceMs - a.sinceMs);
    const thread = threads[0];
    if (thread === undefined) return courtesy(rooms.answer(SAYS.nobodyThere(ref, booking.phone), at));
    courtesy(rooms.standingOf(thread.id).then((standing) => rooms.brief(thread.id, standing, 'booking')));
  }

  async function welcome(token: string, userId: number, privateChat: number): Promise<boolean> {
    const name = await spendStaffToken(token);
    if (name === null) return false;
    await notes.putStaffName(userId, name);
    courtesy(sender.text([plain(SAYS.welcome(name))], null, { chat: privateChat }));
    return true;
  }

  return { chat: notes.chat, handle, welcome };
}

/** The line that the action just left in the thread: the newest of this person's. */
async function lastLineBy(by: string, threadId: string, store: Pick<Store, 'lines'>): Promise<number | null> {
  return (await store.lines(threadId)).findLast((line) => line.reply?.from === by)?.id ?? null;
}

/** Who wrote it; null for other bots. An administrator who stays anonymous speaks as the group itself. */
function speakerOf(message: TelegramMessage): From | null {
  const { from, sender_chat: as, chat } = message;
  if (from === undefined) return null;
  if (as?.id === chat.id) return { ...from, first_name: UNNAMED };
  return from.is_bot === true ? null : from;
}

const QUOTE_UNITS = 80;

/** A reply to a hirer's line carries that line, so that the hirer knows what is meant. */
function withQuote(text: string, replied: Spoken | null): string {
  if (replied === null || replied.kind !== 'told' || replied.text === '' || text === '') return text;
  const [quote, ...rest] = splitMarked([plain(replied.text.replace(/\s+/g, ' '))], QUOTE_UNITS);
  return `“${textOf(quote ?? [])}${rest.length > 0 ? ' …' : ''}”\n${text}`;
}
