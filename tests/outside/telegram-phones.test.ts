import { describe, expect, it } from 'vitest';
import { phonePages } from '../helpers/telegram-phones.tsx';
import { TelegramStandIn } from '../helpers/telegram-stand-in.ts';
import { BOT } from '../helpers/telegram-world.ts';

/** The page on which a stranger tries the staff group: what is typed and pressed there must be what the app would send. */
function phones(forum: boolean) {
  const standIn = new TelegramStandIn();
  const ngozi = standIn.person('Ngozi');
  const nessa = standIn.person('nessie_o');
  const group = standIn.group({ forum });
  const app = phonePages({
    world: standIn.world,
    group,
    hirers: [{ label: "Ngozi's phone", person: ngozi }],
    staff: [{ label: "Nessa's phone", person: nessa }],
    token: standIn.token,
  });
  const post = (path: string, fields: Readonly<Record<string, string>>) =>
    app.request(path, { method: 'POST', body: new URLSearchParams(fields) });
  return {
    world: standIn.world,
    ngozi,
    nessa,
    group,
    look: async (query = '') => (await app.request(`/${query}`)).text(),
    say: (user: number, room: string, fields: Readonly<Record<string, string>>) =>
      post('/say', { user: String(user), room, side: 'staff', back: 'http://here/?staff=0', ...fields }),
    press: (user: number, room: string, message: number, data: string) =>
      post('/press', { user: String(user), room, message: String(message), data, back: 'http://here/' }),
  };
}

describe('the telephones of the stand-in', () => {
  it('say what is typed where it is typed, answer a message and change one', async () => {
    const { world, ngozi, nessa, group, say } = phones(false);
    await say(ngozi.user.id, 'bot', { text: 'hello' });
    await say(nessa.user.id, 'group', { text: 'Nessa here', answering: '7' });
    const said = group.place.messages[0];
    await say(nessa.user.id, 'group', { text: 'Nessa is here', changing: String(said?.message_id) });
    expect(ngozi.place.messages.map(({ content }) => content.text)).toEqual(['hello']);
    expect(said).toMatchObject({ replyTo: 7, edited: true, content: { text: 'Nessa is here' } });
    expect(world.pending.map((update) => Object.keys(update)[1])).toEqual(['message', 'message', 'edited_message']);
  });

  it('open a t.me link in the chat with the bot, wherever it is pasted', async () => {
    const { nessa, group, say } = phones(true);
    const answer = await say(nessa.user.id, 'group', { text: 'https://t.me/some_bot?start=abc-DEF_1' });
    expect(nessa.place.messages.map(({ content }) => content.text)).toEqual(['/start abc-DEF_1']);
    expect(group.place.messages).toEqual([]);
    expect(answer.headers.get('location')).toBe('/?staff=0&room=bot');
  });

  it('show what the bot says with its buttons, as text, and press them', async () => {
    const { world, group, nessa, look, press } = phones(true);
    const button = { text: 'I have it', callback_data: 'have:t' };
    const brief = world.add(group.place, BOT, {
      text: 'gas <b>& fire</b>',
      reply_markup: { inline_keyboard: [[button]] },
    });
    expect(await look('?room=group')).toMatch(/gas &lt;b&gt;&amp; fire&lt;\/b&gt;.*>I have it<\/button>/s);
    await press(nessa.user.id, 'group', brief.message_id, 'have:t');
    expect(world.pending[0]).toMatchObject({ callback_query: { from: nessa.user, data: 'have:t' } });
  });
});
