import { createHash } from 'node:crypto';
import { type Api, InputFile } from 'grammy';
import { type Attachment, type Bar, never, type PictureUse, type Store } from '../../src/index.ts';
import { ChannelError, toChannelError } from './errors.ts';
import { readHandle } from './file-handle.ts';
import type { Keyboard } from './keyboard.ts';
import { bold, htmlOf, type MarkedText, plain } from './marked-text.ts';
import type { Pace } from './pace.ts';
import type { Part } from './parts.ts';

/** Something a channel can hand over as bytes, for another channel to send. */
export type OpenedFile = { readonly bytes: Uint8Array; readonly name: string };

/** Where a message goes and how. */
export type Place = {
  readonly chat: number;
  readonly topic?: number | undefined;
  readonly replyTo?: number | undefined;
  readonly urgent?: boolean;
  readonly silent?: boolean;
};

export type Sender = {
  /** Sends one part; gives its message id. Rejects with {@link ChannelError}. */
  readonly part: (part: Part, to: Place) => Promise<number>;
  readonly text: (text: MarkedText, keyboard: Keyboard | null, to: Place) => Promise<number>;
  /** Changes the words of one of our own messages to those of `part`, of the same kind. */
  readonly change: (message: number, part: Part, chat: number) => Promise<void>;
  /** Changes one of our own messages. */
  readonly edit: (message: number, text: MarkedText, keyboard: Keyboard, chat: number) => Promise<void>;
};

export type SenderOptions = {
  readonly api: Api;
  readonly pace: Pace;
  readonly notes: Pick<Store, 'note' | 'putNote'>;
  /** A drawing as PNG bytes. */
  readonly picturePng: (use: PictureUse) => Promise<Buffer>;
  /** The small picture of a sum as PNG bytes. */
  readonly barPng: (bar: Bar) => Promise<Buffer>;
  /** Opens what another channel received (its handle is not ours); null when it is no longer there. */
  readonly openForeign: (attachment: Attachment) => Promise<OpenedFile | null>;
};

