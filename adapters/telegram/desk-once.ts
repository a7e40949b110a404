import type { StoredEvent } from '../../src/index.ts';
import type { DeskNotes } from './desk-notes.ts';
import { isStaffEvent, type OwnWords, type StaffEvent, sentWith } from './desk-own.ts';
import type { DeskStore, StaffOutcome } from './desk-types.ts';

/** An action that leaves an event by which one sees, after a crash, that it was done. */
export type OnceAction = {
  readonly updateId: number;
  readonly threadId: string;
  readonly leaves: StaffEvent;
  readonly act: () => Promise<StaffOutcome>;
  /** Whether the group is told of the event; not when it was said there itself. */
  readonly tell: boolean;
};

export type Once = (action: OnceAction) => Promise<StaffOutcome>;

/** Does an action, unless the thread's events show that the same update did it before a crash. */
export function createOnce(notes: DeskNotes, store: Pick<DeskStore, 'events'>, own: Pick<OwnWords, 'expect'>): Once {
  async function wasDone({ updateId, threadId, leaves }: OnceAction): Promise<boolean> {
    const handled = await notes.handled();
    if (handled.acting?.update !== updateId || handled.acting.thread !== threadId) {
      const last = (await store.events({ threadId })).at(-1)?.id ?? 0;
      await notes.putActing(handled, { update: updateId, thread: threadId, lastEvent: last });
      return false;
    }
    const since = await store.events({ threadId, kinds: [leaves.kind], after: handled.acting.lastEvent });
    const same = ({ event }: StoredEvent) =>
      isStaffEvent(event) &&
      event.by === leaves.by &&
      event.text === leaves.text &&
      JSON.stringify(sentWith(event)) === JSON.stringify(sentWith(leaves));
    return since.some(same);
  }

  return async function once(action) {
    if (await wasDone(action)) return { kind: 'done' };
    const { threadId, leaves, act, tell } = action;
    const unexpect = tell ? () => {} : own.expect(threadId, leaves);
    let outcome: StaffOutcome | null = null;
    try {
      outcome = await act();
      return outcome;
    } finally {
      if (outcome?.kind !== 'done') unexpect();
    }
  };
}
