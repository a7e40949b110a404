import type { DeskStore } from './desk-types.ts';

/** Where a booking's conversations are held: a forum topic, or (`topic` null) the group itself, by reply. */
export type Room = {
  readonly topic: number | null;
  readonly title: string;
  readonly closed: boolean;
  /** The thread that staff's words go to when they reply to nothing in particular. */
  readonly latest: string;
};

/** A thread's place: its room's key, the brief that its lines hang on and what that was made from, the hirer's first name. */
export type Seat = {
  readonly room: string;
  readonly brief: number;
  readonly from: 'pass' | 'booking';
  readonly firstName: string;
};

/**
 * What a message in the group stands for. `text` is what a hirer said in it, to be quoted in a reply, or what staff
 * wrote, to tell a real edit from a repeat; empty for the desk's own words.
 */
export type Spoken = {
  readonly thread: string;
  readonly kind: 'told' | 'said' | 'noted';
  readonly text: string;
  /** The line in the thread that staff's words became. */
  readonly line?: number;
};

/** Which events the group has been told: all up to `after`, and those in `ahead` that went before their turn. */
export type Told = { readonly after: number; readonly ahead: readonly number[] };

/**
 * Updates from the group that are dealt with, newest last, and the one being dealt with: `lastEvent` is the thread's
 * last event before it, so that after a crash one can see whether it was done.
 */
export type Handled = {
  readonly done: readonly number[];
  readonly acting: { readonly update: number; readonly thread: string; readonly lastEvent: number } | null;
};

/** A staff message on its way to the hirer: to be marked when the line has arrived. */
export type Mark = { readonly thread: string; readonly message: number; readonly line: number };

/** A line of the program's own for a thread's room, still to be told. */
export type Reminder = { readonly threadId: string; readonly words: string; readonly urgent: boolean };

/** Notes of who of the staff a Telegram account belongs to. */
const STAFF = 'telegram:staff:';

/** Telegram hands out at most 100 updates at a time: no more can come twice. */
const DONE_KEPT = 100;

export type DeskNotes = ReturnType<typeof createDeskNotes>;

/**
 * The desk's memory, in the store's notes. Message and topic numbers belong to one chat, so their names
 * carry it; what has been told and dealt with outlives the group's change into a supergroup.
 */
export function createDeskNotes(
  store: Pick<DeskStore, 'note' | 'putNote' | 'putNoteSoon' | 'notes'>,
  configured: number,
) {
  let chat = configured;
  const here = (name: string) => `telegram:desk:${chat}:${name}`;
  const always = (name: string) => `telegram:desk:${name}:${configured}`;
  const get = async <T>(name: string): Promise<T | null> => {
    const kept = await store.note(name);
    return kept === null || kept === '' ? null : (JSON.parse(kept) as T);
  };
  const put = (name: string, value: unknown) => store.putNote(name, JSON.stringify(value));
  /** For what is written with every message: after a power cut the last of it is told or done twice at worst. */
  const putSoon = (name: string, value: unknown) => store.putNoteSoon(name, JSON.stringify(value));

  return {
    /** A group that became a supergroup has another id than the one configured. */
    chat: () => chat,
    load: async () => {
      chat = (await get<number>(always('moved'))) ?? configured;
    },
    move: async (to: number) => {
      chat = to;
      await put(always('moved'), to);
    },

    room: (key: string) => get<Room>(here(`room:${key}`)),
    roomOfTopic: (topic: number) => get<string>(here(`topic:${topic}`)),
    putRoom: async (key: string, room: Room) => {
      await put(here(`room:${key}`), room);
      if (room.topic !== null) await put(here(`topic:${room.topic}`), key);
    },

    seat: (threadId: string) => get<Seat>(here(`seat:${threadId}`)),
    putSeat: (threadId: string, seat: Seat) => put(here(`seat:${threadId}`), seat),

    spoken: (message: number) => get<Spoken>(here(`message:${message}`)),
    putSpoken: (message: number, spoken: Spoken) => putSoon(here(`message:${message}`), spoken),

    told: () => get<Told>(always('told')),
    putTold: (told: Told) => putSoon(always('told'), told),

    handled: async () => (await get<Handled>(always('handled'))) ?? { done: [], acting: null },
    putActing: async (handled: Handled, acting: NonNullable<Handled['acting']>) =>
      putSoon(always('handled'), { ...handled, acting }),
    putDone: async (handled: Handled, update: number) =>
      putSoon(always('handled'), { done: [...handled.done, update].slice(-DONE_KEPT), acting: null }),

    marks: async () => (await get<readonly Mark[]>(here('marks'))) ?? [],
    putMarks: (marks: readonly Mark[]) => putSoon(here('marks'), marks),

    reminders: async () => (await get<readonly Reminder[]>(always('reminders'))) ?? [],
    putReminders: (reminders: readonly Reminder[]) => put(always('reminders'), reminders),

    staffName: (user: number) => get<string>(`${STAFF}${user}`),
    putStaffName: (user: number, name: string) => put(`${STAFF}${user}`, name),
    /** Everybody of the staff who has opened their own link. */
    staffUsers: async (): Promise<readonly { readonly user: number; readonly name: string }[]> =>
      (await store.notes(STAFF)).flatMap(({ name, value }) =>
        value === '' ? [] : [{ user: Number(name.slice(STAFF.length)), name: JSON.parse(value) as string }],
      ),
    forgetStaffName: async (name: string) => {
      for (const kept of await store.notes(STAFF))
        if (kept.value === JSON.stringify(name)) await store.putNote(kept.name, '');
    },
    /** Who took a thread without a name on the rota: their Telegram id and first name, for staff's eyes only. */
    holder: (threadId: string) =>
      get<{ readonly user: number; readonly shown: string }>(`telegram:desk:holder:${threadId}`),
    putHolder: (threadId: string, user: number, shown: string) =>
      put(`telegram:desk:holder:${threadId}`, { user, shown }),
    /** The thread in which this person's next message stays in the yard. */
    keeping: (user: number) => get<string>(`telegram:desk:keep:${user}`),
    putKeeping: (user: number, threadId: string | null) => put(`telegram:desk:keep:${user}`, threadId),
  };
}
