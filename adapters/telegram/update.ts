import { z } from 'zod';

/**
 * The fields of an Update that we read (https://core.telegram.org/bots/api#update). Anything else is dropped; a field
 * of another type makes the update unreadable.
 */
const User = z.object({ id: z.number(), is_bot: z.boolean().optional(), first_name: z.string() });

const Chat = z.object({
  id: z.number(),
  type: z.enum(['private', 'group', 'supergroup', 'channel']),
  is_forum: z.boolean().optional(),
});

const file = { file_id: z.string().min(1) };
const Timed = z.object({ ...file, duration: z.number().optional(), file_name: z.string().optional() });

const Content = z.object({
  text: z.string().optional(),
  caption: z.string().optional(),
  photo: z.array(z.object({ ...file, width: z.number(), height: z.number() })).optional(),
  voice: Timed.optional(),
  audio: Timed.optional(),
  video: Timed.optional(),
  video_note: Timed.optional(),
  animation: Timed.optional(),
  document: z.object({ ...file, file_name: z.string().optional() }).optional(),
  sticker: z.object({ ...file, emoji: z.string().optional() }).optional(),
  location: z.object({ latitude: z.number(), longitude: z.number() }).optional(),
  venue: z.object({ title: z.string(), address: z.string() }).optional(),
  contact: z.object({ first_name: z.string(), last_name: z.string().optional(), phone_number: z.string() }).optional(),
  dice: z.object({ emoji: z.string() }).optional(),
  poll: z.object({}).optional(),
  story: z.object({}).optional(),
  checklist: z.object({}).optional(),
  paid_media: z.object({}).optional(),
});

const Button = z.object({ text: z.string(), callback_data: z.string().optional() });

const TelegramMessage = Content.extend({
  message_id: z.number(),
  message_thread_id: z.number().optional(),
  is_topic_message: z.boolean().optional(),
  from: User.optional(),
  sender_chat: z.object({ id: z.number() }).optional(),
  chat: Chat,
  date: z.number(),
  edit_date: z.number().optional(),
  reply_to_message: z.object({ message_id: z.number() }).optional(),
  reply_markup: z.object({ inline_keyboard: z.array(z.array(Button)) }).optional(),
  migrate_to_chat_id: z.number().optional(),
});

/** The message a button hung on; of one too old to be seen only the chat is left. */
const Pressed = z.object({
  message_id: z.number(),
  message_thread_id: z.number().optional(),
  chat: Chat,
  reply_markup: TelegramMessage.shape.reply_markup,
});

export const Update = z.object({
  update_id: z.number().int(),
  message: TelegramMessage.optional(),
  edited_message: TelegramMessage.optional(),
  callback_query: z
    .object({ id: z.string(), from: User, message: Pressed.optional(), data: z.string().optional() })
    .optional(),
  my_chat_member: z.object({ chat: Chat, new_chat_member: z.object({ status: z.string() }) }).optional(),
});

export type Update = z.infer<typeof Update>;
export type TelegramMessage = z.infer<typeof TelegramMessage>;
export type CallbackQuery = NonNullable<Update['callback_query']>;

export const ALLOWED_UPDATES = ['message', 'edited_message', 'callback_query', 'my_chat_member'] as const;
