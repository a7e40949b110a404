import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { createTelegram, type TelegramOptions } from '../../../adapters/telegram/telegram.ts';
import type { Block } from '../../../src/index.ts';
import { aLine, aReply } from '../../contracts/channel.ts';
import type { PersonOnTelegram } from '../../helpers/telegram-people.ts';
import { optionsFor } from '../../helpers/telegram-rig.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';

const picture = (name: string): Block => ({ kind: 'picture', use: { picture: name, touch: null, alt: `The ${name}` } });

describe('delivering a reply', () => {
  let standIn: TelegramStandIn;
  let ada: PersonOnTelegram;
  beforeEach(async () => {
    standIn = await new TelegramStandIn().start();
    ada = standIn.person('Ada');
  });
  afterEach(async () => {
    await standIn.close();
    expect(standIn.complaints).toEqual([]);
  });

  const make = (more: Partial<TelegramOptions> = {}) => createTelegram(optionsFor(standIn, more));
  const to = () => ({ channel: 'telegram', address: String(ada.user.id) });
  const texts = () => ada.screen().map((seen) => seen.text);
  const refuse = (code: number, description: string, retryAfterS?: number) =>
    ({ kind: 'refuse', code, description, ...(retryAfterS === undefined ? {} : { retryAfterS }) }) as const;
  const threeParts = aReply([aLine('one'), picture('locker'), aLine('two'), picture('tap')]);

  it('goes on where it stopped when a later part could not be sent, even after a restart', async () => {
    const store = memoryStore();
    standIn.trouble('sendMessage', refuse(429, 'Too Many Requests: retry after 3', 3));
    const first = make({ store });
    expect(await first.deliver(threeParts, to())).toEqual({ kind: 'later', afterMs: 3000, why: expect.any(String) });
    expect(ada.screen()).toEqual([]);
    standIn.trouble('sendPhoto', refuse(500, 'Internal Server Error'));
    expect(await make({ store }).deliver(threeParts, to())).toMatchObject({ kind: 'later' });
    expect(texts()).toEqual(['one']);
    expect(await make({ store }).deliver(threeParts, to())).toMatchObject({ kind: 'delivered' });
    expect(ada.screen().map((seen) => seen.media ?? seen.text)).toEqual(['one', 'photo', 'two', 'photo']);
  });

  it('sends the same reply whole when it is meant a second time', async () => {
    const channel = make();
    await channel.deliver(threeParts, to());
    await channel.deliver(threeParts, to());
    expect(ada.screen()).toHaveLength(8);
  });

  it('sends the rest of a reply after a part whose outcome the network hid, and says that it is not sure', async () => {
    standIn.trouble('sendPhoto', { kind: 'drop', when: 'after' });
    expect(await make().deliver(threeParts, to())).toMatchObject({ kind: 'unknown' });
    expect(ada.screen().map((seen) => seen.media ?? seen.text)).toEqual(['one', 'photo', 'two', 'photo']);
  });

  it('asks to repeat a notice whose outcome the network hid: twice is better than never', async () => {
    const notice = aReply([aLine('GET OUT NOW')], { kind: 'notice' });
    standIn.trouble('sendMessage', { kind: 'drop', when: 'before' });
    const channel = make();
    expect(await channel.deliver(notice, to())).toMatchObject({ kind: 'later' });
    expect(await channel.deliver(notice, to())).toMatchObject({ kind: 'delivered' });
    expect(texts()).toEqual(['GET OUT NOW']);
  });

  it('uploads a picture once and names it by its file id afterwards, over restarts too', async () => {
    const store = memoryStore();
    const reply = aReply([picture('locker')]);
    await make({ store }).deliver(reply, to());
    await make({ store }).deliver(reply, to());
    const [first, second] = standIn.callsOf('sendPhoto').map((call) => call.payload['photo']);
    expect(first).toBeInstanceOf(File);
    expect(typeof second).toBe('string');
    expect(ada.screen().map((seen) => seen.media)).toEqual(['photo', 'photo']);
  });

  it('uploads it anew when it was drawn anew, or when the file id is worth nothing any more', async () => {
    const store = memoryStore();
    const reply = aReply([picture('locker')]);
    await make({ store, picturePng: async () => Buffer.from('old') }).deliver(reply, to());
    await make({ store, picturePng: async () => Buffer.from('new') }).deliver(reply, to());
    standIn.world.files.clear();
    await make({ store, picturePng: async () => Buffer.from('new') }).deliver(reply, to());
    expect(standIn.callsOf('sendPhoto').map((call) => call.payload['photo'] instanceof File)).toEqual([
      true,
      true,
      false,
      true,
    ]);
    expect(ada.screen()).toHaveLength(3);
  });

  it('says in words what cannot be shown', async () => {
    const broken = make({ picturePng: () => Promise.reject(new Error('no font')) });
    await broken.deliver(aReply([aLine('The valve'), picture('locker')]), to());
    await make().deliver(
      aReply([aLine('See'), { kind: 'attachment', attachment: { kind: 'photo', file: 'upload:7' } }], { from: 'Meg' }),
      to(),
    );
    expect(texts()).toEqual(['[picture: The locker]\nThe valve', '[photo could not be sent here]\nMeg\nSee']);
  });

  it('uploads what another channel received', async () => {
    const channel = make({ openForeign: async () => ({ bytes: new Uint8Array([5, 6]), name: 'a "b";c\r\n.jpg' }) });
    for (const kind of ['photo', 'voice', 'video', 'file'] as const)
      await channel.deliver(aReply([{ kind: 'attachment', attachment: { kind, file: `upload:${kind}` } }]), to());
    expect(ada.screen().map((seen) => seen.media)).toEqual(['photo', 'voice', 'video', 'document']);
    expect([...standIn.world.files.values()].map((file) => [...file.bytes])).toEqual([
      [5, 6],
      [5, 6],
      [5, 6],
      [5, 6],
    ]);
  });

  it('opens for other channels what came in over Telegram', async () => {
    const channel = make();
    const sent = ada.sends('photo', { bytes: new Uint8Array([7, 8, 9]) });
    const id = (sent.content['photo'] as { file_id: string }[]).at(-1)?.file_id;
    expect(await channel.open({ kind: 'photo', file: `tg:photo:${id}` })).toEqual({
      bytes: new Uint8Array([7, 8, 9]),
      name: expect.any(String),
    });
    expect(await channel.open({ kind: 'photo', file: 'tg:photo:unknown' })).toBeNull();
    expect(await channel.open({ kind: 'photo', file: 'upload:1' })).toBeNull();
    expect(await channel.open({ kind: 'location', latitude: 1, longitude: 2 })).toBeNull();
  });

  it('tells apart those who are gone from what Telegram merely refuses', async () => {
    const channel = make();
    const reply = aReply([aLine('hello')]);
    for (const [code, description, kind] of [
      [403, 'Forbidden: bot was blocked by the user', 'gone'],
      [403, 'Forbidden: user is deactivated', 'gone'],
      [400, 'Bad Request: chat not found', 'gone'],
      [400, 'Bad Request: something else', 'unknown'],
      [401, 'Unauthorized', 'later'],
      [500, 'Internal Server Error', 'later'],
      [502, 'Bad Gateway', 'unknown'],
    ] as const) {
      standIn.trouble('sendMessage', refuse(code, description));
      expect(await channel.deliver(reply, to()), description).toMatchObject({ kind });
    }
    await standIn.close();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(await channel.deliver(reply, to())).toMatchObject({ kind: 'later', why: 'not connected: ECONNREFUSED' });
    await standIn.start();
  });

  it('asks for another try when our own side fails', async () => {
    const store = { ...memoryStore(), note: () => Promise.reject(new Error('disk')) };
    expect(await make({ store }).deliver(threeParts, to())).toMatchObject({ kind: 'later' });
  });
});
