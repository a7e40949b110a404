import type { Attachment, Message } from '../../src/index.ts';
import { readTyped } from './commands.ts';
import { copyHandle, fileHandle } from './file-handle.ts';
import type { CallbackQuery, TelegramMessage, Update } from './update.ts';

export const TELEGRAM_CHANNEL = 'telegram';

/**
 * What a hirer said or pressed in their private chat with the bot. Null for everything that is nobody's words: groups,
 * channels, service messages ('pinned a message').
 *
 * @param nowMs Presses carry no time of their own.
 */
export function messageOf(update: Update, nowMs: number): Message | null {
  const said = update.message ?? update.edited_message;
  if (said !== undefined)
    return said.chat.type === 'private' ? fromSaid(update.update_id, said, update.message === undefined) : null;
  const query = update.callback_query;
  return query?.message?.chat.type === 'private' && query.data !== undefined
    ? fromPress(update.update_id, query, query.data, nowMs)
    : null;
}

function fromSaid(updateId: number, said: TelegramMessage, edit: boolean): Message | null {
  const text = wordsIn(said);
  const attachments = attachmentsIn(said);
  if (text === '' && attachments.length === 0) return null;
  const typed = attachments.length === 0 ? readTyped(text) : { words: text, startToken: null };
  return {
    channel: TELEGRAM_CHANNEL,
    address: String(said.chat.id),
    key: String(updateId),
    atMs: (edit ? (said.edit_date ?? said.date) : said.date) * 1000,
    text: typed.words,
    choice: null,
    attachments,
    edit,
    from: said.from?.first_name ?? null,
    startToken: typed.startToken,
  };
}

function fromPress(updateId: number, query: CallbackQuery, choice: string, nowMs: number): Message {
  const buttons = query.message?.reply_markup?.inline_keyboard.flat() ?? [];
  return {
    channel: TELEGRAM_CHANNEL,
    address: String(query.message?.chat.id),
    key: String(updateId),
    atMs: nowMs,
    text: buttons.find((button) => button.callback_data === choice)?.text ?? '',
    choice,
    attachments: [],
    edit: false,
    from: query.from.first_name,
    startToken: null,
  };
}

/** The words of a message: text or caption; a sticker or a die says its emoji, a venue its name. */
export function wordsIn(said: TelegramMessage): string {
  const { venue } = said;
  const inStead = venue === undefined ? (said.sticker?.emoji ?? said.dice?.emoji) : `${venue.title}, ${venue.address}`;
  return said.text ?? said.caption ?? inStead ?? '';
}

/** Everything in a message that is not words, in our own types. */
export function attachmentsIn(said: TelegramMessage): readonly Attachment[] {
  const found: Attachment[] = [];
  const largest = said.photo?.reduce((a, b) => (b.width * b.height > a.width * a.height ? b : a));
  if (largest !== undefined) found.push({ kind: 'photo', file: fileHandle('photo', largest.file_id) });
  if (said.voice !== undefined) found.push(timed('voice', 'voice', said.voice));
  if (said.audio !== undefined) found.push(timed('file', 'audio', said.audio));
  if (said.video !== undefined) found.push(timed('video', 'video', said.video));
  if (said.video_note !== undefined) found.push(timed('video', 'video_note', said.video_note));
  // An animation comes with a document of the same file, kept for old programs: it counts once.
  if (said.animation !== undefined) found.push(timed('video', 'animation', said.animation));
  else if (said.document !== undefined) found.push(timed('file', 'document', said.document));
  if (said.sticker !== undefined && said.sticker.emoji === undefined)
    found.push({ kind: 'file', file: fileHandle('sticker', said.sticker.file_id) });
  if (said.location !== undefined)
    found.push({ kind: 'location', latitude: said.location.latitude, longitude: said.location.longitude });
  if (said.contact !== undefined) {
    const { first_name, last_name, phone_number } = said.contact;
    found.push({
      kind: 'contact',
      name: last_name === undefined ? first_name : `${first_name} ${last_name}`,
      phone: phone_number,
    });
  }
  if ((said.poll ?? said.story ?? said.checklist ?? said.paid_media) !== undefined)
    found.push({ kind: 'file', file: copyHandle(said.chat.id, said.message_id) });
  return found;
}

function timed(
  kind: 'voice' | 'video' | 'file',
  way: Parameters<typeof fileHandle>[0],
  item: { readonly file_id: string; readonly duration?: number | undefined; readonly file_name?: string | undefined },
): Attachment {
  return {
    kind,
    file: fileHandle(way, item.file_id),
    ...(item.file_name === undefined ? {} : { name: item.file_name }),
    ...(item.duration === undefined ? {} : { seconds: item.duration }),
  };
}
