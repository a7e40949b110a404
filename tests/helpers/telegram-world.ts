/**
 * What a stand-in Bot API server remembers: people, groups with forum topics, messages, files, and the updates that wait
 * for the bot. No HTTP here: telegram-stand-in.ts serves it, telegram-methods.ts carries the calls out.
 */

export type User = {
  readonly id: number;
  readonly is_bot: boolean;
  readonly first_name: string;
  readonly username?: string;
};
export type Button = { readonly text: string; readonly callback_data?: string };
export type Update = { readonly update_id: number } & Readonly<Record<string, unknown>>;

/** A message as the world keeps it; `wire()` makes the API's object of it. */
export type Kept = {
  readonly message_id: number;
  readonly chat: number;
  readonly from: User;
  readonly date: number;
  readonly topic: number | null;
  readonly replyTo: number | null;
  /** Everything else the API's Message carries: text, photo, location, reply_markup ... */
  content: Readonly<Record<string, unknown>>;
  reactions: readonly string[];
  edited: boolean;
};

export type ForumTopic = { readonly id: number; readonly name: string; closed: boolean; deleted: boolean };

export type Place = {
  readonly id: number;
  type: 'private' | 'group' | 'supergroup';
  readonly title: string;
  forum: boolean;
  /** False once a person has blocked the bot, or a group has thrown it out. */
  reachable: boolean;
  mayManageTopics: boolean;
  movedTo: number | null;
  readonly topics: Map<number, ForumTopic>;
  readonly messages: Kept[];
};

export type StoredFile = {
  readonly id: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly name: string;
};

export const BOT: User = { id: 7_000_001, is_bot: true, first_name: 'Brackenfold', username: 'brackenfold_test_bot' };

export class World {
  readonly places = new Map<number, Place>();
  readonly files = new Map<string, StoredFile>();
  readonly queries = new Map<string, { answered: boolean; text: string | null }>();
  readonly sourceOf = new Map<number, number>();
  commands: readonly { command: string; description: string }[] = [];
  pending: Update[] = [];
  #ids: { user: number; group: number; message: number; update: number; file: number };
  #wake: () => void = () => {};
  #nowS: () => number;

  /** `first`: the first message's and update's number; a world that follows another must not use its numbers again. */
  constructor(nowS: () => number, first = 1) {
    this.#nowS = nowS;
    this.#ids = { user: 1000, group: -1_001_000_000, message: first, update: 500_000 + first, file: first };
  }

  /** Resolves as soon as an update waits. */
  waitForUpdate(): Promise<void> {
    return new Promise((resolve) => {
      const before = this.#wake;
      this.#wake = () => {
        before();
        resolve();
      };
    });
  }

  newUser(firstName: string): User {
    return { id: this.#ids.user++, is_bot: false, first_name: firstName };
  }

  addPlace(place: Pick<Place, 'type' | 'title' | 'forum'> & { id?: number }): Place {
    const id = place.id ?? this.#ids.group--;
    const made: Place = {
      ...place,
      id,
      reachable: true,
      mayManageTopics: true,
      movedTo: null,
      topics: new Map(),
      messages: [],
    };
    this.places.set(id, made);
    return made;
  }

  addFile(bytes: Uint8Array, name: string, folder: string): StoredFile {
    const n = this.#ids.file++;
    const file = { id: `AgAC-${folder}-${n}`, path: `${folder}/file_${n}`, bytes, name };
    this.files.set(file.id, file);
    return file;
  }

  /** Puts a message into a place; people's messages become updates, the bot's own do not. */
  add(
    place: Place,
    from: User,
    content: Kept['content'],
    at: { topic?: number | null; replyTo?: number | null } = {},
  ): Kept {
    const kept: Kept = {
      message_id: this.#ids.message++,
      chat: place.id,
      from,
      date: this.#nowS(),
      topic: at.topic ?? null,
      replyTo: at.replyTo ?? null,
      content,
      reactions: [],
      edited: false,
    };
    place.messages.push(kept);
    if (!from.is_bot) this.push({ message: this.wire(kept) });
    return kept;
  }

  push(update: Readonly<Record<string, unknown>>): Update {
    const made = { update_id: this.#ids.update++, ...update };
    this.pending.push(made);
    const wake = this.#wake;
    this.#wake = () => {};
    wake();
    return made;
  }

  find(place: Place, messageId: number): Kept | undefined {
    return place.messages.find((message) => message.message_id === messageId);
  }

  chat(place: Place): Record<string, unknown> {
    return place.type === 'private'
      ? { id: place.id, type: 'private', first_name: place.title }
      : { id: place.id, type: place.type, title: place.title, ...(place.forum ? { is_forum: true } : {}) };
  }

  /** The API's Message object. */
  wire(kept: Kept): Record<string, unknown> {
    const place = this.places.get(kept.chat) as Place;
    const original = kept.replyTo === null ? undefined : this.find(place, kept.replyTo);
    return {
      message_id: kept.message_id,
      from: kept.from,
      chat: this.chat(place),
      date: kept.date,
      ...(kept.edited ? { edit_date: this.#nowS() } : {}),
      ...(kept.topic === null ? {} : { message_thread_id: kept.topic, is_topic_message: true }),
      ...(original === undefined ? {} : { reply_to_message: this.wire({ ...original, replyTo: null }) }),
      ...kept.content,
    };
  }
}
