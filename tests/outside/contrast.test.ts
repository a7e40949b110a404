import { describe, expect, it } from 'vitest';
import { BASE_CSS } from '../../adapters/pages/base-style.ts';
import { COLOUR_CSS, COLOURS, PAIRS, type Theme } from '../../adapters/pages/colours.ts';
import { BAR_INKS_CSS } from '../../adapters/pictures/bar.ts';
import { CHAT_CSS } from '../../adapters/web/chat-style.ts';
import { YARD_CSS } from '../../adapters/yard/yard-style.ts';

/*
 * Source: W3C, Web Content Accessibility Guidelines 2.2, 'relative luminance' and 'contrast ratio' (definitions), success
 * criteria 1.4.6 (7:1 for text) and 1.4.11 (3:1 for shapes). https://www.w3.org/TR/WCAG22/
 */

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

describe('WCAG 2.2 contrast', () => {
  it('is worked out as the definition says', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.478, 3);
  });

  for (const theme of ['light', 'dark'] as const satisfies readonly Theme[]) {
    for (const { front, back, as } of PAIRS) {
      const least = as === 'text' ? 7 : 3;
      it(`of ${front} on ${back}, ${theme}, is ${least}:1 or more`, () => {
        expect(contrast(COLOURS[theme][front], COLOURS[theme][back])).toBeGreaterThanOrEqual(least);
      });
    }
  }

  it('is checked for every colour there is', () => {
    const paired = new Set<string>(PAIRS.flatMap(({ front, back }) => [front, back]));
    expect(Object.keys(COLOURS.light).filter((name) => !paired.has(name))).toEqual([]);
    expect(Object.keys(COLOURS.dark)).toEqual(Object.keys(COLOURS.light));
  });

  it('cannot be got round: the style sheets name no colour but the tokens', () => {
    // The drawings' inks have a contrast check of their own: tests/src/check/drawings.test.ts.
    const own = BASE_CSS.replace(COLOUR_CSS, '').replace(BAR_INKS_CSS, '') + CHAT_CSS + YARD_CSS;
    expect(own.match(/#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/gi)).toBeNull();
  });
});
