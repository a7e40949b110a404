import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Log } from '../../../adapters/telegram/log.ts';
import { createTelegram, type TelegramOptions } from '../../../adapters/telegram/telegram.ts';
import { until } from '../../contracts/channel.ts';
import { anInTray, optionsFor, QUIET } from '../../helpers/telegram-rig.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';
import { briefly } from '../../helpers/telegram-yard.ts';

describe('long polling', () => {
  let standIn: TelegramStandIn;
  let ends: (() => Promise<void>)[] = [];
  beforeEach(async () => {
    standIn = await new TelegramStandIn().start();
  });
  afterEach(async () => {
    for (const end of ends) await end();
    ends = [];
    await standIn.close();
    expect(standIn.complaints).toEqual([]);
  });

  async function listen(more: Partial<TelegramOptions>) {
    const channel = createTelegram(optionsFor(standIn, { wait: briefly, ...more }));
    await channel.start();
    ends.push(channel.stop);
    return channel;
  }
  const confirmed = () => until(() => standIn.world.pending.length === 0, 'all updates to be confirmed');

  it('confirms an update only after it is stored', async () => {
    const order: string[] = [];
    const ada = standIn.person('Ada');
    ada.says('hello');
    await listen({
      receive: async () => {
        expect(standIn.world.pending).toHaveLength(1);
        order.push('stored');
      },
    });
    await confirmed();
    expect(order).toEqual(['stored']);
  });

  it('takes an update again after a crash between storing and confirming, and it counts once', async () => {
    const tray = anInTray();
    const ada = standIn.person('Ada');
    for (const text of ['one', 'two', 'three']) ada.says(text);
    let stored = 0;
    // The process dies right after the second message is on disk: nothing of it runs on.
    const dead = createTelegram(
      optionsFor(standIn, {
        receive: async (message) => {
          await tray.receive(message);
          stored += 1;
          if (stored === 2) await new Promise(() => {});
        },
      }),
    );
    await dead.start();
    await until(() => stored === 2, 'the crash');
    expect(standIn.world.pending).toHaveLength(3);
    await listen({ receive: tray.receive });
    await confirmed();
    expect(tray.messages.map((message) => message.text)).toEqual(['one', 'two', 'three']);
    expect(tray.repeats()).toBe(2);
  });

  it('asks again for what could not be stored, in order, and loses nothing', async () => {
    const tray = anInTray();
    let failures = 3;
    const ada = standIn.person('Ada');
    const ben = standIn.person('Ben');
    for (const text of ['one', 'two', 'three']) {
      ada.says(text);
      ben.says(text);
    }
    await listen({
      receive: async (message) => {
        if (message.text === 'two' && failures-- > 0) throw new Error('disk full');
        await tray.receive(message);
      },
    });
    await confirmed();
    for (const person of [ada, ben])
      expect(
        tray.messages.filter((message) => message.address === String(person.user.id)).map((message) => message.text),
      ).toEqual(['one', 'two', 'three']);
  });

  it('goes on after Telegram was down, refused, or gave rubbish', async () => {
    const tray = anInTray();
    await listen({ receive: tray.receive });
    const ada = standIn.person('Ada');
    standIn.trouble('getUpdates', { kind: 'refuse', code: 500, description: 'Internal Server Error' });
    standIn.trouble('getUpdates', { kind: 'gateway' });
    standIn.trouble('getUpdates', { kind: 'drop', when: 'before' });
    standIn.trouble('getUpdates', { kind: 'drop', when: 'after' });
    standIn.trouble('getUpdates', {
      kind: 'refuse',
      code: 429,
      description: 'Too Many Requests: retry after 1',
      retryAfterS: 1,
    });
    ada.says('one');
    await until(() => tray.messages.length === 1, 'the first message');
    const port = Number(new URL(standIn.root).port);
    await standIn.close();
    ada.says('two');
    await standIn.start(port);
    await until(() => tray.messages.length === 2, 'the second message');
    await confirmed();
  });

  it('starts while Telegram cannot be reached and sets itself up when it can', async () => {
    const port = Number(new URL(standIn.root).port);
    await standIn.close();
    const channel = await listen({});
    expect(await channel.botName()).toBeNull();
    await standIn.start(port);
    await until(() => standIn.world.commands.length > 0, 'the commands to be set');
    expect(await channel.botName()).toBe('brackenfold_test_bot');
  });

  it('refuses to start with a token that Telegram does not know, and does not show it', async () => {
    const channel = createTelegram(optionsFor(standIn, { token: '1234567:not-the-token' }));
    await expect(channel.start()).rejects.toThrow('TELEGRAM_TOKEN');
    await expect(channel.start()).rejects.not.toThrow('not-the-token');
  });

  it('leaves out an update it cannot read and says which fields were wrong, not what was in them', async () => {
    const logged: string[] = [];
    const log: Log = { ...QUIET, error: (data, message) => void logged.push(JSON.stringify(data) + message) };
    const tray = anInTray();
    standIn.world.push({ message: { message_id: 'odd', text: 'a secret' } });
    standIn.person('Ada').says('hello');
    await listen({ receive: tray.receive, log });
    await confirmed();
    expect(tray.messages.map((message) => message.text)).toEqual(['hello']);
    expect(logged.join()).toContain('message_id');
    expect(logged.join()).not.toContain('a secret');
    standIn.complaints.length = 0;
  });

  it('tells of its commands and takes away a webhook that was set before', async () => {
    standIn.webhook = { url: 'http://127.0.0.1:9', secret: null };
    const tray = anInTray();
    await listen({ receive: tray.receive });
    standIn.person('Ada').says('hello');
    await until(() => tray.messages.length === 1, 'the message');
    expect(standIn.world.commands.map((each) => each.command)).toEqual(['start', 'person', 'hours']);
  });

  it('leaves a group that is not the staff’s, and takes nothing said there', async () => {
    const tray = anInTray();
    await listen({ receive: tray.receive });
    const group = standIn.group({ forum: false, title: 'Strangers' });
    const eve = standIn.person('Eve');
    group.bringsInBot(eve);
    await until(() => !group.place.reachable, 'the bot to leave');
    group.throwsOutBot(eve);
    eve.says('hello');
    await until(() => tray.messages.length === 1, 'the private message');
    expect(standIn.callsOf('leaveChat')).toHaveLength(1);
  });

  it('tells when a hirer blocks the bot', async () => {
    const gone: string[] = [];
    await listen({ gone: async ({ address }) => void gone.push(address) });
    const ada = standIn.person('Ada');
    ada.blocks();
    await until(() => gone.length === 1, 'the news');
    expect(gone).toEqual([String(ada.user.id)]);
  });

  it('ends the wait of a pressed button', async () => {
    await listen({});
    const ada = standIn.person('Ada');
    const kept = ada.says('x');
    const query = ada.pressesData('anything', kept);
    await until(() => standIn.world.queries.get(query)?.answered === true, 'the answer');
  });
});
