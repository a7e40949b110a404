import type { Api } from 'grammy';
import { inWords } from './errors.ts';
import type { Inbox } from './inbox.ts';
import type { Log } from './log.ts';
import { ALLOWED_UPDATES } from './update.ts';
import type { Wait } from './wait.ts';

export type PollOptions = {
  readonly api: Api;
  readonly inbox: Inbox;
  readonly wait: Wait;
  readonly log: Log;
  /** Seconds that Telegram holds an empty answer back. */
  readonly holdS: number;
};

const FIRST_PAUSE_MS = 500;
const LONGEST_PAUSE_MS = 30_000;
const LAST_CALL_MS = 3_000;

type Polled = { readonly update_id: number };

/**
 * Long polling in which an update is stored before it is confirmed. Asking with an offset confirms all updates below it
 * (https://core.telegram.org/bots/api#getupdates), so the offset moves past an update only when the inbox has it. After a
 * crash Telegram gives the unconfirmed ones again, and the store knows their keys: none is lost, none counts twice.
 *
 * @param signal Ends the polling; the promise resolves when the updates in hand are stored and confirmed.
 */
export async function poll({ api, inbox, wait, log, holdS }: PollOptions, signal: AbortSignal): Promise<void> {
  let offset = 0;
  let pauseMs = FIRST_PAUSE_MS;
  while (!signal.aborted) {
    try {
      const updates = await api.raw.getUpdates(
        { offset, timeout: holdS, allowed_updates: ALLOWED_UPDATES },
        signalFor(signal),
      );
      offset = await storeAll(updates, offset, inbox);
      pauseMs = FIRST_PAUSE_MS;
    } catch (thrown) {
      if (signal.aborted) break;
      if (thrown instanceof NotStored) {
        offset = thrown.offset;
        log.error(
          { why: String(thrown.cause) },
          'an update could not be stored: it stays with Telegram and is asked for again',
        );
      } else {
        const { why, retryAfterMs } = inWords(thrown);
        log.warn({ why }, 'asking Telegram for updates failed');
        pauseMs = Math.max(pauseMs, retryAfterMs ?? 0);
      }
      await wait(pauseMs, signal);
      pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS);
    }
  }
  // Without an answer soon the next start takes them again, and the store knows them.
  const last = { offset, timeout: 0, limit: 1, allowed_updates: ALLOWED_UPDATES };
  if (offset > 0) await api.raw.getUpdates(last, signalFor(AbortSignal.timeout(LAST_CALL_MS))).catch(() => {});
}

/** Storing failed at an update; everything below `offset` is stored. */
class NotStored extends Error {
  readonly offset: number;
  constructor(offset: number, cause: unknown) {
    super('not stored', { cause });
    this.offset = offset;
  }
}

/**
 * Stores a batch: each chat's updates in their order, different chats at the same time, so that a store may share one
 * write among them.
 *
 * @returns The offset that confirms the whole batch.
 * @throws NotStored with the offset that confirms what stands before the first update that was not stored.
 */
async function storeAll(updates: readonly Polled[], offset: number, inbox: Inbox): Promise<number> {
  const failed: { id: number; cause: unknown }[] = [];
  await Promise.all(
    [...byChat(updates).values()].map(async (own) => {
      for (const update of own) {
        try {
          await inbox(update);
        } catch (cause) {
          failed.push({ id: update.update_id, cause });
          return;
        }
      }
    }),
  );
  const first = failed.sort((a, b) => a.id - b.id)[0];
  if (first !== undefined) throw new NotStored(first.id, first.cause);
  return updates.reduce((highest, update) => Math.max(highest, update.update_id + 1), offset);
}

type WithChat = { readonly chat?: { readonly id?: number } };

/** Updates by the chat they belong to; the inbox judges whether they can be read at all. */
function byChat(updates: readonly Polled[]): Map<number, Polled[]> {
  const groups = new Map<number, Polled[]>();
  for (const update of updates) {
    const { message, edited_message, my_chat_member, callback_query } = update as Polled & {
      readonly message?: WithChat;
      readonly edited_message?: WithChat;
      readonly my_chat_member?: WithChat;
      readonly callback_query?: { readonly message?: WithChat };
    };
    const chat = (message ?? edited_message ?? my_chat_member ?? callback_query?.message)?.chat?.id ?? 0;
    const group = groups.get(chat);
    if (group === undefined) groups.set(chat, [update]);
    else group.push(update);
  }
  return groups;
}

type GrammySignal = NonNullable<Parameters<Api['raw']['getUpdates']>[1]>;

/** grammY's types name the signal of a package that Node no longer needs; the objects are the same. */
function signalFor(signal: AbortSignal): GrammySignal {
  return signal as unknown as GrammySignal;
}
