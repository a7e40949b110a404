import { describe, expect, it } from 'vitest';
import { foldText } from '../../src/safety/fold.ts';

/**
 * Lines of Unicode TR39's confusables.txt (version 15.1): what looks like a Latin letter, and the letter. A sample of each
 * alphabet that phones offer.
 */
const CONFUSABLE: readonly (readonly [string, string])[] = [
  ['\u0430', 'a'],
  ['\u0410', 'a'],
  ['\u0391', 'a'],
  ['\u0441', 'c'],
  ['\u0421', 'c'],
  ['\u0501', 'd'],
  ['\u0435', 'e'],
  ['\u0415', 'e'],
  ['\u0395', 'e'],
  ['\u04bb', 'h'],
  ['\u041d', 'h'],
  ['\u0397', 'h'],
  ['\u0456', 'i'],
  ['\u0458', 'j'],
  ['\u041a', 'k'],
  ['\u039a', 'k'],
  ['\u041c', 'm'],
  ['\u039c', 'm'],
  ['\u039d', 'n'],
  ['\u043e', 'o'],
  ['\u041e', 'o'],
  ['\u03bf', 'o'],
  ['\u0585', 'o'],
  ['\u0440', 'p'],
  ['\u0420', 'p'],
  ['\u03c1', 'p'],
  ['\u051b', 'q'],
  ['\u0455', 's'],
  ['\u0405', 's'],
  ['\u0422', 't'],
  ['\u03a4', 't'],
  ['\u057d', 'u'],
  ['\u03bd', 'v'],
  ['\u0475', 'v'],
  ['\u051d', 'w'],
  ['\u0445', 'x'],
  ['\u0425', 'x'],
  ['\u03a7', 'x'],
  ['\u0443', 'y'],
  ['\u04af', 'y'],
  ['\u0396', 'z'],
];

describe('letters that look alike (Unicode TR39)', () => {
  it.each(CONFUSABLE)('%s is read as %s', (letter, latin) => {
    expect(foldText(letter)).toBe(latin);
  });
});
