import { describe, expect, it } from 'vitest';
import { messageOf } from '../../../adapters/telegram/message-of-update.ts';
import { Update } from '../../../adapters/telegram/update.ts';

const chat = { id: 42, type: 'private' };
const from = { id: 42, is_bot: false, first_name: 'Ada' };
const read = (update: object) => messageOf(Update.parse(update), 5_000);
const said = (content: object) => read({ update_id: 7, message: { message_id: 1, chat, from, date: 2, ...content } });

describe('a hirer’s update as a message', () => {
  it('takes a text as it is, keyed by the update', () => {
    expect(said({ text: 'Where is the <step> & co?' })).toEqual({
      channel: 'telegram',
      address: '42',
      key: '7',
      atMs: 2000,
      text: 'Where is the <step> & co?',
      choice: null,
      attachments: [],
      edit: false,
      from: 'Ada',
      startToken: null,
    });
  });

  it('takes the largest photo with its caption', () => {
    const photo = [
      { file_id: 's', width: 90, height: 60 },
      { file_id: 'l', width: 1280, height: 853 },
      { file_id: 'm', width: 320, height: 213 },
    ];
    expect(said({ photo, caption: 'this lamp' })).toMatchObject({
      text: 'this lamp',
      attachments: [{ kind: 'photo', file: 'tg:photo:l' }],
    });
  });

  it('takes voice, video, files, places and numbers', () => {
    expect(said({ voice: { file_id: 'v', duration: 7 } })?.attachments).toEqual([
      { kind: 'voice', file: 'tg:voice:v', seconds: 7 },
    ]);
    expect(said({ video_note: { file_id: 'n', duration: 3 } })?.attachments).toEqual([
      { kind: 'video', file: 'tg:video_note:n', seconds: 3 },
    ]);
    expect(said({ document: { file_id: 'd', file_name: 'a.pdf' } })?.attachments).toEqual([
      { kind: 'file', file: 'tg:document:d', name: 'a.pdf' },
    ]);
    expect(said({ contact: { first_name: 'A', last_name: 'B', phone_number: '1' } })?.attachments).toEqual([
      { kind: 'contact', name: 'A B', phone: '1' },
    ]);
    expect(
      said({ location: { latitude: 1, longitude: 2 }, venue: { title: 'Shop', address: 'High Street' } }),
    ).toMatchObject({
      text: 'Shop, High Street',
      attachments: [{ kind: 'location', latitude: 1, longitude: 2 }],
    });
  });

  it('counts an animation once, though it comes with a document of the same file', () => {
    expect(said({ animation: { file_id: 'a', duration: 1 }, document: { file_id: 'a' } })?.attachments).toEqual([
      { kind: 'video', file: 'tg:animation:a', seconds: 1 },
    ]);
  });

  it('reads a sticker and a die by their emoji, and keeps a sticker that has none', () => {
    expect(said({ sticker: { file_id: 's', emoji: '👍' } })).toMatchObject({ text: '👍', attachments: [] });
    expect(said({ dice: { emoji: '🎲' } })).toMatchObject({ text: '🎲' });
    expect(said({ sticker: { file_id: 's' } })).toMatchObject({
      text: '',
      attachments: [{ kind: 'file', file: 'tg:sticker:s' }],
    });
  });

  it('keeps a poll by the message to copy', () => {
    expect(said({ poll: {} })?.attachments).toEqual([{ kind: 'file', file: 'tg:copy:42:1' }]);
  });

  it('takes an edit as the whole new text at the time of the edit', () => {
    const edited = read({
      update_id: 8,
      edited_message: { message_id: 1, chat, from, date: 2, edit_date: 9, text: 'new' },
    });
    expect(edited).toMatchObject({ key: '8', text: 'new', edit: true, atMs: 9000 });
  });

  it('takes a press by the button’s data, with its label as words', () => {
    const query = {
      id: 'q',
      from,
      data: 'topic:x',
      message: {
        message_id: 1,
        chat,
        date: 2,
        reply_markup: { inline_keyboard: [[{ text: 'The X', callback_data: 'topic:x' }]] },
      },
    };
    expect(read({ update_id: 9, callback_query: query })).toMatchObject({
      choice: 'topic:x',
      text: 'The X',
      atMs: 5000,
    });
    const old = { id: 'q', from, data: 'topic:x', message: { message_id: 1, chat, date: 0 } };
    expect(read({ update_id: 9, callback_query: old })).toMatchObject({ choice: 'topic:x', text: '' });
  });

  it('reads the commands of the menu as words, and a start with its token', () => {
    expect(said({ text: '/start AbC-1_x' })).toMatchObject({ text: '', startToken: 'AbC-1_x' });
    expect(said({ text: '/start' })).toMatchObject({ text: 'hello', startToken: null });
    expect(said({ text: '/person@brackenfold_bot' })).toMatchObject({ text: 'I want to talk to a person' });
    expect(said({ text: '/nonsense at all' })).toMatchObject({ text: '/nonsense at all' });
    expect(said({ text: '/start with too many words' })).toMatchObject({
      text: '/start with too many words',
      startToken: null,
    });
  });

  it('is null for what nobody said', () => {
    expect(said({})).toBeNull();
    expect(
      read({ update_id: 1, message: { message_id: 1, chat: { id: -5, type: 'group' }, from, date: 2, text: 'x' } }),
    ).toBeNull();
    expect(read({ update_id: 1 })).toBeNull();
  });
});
