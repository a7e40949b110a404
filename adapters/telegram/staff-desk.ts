import type { Api } from 'grammy';
import { createDeskIn } from './desk-in.ts';
import { createMarks } from './desk-marks.ts';
import { createDeskNotes } from './desk-notes.ts';
import { createDeskOut } from './desk-out.ts';
import { createOwnWords } from './desk-own.ts';
import { createRooms } from './desk-rooms.ts';
import type { DeskStore, StaffActions } from './desk-types.ts';
import type { StaffInbox } from './inbox.ts';
import type { Log } from './log.ts';
import type { Pace } from './pace.ts';
import type { Sender } from './send.ts';
import type { Wait } from './wait.ts';

export type { DeskStore, StaffActions, StaffOutcome } from './desk-types.ts';

export type DeskOptions = {
  /** The group's chat id, as in TELEGRAM_STAFF_CHAT. */
  readonly chat: number;
  readonly actions: StaffActions;
  /** Spends a staff member's one-time link; the rota name it was made for, or null. */
  readonly spendStaffToken?: (token: string) => Promise<string | null>;
  /** The group cannot be reached (in words for the yard page), or can be again (null). */
  readonly trouble?: (what: string | null) => void;
};

/**
 * The staff group. It is told of passes, hirers' lines, who has a thread, notices and notes by the stored events
 * themselves, so that a crash forgets none of them; `wake` only says that there may be new ones.
 */
export type StaffDesk = {
  readonly wake: () => void;
  /**
   * Puts a line into a thread's room: a reminder, a word about the rota. Resolves when it is stored: it is told as soon
   * as the group can be, after a restart too; urgent ones before what is not.
   */
  readonly remind: (threadId: string, words: string, urgent: boolean) => Promise<void>;
  /** Nobody in the group speaks under this rota name any more, until they open a new link of their own. */
  readonly forget: (name: string) => Promise<void>;
};

export type DeskParts = {
  readonly api: Api;
  readonly sender: Sender;
  readonly pace: Pace;
  readonly store: DeskStore;
  readonly wait: Wait;
  readonly log: Log;
};

/** The desk with the halves that the channel starts, stops and feeds with updates. */
export type RunningDesk = StaffDesk & {
  readonly inbox: StaffInbox;
  readonly start: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

export function createStaffDesk(options: DeskOptions, parts: DeskParts): RunningDesk {
  const trouble = options.trouble ?? (() => {});
  const notes = createDeskNotes(parts.store, options.chat);
  const rooms = createRooms({ ...parts, notes });
  const marks = createMarks(parts.api, notes, parts.store);
  const own = createOwnWords();
  const shared = { ...parts, notes, rooms, marks, own, trouble };
  const out = createDeskOut(shared);
  const inbox = createDeskIn({
    ...shared,
    out,
    actions: options.actions,
    spendStaffToken: options.spendStaffToken ?? (async () => null),
  });
  return {
    wake: out.wake,
    forget: notes.forgetStaffName,
    remind: (threadId, words, urgent) => out.remind({ threadId, words, urgent }),
    inbox,
    start: async () => {
      await notes.load();
      out.start();
    },
    stop: out.stop,
  };
}
