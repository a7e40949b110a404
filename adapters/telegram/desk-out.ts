import type { StoredEvent } from '../../src/index.ts';
import type { Marks } from './desk-marks.ts';
import type { DeskNotes, Reminder, Told } from './desk-notes.ts';
import type { OwnWords } from './desk-own.ts';
import type { Rooms } from './desk-rooms.ts';
import type { DeskStore } from './desk-types.ts';
import { SAYS } from './desk-words.ts';
import { ChannelError, toChannelError } from './errors.ts';
import type { Log } from './log.ts';
import type { Pace } from './pace.ts';
import type { Wait } from './wait.ts';

export type DeskOut = {
  readonly start: () => void;
  readonly stop: () => Promise<void>;
  readonly wake: () => void;
  /** Puts a line of our own into a thread's room. Resolves when it cannot be forgotten any more. */
  readonly remind: (reminder: Reminder) => Promise<void>;
};

export type DeskOutParts = {
  readonly notes: DeskNotes;
  readonly rooms: Rooms;
  readonly marks: Marks;
  readonly own: OwnWords;
  readonly pace: Pace;
  readonly store: DeskStore;
  readonly wait: Wait;
  readonly log: Log;
  readonly trouble: (what: string | null) => void;
};

const TOLD_KINDS = [
  'passed',
  'taken',
  'given-back',
  'shift-ended',
  'to-staff',
  'staff-said',
  'staff-noted',
  'staff-put-right',
  'notice',
] as const;
/** Looked at without being woken, for changes made by another process. */
const LOOK_AGAIN_MS = 5_000;
const GROUP_LOST_MS = 60_000;
const SOON_MS = 3_000;

/**
 * Tells the group what the stored events say, one after another; a danger goes first. An event counts as told once its
 * message stands there, so a crash or an outage leaves it waiting; in the worst case it is told twice.
 */
