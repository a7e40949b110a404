import type { Logger } from 'pino';
import {
  type AskedThen,
  type ChangeRecord,
  type Clock,
  followUp,
  type Gap,
  type Knowledge,
  type Served,
  type Store,
  toTell,
  turn,
} from '../src/index.ts';

const EVERY_MS = 60_000;
/** Notes under this name say of a change that nobody is left to tell. */
const TOLD = 'growth-told:';

export type FollowUpsParts = {
  readonly store: Store;
  readonly served: () => Served;
  /** What was published, with whether its hirers are to be told. */
  readonly changes: () => Promise<readonly ChangeRecord[]>;
  readonly gaps: (knowledge: Knowledge) => Promise<readonly Gap[]>;
  readonly clock: Clock;
  readonly log: Logger;
  /** Told after something was said in a thread. */
  readonly onChange: (threadId: string) => void;
};

export type FollowUps = {
  readonly round: () => Promise<void>;
  readonly start: () => void;
  readonly stop: () => Promise<void>;
};

/**
 * Tells hirers what was taught since they asked, where the operator ticked it. What is said goes out with the event that
 * it was said, in one transaction with the thread: whatever ends in between, each is told once.
 */
export function createFollowUps(parts: FollowUpsParts): FollowUps {
  const { store, served, clock, log } = parts;
  let timer: NodeJS.Timeout | null = null;
  let running: Promise<void> = Promise.resolve();

  /** Whether this one is settled, for good. */
  const tell = async (asked: AskedThen): Promise<boolean> => {
    for (;;) {
      const thread = await store.thread(asked.threadId);
      if (thread === null) return true;
      const booking = thread.booking === null ? null : await store.booking(thread.booking);
      const before = await store.events({ threadId: thread.id, kinds: ['followed-up'] });
      const told = before.map(({ event }) => event);
      const nowMs = clock.nowMs();
      const end = followUp({ asked, thread, booking, told, served: served(), turn, nowMs });
      if (end.kind !== 'told') return end.kind === 'never';
      const { thread: after, replies, events } = end;
      if ((await store.saveTurn({ seq: null, thread: after, replies, events, atMs: nowMs })) === 'saved') {
        parts.onChange(thread.id);
        return true;
      }
    }
  };

  const settle = async (change: ChangeRecord, gaps: readonly Gap[]): Promise<void> => {
    const own = gaps.filter(({ id }) => change.gaps.includes(id));
    let settled = true;
    for (const asked of toTell(own, change.decision)) settled = (await tell(asked)) && settled;
    if (settled) await store.putNote(`${TOLD}${change.id}`, 'done');
  };

  const round = async (): Promise<void> => {
    const done = new Set((await store.notes(TOLD)).map(({ name }) => name));
    const waiting = (await parts.changes()).filter(
      ({ id, tell, undone }) => tell === true && undone === null && !done.has(`${TOLD}${id}`),
    );
    if (waiting.length === 0) return;
    const gaps = await parts.gaps(served().knowledge);
    for (const change of waiting)
      await settle(change, gaps).catch((error: unknown) =>
        log.error({ err: error, change: change.id }, 'hirers could not be told; it is tried again'),
      );
  };
  const soon = (): void => {
    running = running.then(round).catch((error: unknown) => log.error({ err: error }, 'the round failed'));
  };

  return {
    round,
    start: () => {
      soon();
      timer = setInterval(soon, EVERY_MS);
      timer.unref();
    },
    stop: async () => {
      if (timer !== null) clearInterval(timer);
      await running;
    },
  };
}
