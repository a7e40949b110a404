import { pino } from 'pino';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { newToken } from '../../../adapters/files/tokens.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';
import { createShell, type Shell } from '../../../adapters/shell.ts';
import { createTelegram, type TelegramChannel } from '../../../adapters/telegram/telegram.ts';
import type { Store } from '../../../src/index.ts';
import { until } from '../../contracts/channel.ts';
import { realServed } from '../../helpers/real-graph.ts';
import type { PersonOnTelegram } from '../../helpers/telegram-people.ts';
import { optionsFor } from '../../helpers/telegram-rig.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';
import { aBooking } from '../../helpers/telegram-yard.ts';

const served = realServed();

/** The project's own graph, shell and store between a hirer and staff on Telegram. */
describe('from a hirer to the staff group and back', () => {
  let standIn: TelegramStandIn;
  let channel: TelegramChannel;
  let shell: Shell;
  let group: ReturnType<TelegramStandIn['group']>;
  let ada: PersonOnTelegram;
  let link: string;
  let store: Store;

  beforeEach(async () => {
    store = memoryStore();
    standIn = await new TelegramStandIn().start();
    group = standIn.group({ forum: true });
    ada = standIn.person('Ada');
    const started: { shell: Shell | null } = { shell: null };
    const it = () => started.shell as Shell;
    channel = createTelegram(
      optionsFor(standIn, {
        store,
        receive: (message) => it().receive(message),
        desk: {
          chat: group.id,
          actions: {
            take: (...given) => it().take(...given),
            giveBack: (...given) => it().giveBack(...given),
            say: (...given) => it().say(...given),
            putRight: (...given) => it().putRight(...given),
            note: (...given) => it().note(...given),
          },
        },
      }),
    );
    shell = createShell({
      store,
      served: () => served,
      clock: { nowMs: () => Date.now() },
      channels: [channel],
      log: pino({ level: 'silent' }),
      onChange: () => channel.desk?.wake(),
    });
    started.shell = shell;
    await store.putBookings([aBooking()]);
    const { token, hash } = newToken();
    link = token;
    await store.putToken({ hash, use: 'chat', subject: 'BR-2702', data: {}, expiresMs: Date.now() + 1e9 });
    shell.start();
    await channel.start();
  });
  afterEach(async () => {
    await channel.stop();
    await shell.stop();
    await standIn.close();
    expect(standIn.complaints).toEqual([]);
  });

  const reads = (text: string) =>
    until(() => ada.screen().some((seen) => seen.text.includes(text)), `the hirer to read '${text}'`);
  const grows = async (act: () => void) => {
    const before = ada.screen().length;
    act();
    await until(() => ada.screen().length > before, 'an answer');
    return ada
      .screen()
      .slice(before)
      .map((seen) => seen.text)
      .join('\n');
  };
  const told = (text: string) =>
    until(() => group.screen().some((seen) => seen.text.includes(text)), `the group to be told '${text}'`);

  it('greets by the link and fetches a person, who answers and gives the thread back', async () => {
    expect(await grows(() => ada.says(`/start ${link}`))).toContain('Dunlin');
    await grows(() => ada.says('/person'));
    await told('Asked for a person.');
    expect(group.topics()).toEqual(['Dunlin, Ada']);
    const topic = group.topic('Dunlin, Ada')?.id ?? null;
    const meg = standIn.person('Margaret');
    meg.presses('I have it', group.place);
    await told('Margaret has it.');
    meg.saysIn(group.place, 'Hello Ada, what do you see?', { topic });
    await reads('Hello Ada, what do you see?');
    ada.says('a red lamp');
    await told('Ada\na red lamp');
    meg.presses('Back to the bot', group.place);
    await reads('back to the bot');
    await until(() => group.topic('Dunlin, Ada')?.closed === true, 'the forum topic to be closed');
  });

  it('shows a notice at once to somebody without a booking, and sounds the alarm in the group', async () => {
    const text = await grows(() => ada.says('I smell gas in the van'));
    expect(text).toMatch(/gas/i);
    await until(() => group.screen(null)[0]?.text.includes('⛔ DANGER') === true, 'the alarm in the common room');
  });

  it('passes what the bot cannot hear, with the voice message', async () => {
    await grows(() => ada.says(`/start ${link}`));
    expect(await grows(() => ada.sends('voice'))).toMatch(/999|112/);
    await until(() => group.screen().some((seen) => seen.media === 'voice'), 'the voice message in the group');
  });
});
