import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../adapters/telegram/commands.ts';
import { REACTIONS } from '../../adapters/telegram/desk-marks.ts';
import { TELEGRAM, TELEGRAM_RATES } from '../../adapters/telegram/limits.ts';
import { ALLOWED_UPDATES } from '../../adapters/telegram/update.ts';
import { SECRET_PATTERN } from '../../adapters/telegram/webhook.ts';
import { botApiDescription } from '../helpers/telegram-description.ts';

/** Source of the lengths: the published Bot API description (https://core.telegram.org/bots/api), beside the repository. */
const description = botApiDescription();
const said = (thing: 'methods' | 'types', name: string, field: string): string => {
  return description[thing][name]?.fields?.find((each) => each.name === field)?.description ?? '';
};

describe.skipIf(!description.published)('our limits against the published Bot API', () => {
  it('takes texts, captions, buttons, topic names and toasts as long as published', () => {
    expect(said('methods', 'sendMessage', 'text')).toContain(
      `1-${TELEGRAM.textUnits} characters after entities parsing`,
    );
    expect(said('methods', 'sendPhoto', 'caption')).toContain(
      `0-${TELEGRAM.captionUnits} characters after entities parsing`,
    );
    expect(said('types', 'InlineKeyboardButton', 'callback_data')).toContain(`1-${TELEGRAM.choiceBytes} bytes`);
    expect(said('methods', 'createForumTopic', 'name')).toContain(`1-${TELEGRAM.topicNameUnits} characters`);
    expect(said('methods', 'answerCallbackQuery', 'text')).toContain(`0-${TELEGRAM.toastUnits} characters`);
  });

  it('takes webhook secrets and commands of the published form', () => {
    expect(said('methods', 'setWebhook', 'secret_token')).toContain(
      '1-256 characters. Only characters A-Z, a-z, 0-9, _ and - are',
    );
    for (const [secret, fine] of [
      ['aZ_-9', true],
      ['a'.repeat(256), true],
      ['', false],
      ['a'.repeat(257), false],
      ['ä', false],
    ] as const)
      expect(SECRET_PATTERN.test(secret)).toBe(fine);
    expect(said('types', 'BotCommand', 'command')).toContain('1-32 characters');
    for (const { command, description: words } of COMMANDS) {
      expect(command).toMatch(/^[a-z0-9_]{1,32}$/);
      expect(words.length).toBeLessThanOrEqual(256);
    }
  });

  it('gives only reactions that bots may give', () => {
    for (const emoji of Object.values(REACTIONS))
      expect(said('types', 'ReactionTypeEmoji', 'emoji')).toContain(`"${emoji}"`);
  });

  it('asks for kinds of update that exist', () => {
    const fields = (description.types['Update']?.fields ?? []).map((field) => field.name);
    for (const kind of ALLOWED_UPDATES) expect(fields).toContain(kind);
  });

  it('confirms updates by the published meaning of the offset', () => {
    expect(said('methods', 'getUpdates', 'offset')).toContain(
      'greater by one than the highest among the identifiers of previously received updates',
    );
  });
});

describe('our rates', () => {
  /** Source: Telegram's Bots FAQ, 'My bot is hitting limits, how do I avoid this?' (https://core.telegram.org/bots/faq). */
  it('are those of the FAQ: one a second in a chat, 20 a minute in a group, about 30 a second in all', () => {
    expect(TELEGRAM_RATES).toMatchObject({ chatMs: 1000, groupPerMinute: 20, overallPerSecond: 30 });
  });
});
