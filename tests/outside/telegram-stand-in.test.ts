import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { botApiDescription, faultsInCall, faultsInObject } from '../helpers/telegram-description.ts';
import { parseHtml } from '../helpers/telegram-html.ts';
import { MEDIA } from '../helpers/telegram-people.ts';
import { TelegramStandIn } from '../helpers/telegram-stand-in.ts';

/** The stand-in itself: a check that cannot fail proves nothing about the calls that pass it. */
const description = botApiDescription();

describe.skipIf(!description.published)('the check against the published Bot API', () => {
  const faults = (method: string, payload: Record<string, unknown>) => faultsInCall(description, method, payload);

  it('passes a call as published', () => {
    expect(
      faults('sendMessage', {
        chat_id: 1,
        text: 'x',
        reply_markup: { inline_keyboard: [[{ text: 'a', callback_data: 'b' }]] },
      }),
    ).toEqual([]);
  });

  it('finds an unknown method, an unknown field, a missing field and a field of another type', () => {
    expect(faults('sendMesage', {})).toEqual(['no such method: sendMesage']);
    expect(faults('sendMessage', { chat_id: 1, text: 'x', parsemode: 'HTML' })).toEqual([
      "sendMessage: no field 'parsemode'",
    ]);
    expect(faults('sendMessage', { chat_id: 1 })).toEqual(["sendMessage: 'text' is missing"]);
    expect(faults('sendMessage', { chat_id: 1.5, text: 'x' })).toHaveLength(1);
    expect(faults('sendMessage', { chat_id: 1, text: 7 })).toEqual(['sendMessage.text: expected String, came 7']);
    expect(faults('sendPhoto', { chat_id: 1, photo: { url: 'x' } })).toHaveLength(1);
  });

  it('looks into objects and lists', () => {
    expect(
      faults('sendMessage', { chat_id: 1, text: 'x', reply_markup: { inline_keyboard: [[{ txt: 'a' }]] } }).length,
    ).toBeGreaterThan(0);
    expect(faults('setMyCommands', { commands: [{ command: 'a' }] })).toEqual([
      "setMyCommands.commands[0]: 'description' is missing",
    ]);
    expect(
      faults('setMessageReaction', { chat_id: 1, message_id: 2, reaction: [{ type: 'emoji' }] }).length,
    ).toBeGreaterThan(0);
  });

  it('checks what the stand-in hands out as well', () => {
    expect(faultsInObject(description, 'Update', { update_id: 1, message: { message_id: 1 } })).not.toEqual([]);
  });

  it('finds nothing in any update that the stand-in makes', async () => {
    const standIn = await new TelegramStandIn().start();
    const ada = standIn.person('Ada');
    const group = standIn.group({ forum: true });
    for (const media of MEDIA) ada.sends(media, { caption: 'x' });
    const first = ada.says('/start x');
    ada.edits(first, 'y');
    ada.pressesData('z', first);
    ada.blocks();
    ada.saysIn(group.place, 'in a group', { replyTo: null });
    group.bringsInBot(ada);
    group.throwsOutBot(ada);
    for (const update of standIn.world.pending) expect(faultsInObject(description, 'Update', update)).toEqual([]);
    await standIn.close();
  });
});

describe('the stand-in Bot API', () => {
  let standIn: TelegramStandIn;
  beforeEach(async () => {
    standIn = await new TelegramStandIn().start();
  });
  afterEach(() => standIn.close());

  const call = async (method: string, payload: Record<string, unknown> = {}) => {
    const response = await fetch(`${standIn.root}/bot${standIn.token}/${method}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(payload),
    });
    return (await response.json()) as { ok: boolean; error_code?: number; description?: string; result?: unknown };
  };

  it('refuses what the real one refuses', async () => {
    const ada = standIn.person('Ada');
    const to = { chat_id: ada.user.id };
    const button = (data: string) => ({ inline_keyboard: [[{ text: 'a', callback_data: data }]] });
    for (const [method, payload, code, words] of [
      ['sendMessage', { ...to, text: 'x'.repeat(4097) }, 400, 'too long'],
      ['sendMessage', { ...to, text: ' ' }, 400, 'empty'],
      ['sendMessage', { ...to, text: '<b>x', parse_mode: 'HTML' }, 400, "can't parse entities"],
      ['sendMessage', { ...to, text: 'x', reply_markup: button('é'.repeat(33)) }, 400, 'BUTTON_DATA_INVALID'],
      ['sendMessage', { ...to, text: 'x', message_thread_id: 5 }, 400, 'thread not found'],
      ['sendMessage', { chat_id: 99, text: 'x' }, 400, 'chat not found'],
      ['sendPhoto', { ...to, photo: 'nothing' }, 400, 'wrong file identifier'],
      ['getFile', { file_id: 'nothing' }, 400, 'file_id'],
      ['answerCallbackQuery', { callback_query_id: 'nothing' }, 400, 'query'],
      ['createForumTopic', { ...to, name: 'x' }, 400, 'not a forum'],
    ] as const) {
      const answer = await call(method, payload);
      expect(answer, method).toMatchObject({ ok: false, error_code: code });
      expect(answer.description).toContain(words);
    }
    ada.blocks();
    expect(await call('sendMessage', { ...to, text: 'x' })).toMatchObject({ error_code: 403 });
  });

  it('gives updates until an offset confirms them', async () => {
    const ada = standIn.person('Ada');
    ada.says('one');
    ada.says('two');
    const ids = async (payload: Record<string, unknown>) =>
      ((await call('getUpdates', payload)).result as { update_id: number }[]).map((update) => update.update_id);
    const [first, second] = await ids({});
    expect(await ids({})).toEqual([first, second]);
    expect(await ids({ offset: second as number })).toEqual([second]);
    expect(await ids({ offset: (second as number) + 1 })).toEqual([]);
  });

  it('lets one poller in at a time', async () => {
    const waiting = call('getUpdates', { timeout: 1 });
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await call('getUpdates')).toMatchObject({ error_code: 409 });
    await waiting;
  });

  it('reads HTML as published: its tags, four named entities, numeric ones', () => {
    expect(parseHtml('a &lt;b&gt; &amp;amp; <b>c &#128512;</b>&copy;')).toEqual({
      text: 'a <b> &amp; c 😀&copy;',
      entities: [{ type: 'bold', offset: 12, length: 4 }],
    });
    for (const wrong of ['<b>x', 'x</b>', '<b><i>x</b></i>', '<img>', 'a < b'])
      expect(() => parseHtml(wrong)).toThrow("can't parse");
  });
});
