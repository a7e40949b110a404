import type { Choice } from '../../src/index.ts';
import { TELEGRAM } from './limits.ts';

export type Keyboard = { readonly inline_keyboard: { text: string; callback_data: string }[][] };
export type LaidChoices = {
  readonly keyboard: Keyboard | null;
  /** Choices whose labels do not fit on a button, numbered, to stand in the text; empty when all fit. */
  readonly listed: string;
};

/** Tried on narrow phones: what one button shows in a line of its own, and what a row of buttons shows between them. */
const BUTTON_UNITS = 34;
const ROW_UNITS = 26;
const ROW_BUTTONS = 3;

/**
 * Choices as buttons below a message. Short labels share a row, longer ones stand in one column. When one label is too
 * long to be read on a button, all are listed by number in the text and the buttons carry the numbers, which can be typed too.
 */
export function layChoices(choices: readonly Choice[]): LaidChoices {
  if (choices.length === 0) return { keyboard: null, listed: '' };
  const numbered = choices.some((choice) => choice.label.length > BUTTON_UNITS || !fits(choice));
  const buttons = choices
    .map((choice, i) => ({
      text: numbered ? String(i + 1) : choice.label,
      callback_data: choice.id,
      fits: fits(choice),
    }))
    .filter((button) => button.fits)
    .map(({ text, callback_data }) => ({ text, callback_data }));
  return {
    keyboard: buttons.length === 0 ? null : { inline_keyboard: rowsOf(buttons) },
    listed: numbered ? choices.map((choice, i) => `${i + 1}. ${choice.label}`).join('\n') : '',
  };
}

/** A choice without a label, or whose id Telegram would not carry, can still be typed by its number. */
function fits(choice: Choice): boolean {
  const bytes = new TextEncoder().encode(choice.id).length;
  return bytes >= 1 && bytes <= TELEGRAM.choiceBytes && choice.label.trim() !== '';
}

function rowsOf<B extends { readonly text: string }>(buttons: readonly B[]): B[][] {
  const units = buttons.reduce((sum, button) => sum + button.text.length, 0);
  if (buttons.length <= ROW_BUTTONS && units <= ROW_UNITS) return [[...buttons]];
  return buttons.map((button) => [button]);
}
