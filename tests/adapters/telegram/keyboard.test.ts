import { describe, expect, it } from 'vitest';
import { layChoices } from '../../../adapters/telegram/keyboard.ts';

const choices = (...labels: string[]) => labels.map((label, i) => ({ id: `c${i}`, label, tone: 'next' as const }));
const rows = (...labels: string[]) =>
  layChoices(choices(...labels)).keyboard?.inline_keyboard.map((row) => row.map((button) => button.text));

describe('choices as buttons', () => {
  it('puts short labels side by side', () => {
    expect(rows('That worked', 'Still stuck')).toEqual([['That worked', 'Still stuck']]);
    expect(rows('Yes', 'No', 'Cannot tell')).toEqual([['Yes', 'No', 'Cannot tell']]);
  });

  it('puts longer labels in one column', () => {
    expect(rows('The fridge is not cold', 'The fridge door will not shut')).toEqual([
      ['The fridge is not cold'],
      ['The fridge door will not shut'],
    ]);
  });

  it('numbers all of them and lists them in the text when one label would be cut off', () => {
    const laid = layChoices(choices('Short', 'A label that no phone of any width would ever show whole'));
    expect(laid.keyboard?.inline_keyboard.flat().map((button) => button.text)).toEqual(['1', '2']);
    expect(laid.listed).toBe('1. Short\n2. A label that no phone of any width would ever show whole');
  });

  it('lists a choice whose id is too long for Telegram, to be typed by its number', () => {
    const laid = layChoices([...choices('Yes'), { id: 'é'.repeat(33), label: 'No', tone: 'quiet' }]);
    expect(laid.listed).toBe('1. Yes\n2. No');
    expect(laid.keyboard?.inline_keyboard.flat().map((button) => button.text)).toEqual(['1']);
  });

  it('makes no keyboard without choices', () => {
    expect(layChoices([])).toEqual({ keyboard: null, listed: '' });
  });
});
