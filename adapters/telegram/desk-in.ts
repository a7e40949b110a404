import type { Api } from 'grammy';
import { type Attachment, attachmentsText, never, type Store, staffSaid } from '../../src/index.ts';
import type { Marks } from './desk-marks.ts';
import type { DeskNotes, Spoken } from './desk-notes.ts';
import { createOnce } from './desk-once.ts';
import type { DeskOut } from './desk-out.ts';
import type { OwnWords } from './desk-own.ts';
import { createPresses, type Staff } from './desk-presses.ts';
import type { Rooms } from './desk-rooms.ts';
import type { DeskStore, StaffActions, StaffOutcome } from './desk-types.ts';
import { SAYS, UNNAMED } from './desk-words.ts';
import type { StaffInbox } from './inbox.ts';
import { TELEGRAM } from './limits.ts';
import type { Log } from './log.ts';
import { plain, splitMarked, textOf } from './marked-text.ts';
import { attachmentsIn, wordsIn } from './message-of-update.ts';
import type { Sender } from './send.ts';
import type { TelegramMessage, Update } from './update.ts';

export type DeskInParts = {
  readonly api: Api;
  readonly notes: DeskNotes;
  readonly rooms: Rooms;
  readonly marks: Marks;
  readonly own: OwnWords;
  readonly out: Pick<DeskOut, 'wake'>;
  readonly store: DeskStore;
  readonly sender: Sender;
  readonly actions: StaffActions;
  readonly spendStaffToken: (token: string) => Promise<string | null>;
  readonly trouble: (what: string | null) => void;
  readonly log: Log;
};

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
 * Reads the staff group. Updates are dealt with one after another, each once: what is done is noted by its update
 * id, and what a crash left half noted is looked for before it is done again.
 */
export function createDeskIn(parts: DeskInParts): StaffInbox {
  const { api, notes, rooms, marks, own, out, store, sender, actions, spendStaffToken, trouble, log } = parts;
  const once = createOnce(notes, store, own);
  const presses = createPresses({ notes, rooms, store, actions, once });
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
    const query = update.callback_query;
    if (query !== undefined) {
      const toast = await presses.press(update.update_id, query.data, await staffOf(query.from));
      courtesy(api.raw.answerCallbackQuery({ callback_query_id: query.id, text: toast.slice(0, TELEGRAM.toastUnits) }));
      return out.wake();
    }
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
    const words = at.topic === null ? text : withQuote(text, replied);
    if (!edit) return tellHirer(said, words, attachments);
    if (before?.line === undefined) return tellHirer(said, `(Put right) ${words}`, attachments);
    return putRight(said, before.line, words, attachments);
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
    const outcome = await once({
      updateId,
      threadId,
      leaves: { kind: 'staff-noted', by: staff.by, text: note },
      act: () => actions.note(threadId, staff.by, note),
      tell: false,
    });
    await notes.putSpoken(at.message, { thread: threadId, kind: 'noted', text });
    // Only now: a crash before must not send to the hirer what was to stay here.
    if ((await notes.keeping(staff.user)) === threadId) await notes.putKeeping(staff.user, null);
    if (outcome.kind !== 'done') courtesy(rooms.answer(SAYS.noThread, at));
  }

  async function tellHirer(said: Said, words: string, attachments: readonly Attachment[]): Promise<void> {
    const { updateId, threadId, staff } = said;
    await presses.noteHolder(threadId, staff);
    const outcome = await once({
      updateId,
      threadId,
      leaves: staffSaid(staff.by, words, attachments),
      act: () => actions.say(threadId, staff.by, words, attachments),
      tell: false,
    });
    return onItsWay(said, outcome);
  }

  /** Staff changed their message: the hirer's copy changes with it, whoever has the thread by now. */
  async function putRight(said: Said, line: number, words: string, attachments: readonly Attachment[]): Promise<void> {
    const { updateId, threadId, staff } = said;
    const outcome = await once({
      updateId,
      threadId,
      leaves: { kind: 'staff-put-right', by: staff.by, text: words, line },
      act: () => actions.putRight(threadId, staff.by, line, words, attachments),
      tell: false,
    });
    return onItsWay(said, outcome, line);
  }

  /** Remembers what became of a staff message and marks it once it has arrived. `first`: the line that it put right. */
  async function onItsWay({ threadId, staff, text, at }: Said, outcome: StaffOutcome, first?: number): Promise<void> {
    switch (outcome.kind) {
      case 'done': {
        const line = await lastLineBy(staff.by, threadId, store);
        const became = first ?? line;
        await Promise.all([
          notes.putSpoken(at.message, {
            thread: threadId,
            kind: 'said',
            text,
            ...(became === null ? {} : { line: became }),
          }),
          line === null ? null : marks.add({ thread: threadId, message: at.message, line }),
        ]);
        return out.wake();
      }
      case 'taken-by':
        return courtesy(rooms.answer(SAYS.notSent(await rooms.shownHolder(threadId, outcome.name)), at));
      case 'no-such-thread':
        return courtesy(rooms.answer(SAYS.notSentNoThread, at));
      default:
        return never(outcome);
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
