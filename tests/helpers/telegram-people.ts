import type { Button, Kept, Place, User, World } from './telegram-world.ts';
import { BOT } from './telegram-world.ts';

/** What stands on somebody's screen, oldest first. */
export type Seen = {
  readonly id: number;
  readonly text: string;
  readonly media: string | null;
  readonly choices: readonly string[];
  readonly replyTo: number | null;
  readonly topic: number | null;
};

/** Everything but text that a person can send. */
export const MEDIA = [
  'photo',
  'voice',
  'audio',
  'video',
  'video_note',
  'animation',
  'sticker',
  'document',
  'location',
  'contact',
  'poll',
] as const;
export type Media = (typeof MEDIA)[number];

export function seen(kept: Kept): Seen {
  const { content } = kept;
  const markup = content.reply_markup as { inline_keyboard: Button[][] } | undefined;
  return {
    id: kept.message_id,
    text: String(content.text ?? content.caption ?? ''),
    media: MEDIA.find((kind) => content[kind] !== undefined) ?? null,
    choices: (markup?.inline_keyboard ?? []).flat().map((button) => button.text),
    replyTo: kept.replyTo,
    topic: kept.topic,
  };
}

type Where = { readonly topic?: number | null; readonly replyTo?: number | null };

/** Somebody with the app in their hand. */
export class PersonOnTelegram {
  readonly world: World;
  readonly user: User;
  readonly place: Place;
  #queries = 1;

  constructor(world: World, user: User) {
    this.world = world;
    this.user = user;
    this.place = world.addPlace({ id: user.id, type: 'private', title: user.first_name, forum: false });
  }

  says(text: string): Kept {
    return this.saysIn(this.place, text);
  }

  saysIn(place: Place, text: string, where: Where = {}): Kept {
    const command = /^\/\w+/.exec(text);
    const entities =
      command === null ? {} : { entities: [{ type: 'bot_command', offset: 0, length: command[0].length }] };
    return this.world.add(place, this.user, { text, ...entities }, where);
  }

  sends(media: Media, options: Where & { caption?: string; place?: Place; bytes?: Uint8Array } = {}): Kept {
    const { place = this.place, caption, bytes = new Uint8Array([1, 2, 3]) } = options;
    const words = caption === undefined ? {} : { caption };
    return this.world.add(place, this.user, { ...this.#content(media, bytes), ...words }, options);
  }

  #content(media: Media, bytes: Uint8Array): Record<string, unknown> {
    if (media === 'location') return { location: { latitude: 54.1, longitude: -3.2 } };
    if (media === 'contact') return { contact: { phone_number: '01632 960555', first_name: 'Odd' } };
    if (media === 'poll')
      return {
        poll: {
          id: '1',
          question: 'Beach or hills?',
          options: [],
          total_voter_count: 0,
          is_closed: false,
          is_anonymous: true,
          type: 'regular',
          allows_multiple_answers: false,
          allows_revoting: false,
          members_only: false,
        },
      };
    const file = this.world.addFile(bytes, `${media}.bin`, media);
    const base = { file_id: file.id, file_unique_id: `u-${file.id}`, file_size: bytes.length };
    switch (media) {
      case 'photo':
        return {
          photo: [
            { ...base, file_id: `${file.id}-small`, width: 90, height: 60, file_size: 1 },
            { ...base, width: 1280, height: 853 },
          ],
        };
      case 'voice':
      case 'audio':
        return { [media]: { ...base, duration: 7 } };
      case 'video_note':
        return { video_note: { ...base, length: 240, duration: 7 } };
      case 'sticker':
        return {
          sticker: {
            ...base,
            type: 'regular',
            width: 512,
            height: 512,
            is_animated: false,
            is_video: false,
            emoji: '👍',
          },
        };
      case 'document':
        return { document: { ...base, file_name: 'crack.pdf' } };
      default:
        return { [media]: { ...base, width: 320, height: 240, duration: 7 } };
    }
  }

  edits(kept: Kept, text: string): void {
    kept.content = { ...kept.content, [kept.content.caption === undefined ? 'text' : 'caption']: text };
    kept.edited = true;
    this.world.push({ edited_message: this.world.wire(kept) });
  }

  /** Takes a message out of the private chat for both sides. The bot is told nothing, as the published Update has no field for it. */
  deletes(messageId: number): void {
    const at = this.place.messages.findIndex((kept) => kept.message_id === messageId);
    this.place.messages.splice(at, 1);
  }

  /** Presses the newest button with that label in a place; returns the query's id. */
  presses(label: string, place: Place = this.place, inTopic?: number): string {
    const kept = place.messages.findLast(
      (message) => seen(message).choices.includes(label) && (inTopic === undefined || message.topic === inTopic),
    );
    if (kept === undefined) throw new Error(`no button '${label}' on the screen`);
    const markup = kept.content.reply_markup as { inline_keyboard: Button[][] };
    const button = markup.inline_keyboard.flat().find((each) => each.text === label) as Button;
    return this.pressesData(button.callback_data ?? '', kept);
  }

  pressesData(data: string, kept: Kept): string {
    const id = `${this.user.id}-${this.#queries++}`;
    this.world.queries.set(id, { answered: false, text: null });
    this.world.push({
      callback_query: { id, from: this.user, message: this.world.wire(kept), chat_instance: '1', data },
    });
    return id;
  }

  blocks(): void {
    this.place.reachable = false;
    this.#memberUpdate('member', 'kicked');
  }

  unblocks(): void {
    this.place.reachable = true;
    this.#memberUpdate('kicked', 'member');
  }

  #memberUpdate(from: string, to: string): void {
    this.world.push({ my_chat_member: memberChange(this.world, this.place, this.user, from, to) });
  }