export function createDeskOut(parts: DeskOutParts): DeskOut {
  const { notes, rooms, marks, own, pace, store, wait, log, trouble } = parts;
  const stopping = new AbortController();
  let wakeUp: (() => void) | null = null;
  let woken = false;
  let lost = false;
  let running: Promise<void> = Promise.resolve();
  let reminders: readonly Reminder[] | null = null;

  function wake(): void {
    woken = true;
    wakeUp?.();
  }

  /** Sleeps for `ms`, or until woken or stopped. */
  async function sleep(ms: number): Promise<void> {
    if (woken || stopping.signal.aborted) return;
    const ends = new AbortController();
    wakeUp = () => ends.abort();
    await wait(ms, AbortSignal.any([ends.signal, stopping.signal]));
    wakeUp = null;
  }

  async function run(): Promise<void> {
    while (!stopping.signal.aborted) {
      woken = false;
      try {
        await sleep(await step());
      } catch (thrown) {
        await sleepAfter(thrown);
      }
    }
  }

  /** Tells one thing if there is one and the pace allows it; gives the time to sleep before the next look. */
  async function step(): Promise<number> {
    const told = await notes.told();
    if (told === null) {
      await begin();
      return 0;
    }
    const waiting = await eventsWaiting(told);
    const due = await allReminders();
    const event = waiting.find(isDanger);
    const reminder = due.find((each) => each.urgent);
    const next = event ?? reminder ?? waiting[0] ?? due[0];
    if (next === undefined) {
      await marks.settle();
      return LOOK_AGAIN_MS;
    }
    const freeMs =
      'event' in next && own.has(next) ? 0 : pace.freeIn(notes.chat(), next === event || next === reminder);
    if (freeMs > 0) return freeMs;
    if ('event' in next) {
      await orLeftOut(next.threadId, () => tell(next));
      await notes.putTold(next === waiting[0] ? upTo(told, next.id) : { ...told, ahead: [...told.ahead, next.id] });
    } else {
      await orLeftOut(next.threadId, () => rooms.reminder(next.threadId, next.words, { urgent: next.urgent }));
      await putReminders((await allReminders()).filter((each) => each !== next));
    }
    if (lost) {
      lost = false;
      trouble(null);
    }
    return 0;
  }

  async function allReminders(): Promise<readonly Reminder[]> {
    reminders ??= await notes.reminders();
    return reminders;
  }

  function putReminders(all: readonly Reminder[]): Promise<void> {
    reminders = all;
    return notes.putReminders(all);
  }

  /** A desk that is new, or new in this group, is told of everybody who waits or is with people now, and of no older times. */
  async function begin(): Promise<void> {
    const last = (await store.events({ kinds: TOLD_KINDS })).at(-1)?.id ?? 0;
    for (const thread of await store.threads({ keeper: ['waiting', 'staff'] }))
      if ((await notes.seat(thread.id)) === null) await rooms.brief(thread.id, await rooms.standingOf(thread.id));
    await notes.putTold({ after: last, ahead: [] });
  }

  async function eventsWaiting(told: Told): Promise<readonly StoredEvent[]> {
    return (await store.events({ kinds: TOLD_KINDS, after: told.after })).filter(
      (event) => !told.ahead.includes(event.id),
    );
  }

  async function orLeftOut(threadId: string, telling: () => Promise<void>): Promise<void> {
    try {
      await telling();
    } catch (thrown) {
      const error = toChannelError(thrown);
      if (error.failure !== 'refused') throw error;
      // Telegram will refuse it tomorrow too; the yard page shows it, and everything behind it must not wait.
      log.error({ why: error.message, thread: threadId }, 'the staff group refused a message');
    }
  }

  async function tell(stored: StoredEvent): Promise<void> {
    const { event, threadId } = stored;
    switch (event.kind) {
      case 'passed':
        // A danger is passed even while somebody has the thread already.
        await rooms.brief(threadId, await rooms.standingOf(threadId));
        return;
      case 'to-staff': {
        const name = await hirerName(threadId);
        return rooms.hirerLine(threadId, event.edit ? `${name} changed that to` : name, event.text, event.attachments);
      }
      case 'staff-said':
        if (own.spend(stored)) return;
        return rooms.line(threadId, `${event.by} to ${await hirerName(threadId)}`, event.text, {
          attachments: event.attachments ?? [],
          silent: true,
        });
      case 'staff-put-right':
        if (own.spend(stored)) return;
        return rooms.line(threadId, `${event.by} to ${await hirerName(threadId)}, put right`, event.text, {
          silent: true,
        });
      case 'staff-noted':
        if (own.spend(stored)) return;
        return rooms.line(threadId, `${event.by}, for the yard`, event.text, {});
      case 'taken':
        return rooms.restate(threadId, { kind: 'taken', by: await rooms.shownHolder(threadId, event.by) });
      case 'given-back':
        await rooms.restate(threadId, {
          kind: 'back',
          by: event.by === 'hirer' ? await hirerName(threadId) : event.by,
        });
        return rooms.close(threadId);
      case 'shift-ended':
        await rooms.restate(threadId, { kind: 'waiting' });
        return rooms.line(threadId, null, SAYS.shiftEnded(event.by, await hirerName(threadId)), {});
      case 'notice':
        return tellNotice(stored, event.hazard);
    }
  }

  /** A notice that came with its pass stands in the brief; one shown while people have the thread is told by itself. */
  async function tellNotice({ threadId, atMs }: StoredEvent, hazard: string): Promise<void> {
    const passes = await store.events({ threadId, kinds: ['passed'] });
    if (passes.some((pass) => pass.atMs === atMs) || (await notes.seat(threadId)) === null) return;
    const what = hazard.replace(/^safety-/, '').replaceAll('-', ' ');
    await rooms.line(threadId, null, `The bot has shown ${await hirerName(threadId)} the notice: ${what}.`, {
      urgent: true,
    });
  }

  async function hirerName(threadId: string): Promise<string> {
    return (await notes.seat(threadId))?.firstName ?? 'Hirer';
  }

  async function sleepAfter(thrown: unknown): Promise<void> {
    if (!(thrown instanceof ChannelError)) {
      log.error({ why: String(thrown) }, 'the staff desk failed and tries again');
      return sleep(SOON_MS);
    }
    if (thrown.failure === 'moved' && thrown.movedTo !== null) {
      await notes.move(thrown.movedTo);
      return;
    }
    log.warn({ why: thrown.message, failure: thrown.failure }, 'the staff group could not be told');
    if (thrown.failure === 'busy') pace.hold(notes.chat(), thrown.retryAfterMs ?? SOON_MS);
    if (thrown.failure === 'gone') {
      lost = true;
      trouble(SAYS.groupLost);
      return sleep(GROUP_LOST_MS);
    }
    await sleep(thrown.retryAfterMs ?? SOON_MS);
  }

  return {
    wake,
    remind: async (reminder) => {
      await putReminders([...(await allReminders()), reminder]);
      wake();
    },
    start: () => {
      running = run();
    },
    stop: async () => {
      stopping.abort();
      wakeUp?.();
      await running;
    },
  };
}

function isDanger({ event }: StoredEvent): boolean {
  return (event.kind === 'passed' && event.urgency === 'danger') || event.kind === 'notice';
}

/** Everything up to `id` is told: what went before its turn needs no mention any more. */
function upTo(told: Told, id: number): Told {
  return { after: id, ahead: told.ahead.filter((each) => each > id) };
}
