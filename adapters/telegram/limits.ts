/**
 * What Telegram takes.
 *
 * Rates: Telegram's Bots FAQ, 'My bot is hitting limits, how do I avoid this?' (https://core.telegram.org/bots/faq): in a
 * single chat no more than one message a second, short bursts are allowed; in a group 20 a minute; about 30 a second in all.
 * Lengths: https://core.telegram.org/bots/api, sendMessage, sendPhoto, InlineKeyboardButton, createForumTopic,
 * answerCallbackQuery.
 */
export const TELEGRAM = {
  textUnits: 4096,
  captionUnits: 1024,
  choiceBytes: 64,
  topicNameUnits: 128,
  toastUnits: 200,
} as const;

export type Rates = {
  /** Least time between two messages to one chat, milliseconds. */
  readonly chatMs: number;
  /** Messages to one group in any 60 seconds. */
  readonly groupPerMinute: number;
  /** Of these, how many only urgent messages may use. */
  readonly groupKeptForUrgent: number;
  /** Messages to all chats in any second. */
  readonly overallPerSecond: number;
};

export const TELEGRAM_RATES: Rates = { chatMs: 1000, groupPerMinute: 20, groupKeptForUrgent: 3, overallPerSecond: 30 };