  /** What the bot has said to this person. */
  screen(): Seen[] {
    return this.place.messages.filter((message) => message.from.id === BOT.id).map(seen);
  }
}

function memberChange(world: World, place: Place, by: User, from: string, to: string): Record<string, unknown> {
  const member = (status: string) => ({ status, user: BOT, ...(status === 'kicked' ? { until_date: 0 } : {}) });
  return { chat: world.chat(place), from: by, date: 1, old_chat_member: member(from), new_chat_member: member(to) };
}

/** A group the bot may be in. */
export class GroupOnTelegram {
  readonly world: World;
  readonly place: Place;

  constructor(world: World, place: Place) {
    this.world = world;
    this.place = place;
  }

  get id(): number {
    return this.place.id;
  }

  /** As another bot, or as an administrator who stays anonymous: those come as a bot that speaks for the group. */
  botSays(text: string, topic: number | null, as: 'another bot' | 'the group itself'): void {
    const from = { id: 1_087_968_824, is_bot: true, first_name: 'Group' };
    const itself = as === 'the group itself' ? { sender_chat: this.world.chat(this.place) } : {};
    const kept = this.world.add(this.place, from, { text, ...itself }, { topic });
    this.world.push({ message: this.world.wire(kept) });
  }

  bringsInBot(by: PersonOnTelegram): void {
    this.world.push({ my_chat_member: memberChange(this.world, this.place, by.user, 'left', 'member') });
  }

  throwsOutBot(by: PersonOnTelegram): void {
    this.place.reachable = false;
    this.world.push({ my_chat_member: memberChange(this.world, this.place, by.user, 'member', 'kicked') });
  }

  /** Deleted by hand: the messages in it go as well. */
  deletesTopic(name: string): void {
    const topic = this.topic(name);
    if (topic === undefined) throw new Error(`no forum topic '${name}'`);
    topic.deleted = true;
  }

  topic(name: string) {
    return [...this.place.topics.values()].findLast((topic) => topic.name === name && !topic.deleted);
  }

  topics(): readonly string[] {
    return [...this.place.topics.values()].filter((topic) => !topic.deleted).map((topic) => topic.name);
  }

  /** What the bot has said here, in one forum topic (null: General, or a plain group) or anywhere. */
  screen(topic?: number | null): Seen[] {
    return this.place.messages
      .filter((message) => message.from.id === BOT.id && message.content.forum_topic_created === undefined)
      .filter((message) => topic === undefined || message.topic === topic)
      .map(seen);
  }

  reactionsOn(kept: Kept): readonly string[] {
    return kept.reactions;
  }
}
