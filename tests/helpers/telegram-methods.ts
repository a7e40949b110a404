import { parseHtml } from './telegram-html.ts';
import { BOT, type Button, type Kept, type Place, type World } from './telegram-world.ts';

/** The server's refusal: becomes `{ ok: false, error_code, description, parameters }`. */
export class Refusal extends Error {
  readonly code: number;
  readonly parameters: Readonly<Record<string, unknown>> | undefined;
  constructor(code: number, description: string, parameters?: Readonly<Record<string, unknown>>) {
    super(description);
    this.code = code;
    this.parameters = parameters;
  }
}

type Payload = Readonly<Record<string, unknown>>;
const bad = (why: string) => new Refusal(400, `Bad Request: ${why}`);

/** https://core.telegram.org/bots/api#sendmessage and #sendphoto: '1-4096' and '0-1024 characters after entities parsing'. */
const LONGEST_TEXT = 4096;
const LONGEST_CAPTION = 1024;

/** Sending method -> the field that holds the file and what the message's own field is called. */
const MEDIA: Readonly<Record<string, { field: string; many?: boolean; extra?: Payload }>> = {
  sendPhoto: { field: 'photo', many: true },
  sendVoice: { field: 'voice', extra: { duration: 3 } },
  sendAudio: { field: 'audio', extra: { duration: 3 } },
  sendVideo: { field: 'video', extra: { width: 320, height: 240, duration: 3 } },
  sendAnimation: { field: 'animation', extra: { width: 320, height: 240, duration: 3 } },
  sendVideoNote: { field: 'video_note', extra: { length: 240, duration: 3 } },
  sendSticker: {
    field: 'sticker',
    extra: { type: 'regular', width: 512, height: 512, is_animated: false, is_video: false },
  },
  sendDocument: { field: 'document' },
};

/**
 * Carries one call out.
 *
 * @returns The call's result.
 * @throws Refusal as the real server refuses: error words are those that are commonly seen from it.
 */
export function carryOut(world: World, method: string, payload: Payload): unknown {
  const media = MEDIA[method];
  if (media !== undefined) return sendMedia(world, payload, media);
  switch (method) {
    case 'getMe':
      return { ...BOT, can_join_groups: true, can_read_all_group_messages: true, supports_inline_queries: false };
    case 'setMyCommands':
      world.commands = payload.commands as typeof world.commands;
      for (const { command } of world.commands)
        if (!/^[a-z0-9_]{1,32}$/.test(command)) throw bad('BOT_COMMAND_INVALID');
      return true;
    case 'getChat': {
      const place = placeOf(world, payload);
      return { ...world.chat(place), accent_color_id: 0, max_reaction_count: 11, accepted_gift_types: NO_GIFTS };
    }
    case 'leaveChat':
      placeOf(world, payload).reachable = false;
      return true;
    case 'sendMessage': {
      const { text, entities } = marked(payload.text, payload.parse_mode);
      if (text.trim() === '') throw bad('message text is empty');
      if (text.length > LONGEST_TEXT) throw bad('message is too long');
      return send(world, payload, { text, ...(entities.length > 0 ? { entities } : {}) });
    }
    case 'sendLocation':
      return send(world, payload, { location: { latitude: payload.latitude, longitude: payload.longitude } });
    case 'sendContact':
      return send(world, payload, {
        contact: { phone_number: payload.phone_number, first_name: payload.first_name },
      });
    case 'copyMessage': {
      const source = placeOf(world, { chat_id: payload.from_chat_id });
      const original = world.find(source, Number(payload.message_id));
      if (original === undefined) throw bad('message to copy not found');
      const { reply_markup: _, ...content } = original.content;
      const made = send(world, payload, content);
      world.sourceOf.set(made.message_id as number, original.message_id);
      return { message_id: made.message_id };
    }
    case 'editMessageText': {
      const { text, entities } = marked(payload.text, payload.parse_mode);
      if (text.length > LONGEST_TEXT) throw bad('MESSAGE_TOO_LONG');
      return edit(world, payload, { text, ...(entities.length > 0 ? { entities } : {}) });
    }
    case 'editMessageCaption': {
      const { text, entities } = marked(payload.caption, payload.parse_mode);
      if (text.length > LONGEST_CAPTION) throw bad('message caption is too long');
      return edit(world, payload, { caption: text, ...(entities.length > 0 ? { caption_entities: entities } : {}) });
    }
    case 'editMessageReplyMarkup':
      return edit(world, payload, {});
    case 'setMessageReaction': {
      const kept = messageOf(world, payload);
      kept.reactions = (payload.reaction as { emoji: string }[]).map((reaction) => reaction.emoji);
      return true;
    }
    case 'answerCallbackQuery': {
      const query = world.queries.get(String(payload.callback_query_id));
      if (query === undefined || query.answered)
        throw bad('query is too old and response timeout expired or query ID is invalid');
      if (String(payload.text ?? '').length > 200) throw bad('MESSAGE_TOO_LONG');
      query.answered = true;
      query.text = (payload.text as string | undefined) ?? null;
      return true;
    }
    case 'createForumTopic':
      return createTopic(world, payload);
    case 'reopenForumTopic':
    case 'closeForumTopic': {
      const topic = topicOf(placeOf(world, payload), payload.message_thread_id);
      const closed = method === 'closeForumTopic';
      if (topic.closed === closed) throw bad('TOPIC_NOT_MODIFIED');
      topic.closed = closed;
      return true;
    }
    case 'getFile': {
      const file = world.files.get(String(payload.file_id));
      if (file === undefined) throw bad('invalid file_id');
      return { file_id: file.id, file_unique_id: `u-${file.id}`, file_size: file.bytes.length, file_path: file.path };
    }
    default:
      throw new Refusal(404, `Not Found: the stand-in does not know ${method}`);
  }
}

