import { describe, expect, it } from 'vitest';
import { codeIn, linkTokenIn } from '../../../src/basics/codes.ts';

describe('a code in a message', () => {
  it.each([
    ['K7QM-4T2X', 'K7QM4T2X'],
    ['my code is k7qm 4t2x thanks', 'K7QM4T2X'],
    ['K7QM4T2X', 'K7QM4T2X'],
    ['KOQM-4T2L', 'K0QM4T21'],
  ])('is read from %s', (text, code) => {
    expect(codeIn(text)).toBe(code);
  });

  it.each(['football', 'the heating is cold', 'call 999', 'we are on pitch 12', 'BR-2702', 'arrive 2027-07-15'])(
    'is not seen in %s',
    (text) => {
      expect(codeIn(text)).toBeNull();
    },
  );

  it('is told from the token of a pasted link', () => {
    expect(linkTokenIn('http://localhost:8080/chat/AbCdEfGhIjKlMnOpQrStUv')).toBe('AbCdEfGhIjKlMnOpQrStUv');
    expect(linkTokenIn('t.me/somebot?start=AbCdEfGhIjKlMnOpQrSt-_')).toBe('AbCdEfGhIjKlMnOpQrSt-_');
    expect(linkTokenIn('http://localhost:8080/chat/short')).toBeNull();
  });
});
