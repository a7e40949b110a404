/*
 * The code on the wallet binds a thread to a booking where no link is at hand: eight letters and digits that are not
 * mistaken for each other, written 4-4. 40 bits; guessing is held down to five wrong codes an hour.
 */
export const CODE_ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

const CODE = /(?<![A-Z0-9])([0-9A-Z]{4})[- ]?([0-9A-Z]{4})(?![A-Z0-9])/g;

/**
 * The code in a text, in capitals without its dash; null when there is none. O, I and L are read as the digits they
 * are taken for. Every code has two digits at least, so that a plain word of eight letters ('football') is none.
 */
export function codeIn(text: string): string | null {
  for (const [, first = '', second = ''] of text.toUpperCase().matchAll(CODE)) {
    const written = first + second;
    const code = written.replace(/O/g, '0').replace(/[IL]/g, '1');
    if (/\d.*\d/.test(written) && !/U/.test(code)) return code;
  }
  return null;
}

/** 'K7QM4T2X' as 'K7QM-4T2X'. */
export function codeText(code: string): string {
  return `${code.slice(0, 4)}-${code.slice(4)}`;
}

const LINK_TOKEN = /(?:\/chat\/|[?&]start=)([A-Za-z0-9_-]{22})(?![A-Za-z0-9_-])/;

/** The token of a chat link pasted into a text. */
export function linkTokenIn(text: string): string | null {
  return LINK_TOKEN.exec(text)?.[1] ?? null;
}
