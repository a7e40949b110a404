import { memoryStore } from '../../adapters/memory/memory-store.ts';
import { fileHandle } from '../../adapters/telegram/file-handle.ts';
import type { Rates } from '../../adapters/telegram/limits.ts';
import { createTelegram, type TelegramChannel, type TelegramOptions } from '../../adapters/telegram/telegram.ts';
import type { Attachment, Message } from '../../src/index.ts';
import type { ChannelRig, FarEnd } from '../contracts/channel.ts';
import { TelegramStandIn } from './telegram-stand-in.ts';
import type { Kept } from './telegram-world.ts';

/** Rates that never make a test wait. */
export const NO_HURRY: Rates = { chatMs: 0, groupPerMinute: 10_000, groupKeptForUrgent: 0, overallPerSecond: 10_000 };

export const QUIET = { info: () => {}, warn: () => {}, error: () => {} };

/** Like the store's `receive`: a key is taken once. */
export function anInTray() {
  const messages: Message[] = [];
  const keys = new Set<string>();
  let repeats = 0;
  return {
    messages,
    repeats: () => repeats,
    receive: async (message: Message) => {
      if (keys.has(message.key)) repeats += 1;
      else {
        keys.add(message.key);
        messages.push(message);
      }
    },
  };
}

/** A Telegram channel's options on a stand-in; everything can be replaced. */
export function optionsFor(standIn: TelegramStandIn, more: Partial<TelegramOptions> = {}): TelegramOptions {
  return {
    token: standIn.token,
    apiRoot: standIn.root,
    receive: async () => {},
    store: memoryStore(),
    picturePng: async () => Buffer.from('not really a PNG'),
    barPng: async () => Buffer.from('not really a PNG'),
    clock: { nowMs: () => Date.now() },
    log: QUIET,
    rates: NO_HURRY,
    holdS: 1,
    ...more,
  };
}

const MEDIA = {
  photo: 'photo',
  voice: 'voice',
  video: 'video',
  file: 'document',
  location: 'location',
  contact: 'contact',
} as const;

/** The contract's rig on Telegram: a stand-in, a started channel, people. */
export async function telegramRig(
  more: Partial<TelegramOptions> = {},
): Promise<ChannelRig & { readonly standIn: TelegramStandIn }> {
  const standIn = await new TelegramStandIn().start();
  const tray = anInTray();
  const channel: TelegramChannel = createTelegram(optionsFor(standIn, { receive: tray.receive, ...more }));
  await channel.start();

  async function person(): Promise<FarEnd> {
    const somebody = standIn.person('Ada');
    let last: Kept | null = null;
    return {
      address: { channel: 'telegram', address: String(somebody.user.id) },
      says: async (text) => {
        last = somebody.says(text);
      },
      sends: async (kind, caption) => {
        last = somebody.sends(MEDIA[kind], caption === undefined ? {} : { caption });
      },
      edits: async (text) => {
        if (last === null) throw new Error('nothing was said yet');
        somebody.edits(last, text);
      },
      presses: async (label) => {
        somebody.presses(label);
      },
      opens: async (token) => {
        somebody.says(`/start ${token}`);
      },
      screen: async () => somebody.screen(),
      leaves: async () => somebody.blocks(),
    };
  }

  return {
    standIn,
    channel,
    person,
    received: () => tray.messages,
    spoil: async (how) => {
      if (how === 'later')
        standIn.trouble(null, {
          kind: 'refuse',
          code: 429,
          description: 'Too Many Requests: retry after 1',
          retryAfterS: 1,
        });
      else standIn.trouble(null, { kind: 'drop', when: 'after' });
    },
    photo: async (): Promise<Attachment> => {
      const file = standIn.world.addFile(new Uint8Array([9]), 'photo.jpg', 'photo');
      return { kind: 'photo', file: fileHandle('photo', file.id) };
    },
    close: async () => {
      await channel.stop();
      await standIn.close();
      if (standIn.complaints.length > 0)
        throw new Error(`against the published description:\n${standIn.complaints.join('\n')}`);
    },
  };
}
