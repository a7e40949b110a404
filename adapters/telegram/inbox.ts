import type { Api } from 'grammy';
import type { Address, Clock, Message } from '../../src/index.ts';
import type { Log } from './log.ts';
import { messageOf, TELEGRAM_CHANNEL } from './message-of-update.ts';
import { Update } from './update.ts';

/** What reads the staff group's updates; the desk. `handle` has stored what it did when it resolves. */
export type StaffInbox = {
  readonly chat: () => number;
  readonly handle: (update: Update) => Promise<void>;
  /** True when a private '/start TOKEN' was a staff member's own link and is dealt with. */
  readonly welcome: (token: string, userId: number, privateChat: number) => Promise<boolean>;
};

export type InboxOptions = {
  readonly api: Api;
  /** Stores a message once, by its key. */
  readonly receive: (message: Message) => Promise<void>;
  /** Called when a hirer blocks the bot: nothing more will reach this address. */
  readonly gone: (address: Address) => Promise<void>;
  readonly staff: StaffInbox | null;
  readonly clock: Clock;
  readonly log: Log;
};

/**
 * Takes one update: when it resolves, whatever the update meant is stored, and only then may the update be confirmed.
 * It rejects only when storing failed, and then the same update must be given again.
 */
export type Inbox = (update: unknown) => Promise<void>;

export function createInbox({ api, receive, gone, staff, clock, log }: InboxOptions): Inbox {
  /** Courtesies: without them nothing is lost, so their failure holds nothing up. */
  const courtesy = (call: Promise<unknown>, what: string) =>
    void call.catch((error: unknown) => log.warn({ what, why: String(error) }, 'a courtesy call failed'));

  async function leave(chat: number): Promise<void> {
    log.warn(
      { chat },
      'the bot was put into a group that is not the staff group and leaves it; if it is, set TELEGRAM_STAFF_CHAT to this number, start again and add the bot again',
    );
    courtesy(api.raw.leaveChat({ chat_id: chat }), 'leaveChat');
  }

  async function isStaffLink(message: Message, update: Update): Promise<boolean> {
    if (message.startToken === null || staff === null) return false;
    return staff.welcome(message.startToken, update.message?.from?.id ?? 0, Number(message.address));
  }

  return async function take(raw: unknown): Promise<void> {
    const read = Update.safeParse(raw);
    if (!read.success) {
      log.error(
        { fields: read.error.issues.map((issue) => issue.path.join('.')) },
        'an update could not be read and is left out',
      );
      return;
    }
    const update = read.data;
    const chat = (update.message ?? update.edited_message ?? update.callback_query?.message ?? update.my_chat_member)
      ?.chat;
    if (chat === undefined) return;
    if (staff !== null && chat.id === staff.chat()) return staff.handle(update);
    if (chat.type !== 'private') {
      const thrownOut = /^(left|kicked)$/.test(update.my_chat_member?.new_chat_member.status ?? '');
      if (!thrownOut) await leave(chat.id);
      return;
    }
    if (update.my_chat_member?.new_chat_member.status === 'kicked')
      return gone({ channel: TELEGRAM_CHANNEL, address: String(chat.id) });
    const message = messageOf(update, clock.nowMs());
    if (message !== null && !(await isStaffLink(message, update))) await receive(message);
    if (update.callback_query !== undefined)
      courtesy(api.raw.answerCallbackQuery({ callback_query_id: update.callback_query.id }), 'answerCallbackQuery');
  };
}
