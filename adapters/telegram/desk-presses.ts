import { never, staffSaid } from '../../src/index.ts';
import type { DeskNotes } from './desk-notes.ts';
import type { Once } from './desk-once.ts';
import type { Rooms } from './desk-rooms.ts';
import type { DeskStore, StaffActions, StaffOutcome } from './desk-types.ts';
import { type Press, readPress, SAYS, talkText, UNNAMED } from './desk-words.ts';

/** Somebody in the staff group: `by` is what hirers see, `shown` what colleagues do. */
export type Staff = { readonly user: number; readonly by: string; readonly shown: string };

export type PressesParts = {
  readonly notes: DeskNotes;
  readonly rooms: Rooms;
  readonly store: DeskStore;
  readonly actions: StaffActions;
  readonly once: Once;
};

export type Presses = {
  /** Does what a press asks for and gives the words that are shown to the one who pressed. */
  readonly press: (updateId: number, data: string | undefined, staff: Staff) => Promise<string>;
  /**
   * To be called before an action that takes a thread: notes who of those without a rota name it will be.
   *
   * @returns Who of them has it already; null when nobody has.
   */
  readonly noteHolder: (threadId: string, staff: Staff) => ReturnType<DeskNotes['holder']>;
};

export function createPresses({ notes, rooms, store, actions, once }: PressesParts): Presses {
  async function doPress(updateId: number, kind: Press, threadId: string, staff: Staff): Promise<string> {
    switch (kind) {
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
      case 'talk': {
        const seat = await notes.seat(threadId);
        if (seat === null) return SAYS.noThread;
        await rooms.line(threadId, null, talkText(await store.lines(threadId), seat.firstName), { silent: true });
        return SAYS.talk;
      }
      default:
        return never(kind);
    }
  }

  async function take(threadId: string, staff: Staff): Promise<string> {
    const holder = await noteHolder(threadId, staff);
    // Two people without a name on the rota are the same to the hirer, but not to each other.
    if (holder !== null && holder.user !== staff.user) return SAYS.othersHave(holder.shown);
    const outcome = await actions.take(threadId, staff.by);
    if (outcome.kind !== 'done') return refusal(threadId, outcome);
    return staff.by === UNNAMED ? SAYS.youHaveUnnamed : SAYS.youHave;
  }

  async function noteHolder(threadId: string, staff: Staff): ReturnType<Presses['noteHolder']> {
    if (staff.by !== UNNAMED) return null;
    const thread = await store.thread(threadId);
    if (thread?.keeper === 'staff') return thread.keeperName === UNNAMED ? notes.holder(threadId) : null;
    await notes.putHolder(threadId, staff.user, staff.shown);
    return null;
  }

  async function sendSuggested(updateId: number, threadId: string, staff: Staff): Promise<string> {
    const pass = (await store.events({ threadId, kinds: ['passed'] })).at(-1)?.event;
    const suggested = pass?.kind === 'passed' ? pass.brief.suggested : null;
    if (suggested === null) return SAYS.nothingAtHand;
    await noteHolder(threadId, staff);
    const leaves = staffSaid(staff.by, suggested, []);
    const act = () => actions.say(threadId, staff.by, suggested, []);
    const outcome = await once({ updateId, threadId, leaves, act, tell: true });
    return outcome.kind === 'done' ? SAYS.sent : refusal(threadId, outcome);
  }

  async function refusal(threadId: string, outcome: Exclude<StaffOutcome, { kind: 'done' }>): Promise<string> {
    return outcome.kind === 'taken-by'
      ? SAYS.othersHave(await rooms.shownHolder(threadId, outcome.name))
      : SAYS.noThread;
  }

  return {
    press: async (updateId, data, staff) => {
      const read = data === undefined ? null : readPress(data);
      return read === null ? SAYS.noThread : doPress(updateId, read.press, read.threadId, staff);
    },
    noteHolder,
  };
}
