import type { Logger } from 'pino';
import {
  type Clock,
  dutyOf,
  endShift,
  type FirmData,
  type Line,
  type Reminded,
  type Standing,
  type Store,
  type Thread,
} from '../src/index.ts';

const EVERY_MS = 5_000;

export type DutyRoundsParts = {
  readonly store: Store;
  readonly firm: () => FirmData;
  readonly clock: Clock;
  readonly log: Logger;
  /** Brings a thread to mind where staff are: the group, the yard page. */
  readonly remind: (threadId: string, text: string, urgent: boolean) => Promise<void>;
  readonly onChange: (threadId: string) => void;
};

export type DutyRounds = {
  readonly start: () => void;
  readonly stop: () => Promise<void>;
  readonly round: () => Promise<void>;
};

/**
 * Goes round the threads that people hold or await, every few seconds. What was brought to mind is noted before it is
 * said, and what is due follows from what is stored alone: a restart forgets no reminder and gives none twice.
 */
export function createDutyRounds({ store, firm, clock, log, remind, onChange }: DutyRoundsParts): DutyRounds {
  let timer: NodeJS.Timeout | null = null;
  let running: Promise<void> = Promise.resolve();

  const look = async (thread: Thread): Promise<void> => {
    const nowMs = clock.nowMs();
    const duty = dutyOf(await standingOf(thread, store), firm(), nowMs);
    if (duty === null) return;
    if (duty.kind === 'shift-over') {
      const result = endShift(thread, firm(), nowMs);
      if (result.kind !== 'done') return;
      const { thread: after, replies, events } = result;
      const saved = await store.saveTurn({ seq: null, thread: after, replies, events, atMs: nowMs });
      if (saved === 'saved') onChange(thread.id);
      return;
    }
    await store.putNote(noteName(thread.id), JSON.stringify(duty.reminded));
    await remind(thread.id, duty.text, duty.urgent);
  };

  const round = async (): Promise<void> => {
    for (const thread of await store.threads({ keeper: ['waiting', 'staff'] })) {
      // One thread in trouble must not keep the others from being brought to mind.
      await look(thread).catch((error: unknown) => log.error({ err: error, thread: thread.id }, 'a reminder failed'));
    }
  };

  return {
    round,
    start: () => {
      timer = setInterval(() => {
        running = running.then(round).catch((error: unknown) => log.error({ err: error }, 'the round failed'));
      }, EVERY_MS);
      timer.unref();
    },
    stop: async () => {
      if (timer !== null) clearInterval(timer);
      await running;
    },
  };
}

function noteName(threadId: string): string {
  return `reminded/${threadId}`;
}

async function standingOf(thread: Thread, store: Store): Promise<Standing> {
  const [lines, note, passes] = await Promise.all([
    store.lines(thread.id),
    store.note(noteName(thread.id)),
    store.events({ threadId: thread.id, kinds: ['passed'] }),
  ]);
  const last = passes[passes.length - 1]?.event;
  return {
    thread,
    urgency: thread.reason === 'safety' ? 'danger' : last?.kind === 'passed' ? last.urgency : 'usual',
    lastHirerMs: lastAt(lines, (line) => line.who === 'hirer'),
    lastStaffMs: lastAt(lines, isAnswer),
    reminded: note === null ? null : (JSON.parse(note) as Reminded),
  };
}

/** Something a person said; putting right what was said before answers nothing new. */
function isAnswer({ reply }: Line): boolean {
  return reply?.kind === 'relay' && reply.from !== null && reply.putsRight === undefined;
}

function lastAt(lines: readonly Line[], wanted: (line: Line) => boolean): number {
  return lines.findLast(wanted)?.atMs ?? 0;
}