const NO_GIFTS = {
  unlimited_gifts: false,
  limited_gifts: false,
  unique_gifts: false,
  premium_subscription: false,
  gifts_from_channels: false,
};

function placeOf(world: World, payload: Payload): Place {
  const place = world.places.get(Number(payload.chat_id));
  if (place === undefined) throw bad('chat not found');
  if (place.movedTo !== null)
    throw new Refusal(400, 'Bad Request: group chat was upgraded to a supergroup chat', {
      migrate_to_chat_id: place.movedTo,
    });
  if (!place.reachable)
    throw new Refusal(
      403,
      place.type === 'private'
        ? 'Forbidden: bot was blocked by the user'
        : `Forbidden: bot was kicked from the ${place.type} chat`,
    );
  return place;
}

function topicOf(place: Place, id: unknown) {
  const topic = place.topics.get(Number(id));
  if (topic === undefined || topic.deleted) throw bad('message thread not found');
  return topic;
}

function messageOf(world: World, payload: Payload): Kept {
  const kept = world.find(placeOf(world, payload), Number(payload.message_id));
  if (kept === undefined) throw bad('message not found');
  return kept;
}

function marked(text: unknown, mode: unknown) {
  if (mode === undefined) return { text: String(text ?? ''), entities: [] };
  if (mode !== 'HTML') throw bad('unsupported parse_mode');
  try {
    return parseHtml(String(text ?? ''));
  } catch (problem) {
    throw bad((problem as Error).message);
  }
}

function send(world: World, payload: Payload, content: Payload): Record<string, unknown> {
  const place = placeOf(world, payload);
  let topic: number | null = null;
  if (payload.message_thread_id !== undefined) {
    if (!place.forum) throw bad('message thread not found');
    topic = topicOf(place, payload.message_thread_id).id;
  }
  checkButtons(payload.reply_markup as { inline_keyboard?: Button[][] } | undefined);
  const reply = payload.reply_parameters as { message_id: number; allow_sending_without_reply?: boolean } | undefined;
  const replyTo = reply !== undefined && world.find(place, reply.message_id) !== undefined ? reply.message_id : null;
  if (reply !== undefined && replyTo === null && reply.allow_sending_without_reply !== true)
    throw bad('message to be replied not found');
  const markup = payload.reply_markup === undefined ? {} : { reply_markup: payload.reply_markup };
  return world.wire(world.add(place, BOT, { ...content, ...markup }, { topic, replyTo }));
}

function checkButtons(markup: { inline_keyboard?: Button[][] } | undefined): void {
  for (const button of markup?.inline_keyboard?.flat() ?? []) {
    if (button.text === '') throw bad('Text buttons are unallowed in the inline keyboard');
    const bytes = new TextEncoder().encode(button.callback_data ?? '').length;
    if (bytes < 1 || bytes > 64) throw bad('BUTTON_DATA_INVALID');
  }
}

function sendMedia(world: World, payload: Payload, media: { field: string; many?: boolean; extra?: Payload }): unknown {
  const { text, entities } = marked(payload.caption, payload.parse_mode);
  if (text.length > LONGEST_CAPTION) throw bad('message caption is too long');
  const given = payload[media.field];
  const file =
    given instanceof File
      ? world.addFile(bytesOf.get(given) ?? new Uint8Array(), given.name, media.field)
      : world.files.get(String(given));
  if (file === undefined) throw bad('wrong file identifier/HTTP URL specified');
  const base = { file_id: file.id, file_unique_id: `u-${file.id}`, file_size: file.bytes.length };
  const item = media.many ? [{ ...base, width: 90, height: 60 }] : { ...base, ...media.extra };
  const caption = text === '' ? {} : { caption: text, ...(entities.length > 0 ? { caption_entities: entities } : {}) };
  return send(world, payload, { [media.field]: item, ...caption });
}

/** Bytes of uploaded files: read by the server beforehand, as calls are carried out without waiting. */
export const bytesOf = new WeakMap<File, Uint8Array>();

function edit(world: World, payload: Payload, content: Payload): unknown {
  const kept = messageOf(world, payload);
  if (kept.from.id !== BOT.id) throw bad("message can't be edited");
  const { reply_markup: _, ...before } = kept.content;
  const markup = payload.reply_markup === undefined ? {} : { reply_markup: payload.reply_markup };
  checkButtons(payload.reply_markup as { inline_keyboard?: Button[][] } | undefined);
  const after = { ...before, ...content, ...markup };
  if (JSON.stringify(after) === JSON.stringify(kept.content)) throw bad('message is not modified');
  kept.content = after;
  kept.edited = true;
  return world.wire(kept);
}

function createTopic(world: World, payload: Payload): unknown {
  const place = placeOf(world, payload);
  if (!place.forum) throw bad('the chat is not a forum');
  if (!place.mayManageTopics) throw bad('not enough rights to create a topic');
  const name = String(payload.name);
  if (name.length < 1 || name.length > 128) throw bad('TOPIC_NAME_INVALID');
  const kept = world.add(place, BOT, { forum_topic_created: { name, icon_color: 7322096 } });
  place.topics.set(kept.message_id, { id: kept.message_id, name, closed: false, deleted: false });
  return { message_thread_id: kept.message_id, name, icon_color: 7322096 };
}
