import type { Api } from 'grammy';
import type { DeskNotes, Mark } from './desk-notes.ts';
import type { DeskStore } from './desk-types.ts';
import { toChannelError } from './errors.ts';

/** How far a staff message has come; of the reactions that bots may give. */
export const REACTIONS = { delivered: '👍', unknown: '🤔', gone: '👎' } as const;

export type Marks = {
  /** A staff message that is on its way to the hirer. */
  readonly add: (mark: Mark) => Promise<void>;
  /** Marks those that have reached their hirer, or never will. */
  readonly settle: () => Promise<void>;
};

/** Staff see on their own message in the group that it has arrived. Kept in the notes, so that a restart marks it too. */
export function createMarks(api: Api, notes: DeskNotes, store: Pick<DeskStore, 'lines'>): Marks {
  let marks: readonly Mark[] | null = null;

  async function all(): Promise<readonly Mark[]> {
    marks ??= await notes.marks();
    return marks;
  }

  async function react(message: number, emoji: (typeof REACTIONS)[keyof typeof REACTIONS]): Promise<void> {
    try {
      await api.raw.setMessageReaction({
        chat_id: notes.chat(),
        message_id: message,
        reaction: [{ type: 'emoji', emoji }],
      });
    } catch (thrown) {
      // The message was deleted, or the group allows no reactions: the transcript on the yard page shows the same.
      const error = toChannelError(thrown);
      if (error.failure !== 'refused') throw error;
    }
  }

  return {
    add: async (mark) => {
      marks = [...(await all()), mark];
      await notes.putMarks(marks);
    },
    settle: async () => {
      const settled = new Set<Mark>();
      for (const mark of await all()) {
        const line = (await store.lines(mark.thread, mark.line - 1)).find((each) => each.id === mark.line);
        const sent = line?.sent ?? 'gone';
        if (sent === 'waiting') continue;
        await react(mark.message, REACTIONS[sent]);
        settled.add(mark);
      }
      if (settled.size === 0) return;
      marks = (await all()).filter((mark) => !settled.has(mark));
      await notes.putMarks(marks);
    },
  };
}
