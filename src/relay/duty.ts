import { MINUTE_MS } from '../basics/time.ts';
import { peopleToTell, staffedAt, whenText } from '../hours/firm-hours.ts';
import type { FirmData } from '../knowledge/schema.ts';
import type { Reply } from '../reply/reply.ts';
import type { Thread } from '../thread/thread.ts';
import { peopleFor } from './on-duty.ts';
import type { ActionResult } from './staff-actions.ts';

/** After so long a hirer's message that staff have had is brought to mind. */
export const UNANSWERED_MS = 20 * MINUTE_MS;

/** Reminders given so far about one wait: a thread's wait is named by when it began. */
export type Reminded = { readonly sinceMs: number; readonly count: number; readonly lastMs: number };

/** What is known of a thread that people hold or await. Instants are 0 when there was none. */
export type Standing = {
  readonly thread: Thread;
  readonly urgency: 'danger' | 'urgent' | 'usual';
  readonly lastHirerMs: number;
  readonly lastStaffMs: number;
  readonly reminded: Reminded | null;
};

export type Duty =
  /** `to` is one rota name, or null for everyone. */
  | {
      readonly kind: 'remind';
      readonly to: string | null;
      readonly text: string;
      readonly urgent: boolean;
      readonly reminded: Reminded;
    }
  /** The keeper's shift is over and the hirer waits: the bot answers again until staff take it back. */
  | { readonly kind: 'shift-over' };

/**
 * What is due about a thread now: a reminder to the next person, then to everyone; or the end of a shift.
 * A danger is brought to mind at every hour; the rest only while somebody is to see to it.
 *
 * @returns Null when nothing is due yet.
 */
export function dutyOf(standing: Standing, firm: FirmData, nowMs: number): Duty | null {
  const { thread } = standing;
  if (thread.keeper === 'bot') return null;
  if (thread.keeper === 'staff') return dutyOfKept(standing, firm, nowMs);
  const everyMs = firm.reminders[standing.urgency] * MINUTE_MS;
  return remindEvery(standing, thread.sinceMs, everyMs, firm, nowMs, 'nobody has it yet');
}

function dutyOfKept(standing: Standing, firm: FirmData, nowMs: number): Duty | null {
  const { thread, lastHirerMs, lastStaffMs } = standing;
  const unanswered = lastHirerMs > Math.max(lastStaffMs, thread.sinceMs);
  if (!unanswered) return null;
  if (!isOnDuty(thread.keeperName, firm, nowMs)) return { kind: 'shift-over' };
  return remindEvery(
    standing,
    lastHirerMs,
    UNANSWERED_MS,
    firm,
    nowMs,
    `${thread.keeperName ?? 'someone'} has it, and the hirer wrote again`,
  );
}

function remindEvery(
  standing: Standing,
  sinceMs: number,
  everyMs: number,
  firm: FirmData,
  nowMs: number,
  how: string,
): Duty | null {
  const danger = standing.urgency === 'danger';
  const { keeper, keeperName, reason } = standing.thread;
  const people = peopleFor(reason, firm, nowMs).map(({ firstName }) => firstName);
  const named = keeper === 'staff' && keeperName !== null ? [keeperName] : [];
  if (!danger && people.length + named.length === 0) return null;
  const last = standing.reminded?.sinceMs === sinceMs ? standing.reminded : { sinceMs, count: 0, lastMs: sinceMs };
  if (nowMs - last.lastMs < everyMs) return null;
  const to = [...named, ...people.filter((name) => !named.includes(name))][last.count] ?? null;
  const waited = Math.round((nowMs - sinceMs) / MINUTE_MS);
  return {
    kind: 'remind',
    to,
    text: `${danger ? 'DANGER: ' : ''}${to ?? 'Everyone'}: waiting ${waited} min, ${how}.`,
    urgent: danger,
    reminded: { sinceMs, count: last.count + 1, lastMs: nowMs },
  };
}

function isOnDuty(name: string | null, firm: FirmData, nowMs: number): boolean {
  return peopleToTell(firm, nowMs, 'workshop').some((person) => person.firstName === name);
}

/** Ends a keeper's hold when the shift ended with the hirer unanswered; the hirer is told, and the thread waits again. */
export function endShift(thread: Thread, firm: FirmData, nowMs: number): ActionResult {
  const by = thread.keeperName ?? 'the yard';
  const staffed = staffedAt(firm, nowMs);
  const when =
    staffed.kind === 'open'
      ? 'A colleague will take over.'
      : `The yard opens at ${whenText(staffed.opensMs, nowMs, firm.timeZone).replace(/^tomorrow at (.*)$/, '$1 tomorrow')}.`;
  const reply: Reply = {
    kind: 'relay',
    from: null,
    topic: null,
    blocks: [
      {
        kind: 'line',
        text: `${by} has gone off duty before answering. ${when} Until then the bot answers again what it is sure of. In danger call 999 or 112.`,
      },
    ],
    choices: [],
  };
  return {
    kind: 'done',
    thread: { ...thread, keeper: 'waiting', keeperName: null, sinceMs: nowMs },
    replies: [reply],
    events: [{ kind: 'shift-ended', by }],
  };
}
