import { describe, expect, it } from 'vitest';
import { foldText } from '../../../src/safety/fold.ts';

describe('folding a text', () => {
  it('makes letters of other alphabets Latin where they look so', () => {
    expect(foldText('ѕmеll оf gаѕ')).toBe('smell of gas');
    expect(foldText('ΗΕLΡ')).toBe('help');
  });

  it('takes off what is not seen: zero-width signs, soft hyphens, direction marks', () => {
    expect(foldText('sm\u200bell\u00ad of\u2060 g\u200das\ufeff')).toBe('smell of gas');
  });

  it('joins compatibility forms and takes off accents', () => {
    expect(foldText('𝗳𝗶𝗿𝗲 ｆｉｒｅ Flämmchen Müll łódź Straße')).toBe('fire fire flammchen mull lodz strasse');
  });

  it('keeps picture signs and makes every apostrophe the plain one', () => {
    expect(foldText('it’s 🔥')).toBe("it's 🔥");
  });
});