/** Turns parts into calls, keeping the pace, and falls back to plainer forms when Telegram refuses the better one. */
export function createSender({ api, pace, notes, picturePng, barPng, openForeign }: SenderOptions): Sender {
  const raw = api.raw;

  async function call(to: Place, send: () => Promise<{ readonly message_id: number }>): Promise<number> {
    return pace.run(to.chat, to.urgent === true, async () => {
      try {
        return (await send()).message_id;
      } catch (thrown) {
        const error = toChannelError(thrown);
        if (error.failure === 'busy') pace.hold(to.chat, error.retryAfterMs ?? 0);
        throw error;
      }
    });
  }

  const common = (to: Place, keyboard: Keyboard | null) => ({
    chat_id: to.chat,
    ...(to.topic === undefined ? {} : { message_thread_id: to.topic }),
    ...(to.replyTo === undefined
      ? {}
      : { reply_parameters: { message_id: to.replyTo, allow_sending_without_reply: true } }),
    ...(to.silent === true ? { disable_notification: true } : {}),
    ...(keyboard === null ? {} : { reply_markup: keyboard }),
  });
  const captioned = (caption: MarkedText) =>
    caption.length === 0 ? {} : { caption: htmlOf(caption), parse_mode: 'HTML' as const };

  const text: Sender['text'] = (marked, keyboard, to) =>
    call(to, () =>
      raw.sendMessage({
        ...common(to, keyboard),
        text: htmlOf(marked),
        parse_mode: 'HTML',
        link_preview_options: { is_disabled: true },
      }),
    );

  /** What Telegram refuses to take as a picture or a file still arrives in words. */
  async function orInWords(
    send: () => Promise<number>,
    words: string,
    part: Exclude<Part, { kind: 'text' }>,
    to: Place,
  ): Promise<number> {
    try {
      return await send();
    } catch (thrown) {
      if (!(thrown instanceof ChannelError) || thrown.failure !== 'refused' || isTopicTrouble(thrown)) throw thrown;
      const rest = part.caption.length === 0 ? [] : [plain('\n'), ...part.caption];
      return text([bold(words), ...rest], part.keyboard, to);
    }
  }

  async function picture(part: Extract<Part, { kind: 'picture' }>, to: Place): Promise<number> {
    const send = async (photo: string | InputFile, note: string) => {
      let fileId: string | undefined;
      const id = await call(to, async () => {
        const sent = await raw.sendPhoto({ ...common(to, part.keyboard), ...captioned(part.caption), photo });
        fileId = sent.photo.at(-1)?.file_id;
        return sent;
      });
      if (typeof photo !== 'string' && fileId !== undefined) await notes.putNote(note, fileId);
      return id;
    };
    return orInWords(
      async () => {
        const png = await picturePng(part.use).catch(() => null);
        if (png === null) throw new ChannelError('refused', 'no picture', { cause: null });
        const note = `telegram:picture:${createHash('sha256').update(png).digest('hex').slice(0, 32)}`;
        const known = await notes.note(note);
        if (known === null) return send(new InputFile(png, 'picture.png'), note);
        try {
          return await send(known, note);
        } catch (thrown) {
          // Another bot's token makes old file ids worthless.
          if (thrown instanceof ChannelError && /file identifier|file_id/i.test(thrown.message))
            return send(new InputFile(png, 'picture.png'), note);
          throw thrown;
        }
      },
      `[picture: ${part.use.alt}]`,
      part,
      to,
    );
  }

  /** Every sum has a picture of its own, so no file id is kept. */
  async function sumBar(part: Extract<Part, { kind: 'bar' }>, to: Place): Promise<number> {
    return orInWords(
      async () => {
        const png = await barPng(part.bar).catch(() => null);
        if (png === null) throw new ChannelError('refused', 'no picture', { cause: null });
        return call(to, () =>
          raw.sendPhoto({
            ...common(to, part.keyboard),
            ...captioned(part.caption),
            photo: new InputFile(png, 'sum.png'),
          }),
        );
      },
      `[picture: ${part.bar.title}]`,
      part,
      to,
    );
  }

  async function attachment(part: Extract<Part, { kind: 'attachment' }>, to: Place): Promise<number> {
    const given = part.attachment;
    const base = common(to, part.keyboard);
    if (given.kind === 'location')
      return call(to, () => raw.sendLocation({ ...base, latitude: given.latitude, longitude: given.longitude }));
    if (given.kind === 'contact')
      return call(to, () => raw.sendContact({ ...base, phone_number: given.phone, first_name: given.name }));
    const words = `[${given.kind}${given.name === undefined ? '' : ` ${given.name}`} could not be sent here]`;
    return orInWords(
      async () => {
        const handle = readHandle(given.file);
        if (handle !== null) return again(handle, part, to);
        const opened = await openForeign(given).catch(() => null);
        if (opened === null) throw new ChannelError('refused', 'the file is no longer there', { cause: null });
        return uploadAnyhow(given.kind, new InputFile(opened.bytes, fileName(opened.name)), part, to);
      },
      words,
      part,
      to,
    );
  }

  function again(
    handle: NonNullable<ReturnType<typeof readHandle>>,
    part: Extract<Part, { kind: 'attachment' }>,
    to: Place,
  ): Promise<number> {
    const base = common(to, part.keyboard);
    const withWords = { ...base, ...captioned(part.caption) };
    return call(to, () => {
      switch (handle.way) {
        case 'copy':
          return raw.copyMessage({ ...base, from_chat_id: handle.chat, message_id: handle.message });
        case 'photo':
          return raw.sendPhoto({ ...withWords, photo: handle.fileId });
        case 'voice':
          return raw.sendVoice({ ...withWords, voice: handle.fileId });
        case 'audio':
          return raw.sendAudio({ ...withWords, audio: handle.fileId });
        case 'video':
          return raw.sendVideo({ ...withWords, video: handle.fileId });
        case 'animation':
          return raw.sendAnimation({ ...withWords, animation: handle.fileId });
        case 'document':
          return raw.sendDocument({ ...withWords, document: handle.fileId });
        case 'video_note':
          return raw.sendVideoNote({ ...base, video_note: handle.fileId });
        case 'sticker':
          return raw.sendSticker({ ...base, sticker: handle.fileId });
        default:
          return never(handle);
      }
    });
  }

  /** What Telegram will not show as a photo, play or draw (another format, too many pixels) it still carries as a file. */
  async function uploadAnyhow(
    kind: 'photo' | 'voice' | 'video' | 'file',
    file: InputFile,
    part: Extract<Part, { kind: 'attachment' }>,
    to: Place,
  ): Promise<number> {
    try {
      return await upload(kind, file, part, to);
    } catch (thrown) {
      if (!(thrown instanceof ChannelError) || thrown.failure !== 'refused' || isTopicTrouble(thrown)) throw thrown;
      if (kind === 'file') throw thrown;
      return upload('file', file, part, to);
    }
  }

  function upload(
    kind: 'photo' | 'voice' | 'video' | 'file',
    file: InputFile,
    part: Extract<Part, { kind: 'attachment' }>,
    to: Place,
  ): Promise<number> {
    const base = { ...common(to, part.keyboard), ...captioned(part.caption) };
    return call(to, () => {
      switch (kind) {
        case 'photo':
          return raw.sendPhoto({ ...base, photo: file });
        case 'voice':
          return raw.sendVoice({ ...base, voice: file });
        case 'video':
          return raw.sendVideo({ ...base, video: file });
        case 'file':
          return raw.sendDocument({ ...base, document: file });
        default:
          return never(kind);
      }
    });
  }

  function part(each: Part, to: Place): Promise<number> {
    if (each.kind === 'text') return text(each.text, each.keyboard, to);
    if (each.kind === 'picture') return picture(each, to);
    return each.kind === 'bar' ? sumBar(each, to) : attachment(each, to);
  }

  async function edit(message: number, marked: MarkedText, keyboard: Keyboard, chat: number): Promise<void> {
    await raw
      .editMessageText({
        chat_id: chat,
        message_id: message,
        text: htmlOf(marked),
        parse_mode: 'HTML',
        link_preview_options: { is_disabled: true },
        reply_markup: keyboard,
      })
      .catch((thrown: unknown) => {
        throw toChannelError(thrown);
      });
  }

  async function change(message: number, part: Part, chat: number): Promise<void> {
    const at = { chat_id: chat, message_id: message };
    await pace.run(chat, false, async () => {
      try {
        if (part.kind === 'text')
          await raw.editMessageText({
            ...at,
            text: htmlOf(part.text),
            parse_mode: 'HTML',
            link_preview_options: { is_disabled: true },
          });
        else await raw.editMessageCaption({ ...at, caption: htmlOf(part.caption), parse_mode: 'HTML' });
      } catch (thrown) {
        const error = toChannelError(thrown);
        if (error.failure === 'busy') pace.hold(chat, error.retryAfterMs ?? 0);
        throw error;
      }
    });
  }

  return { part, text, edit, change };
}

/** The framework writes file names into the form without quotes: what would end one early is taken out. */
function fileName(name: string): string {
  return name.replace(/[\p{Cc}";\\/]/gu, '_') || 'file';
}

/** The forum topic is gone or closed: nothing is wrong with what was sent. */
export function isTopicTrouble(error: ChannelError): boolean {
  return error.failure === 'refused' && /thread not found|TOPIC_(DELETED|ID_INVALID|CLOSED)/i.test(error.message);
}
