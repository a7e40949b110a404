import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvRecords } from '../../adapters/files/bookings-csv.ts';

/*
 * RFC 4180, 'Common Format and MIME Type for Comma-Separated Values (CSV) Files', section 2, October 2005,
 * https://www.rfc-editor.org/rfc/rfc4180#section-2. The numbers are those of its rules; the examples are its own.
 */
function fields(text: string): readonly (readonly string[])[] {
  const { records, bad } = csvRecords(text);
  expect(bad).toEqual([]);
  return records.map((record) => record.fields);
}

describe('RFC 4180, section 2', () => {
  test('1: each record is on a line of its own, ended by CRLF', () => {
    expect(fields('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  test('2: the last record may or may not have an ending line break', () => {
    expect(fields('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(fields('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'));
  });

  test('4: spaces are part of a field, and the last field is not followed by a comma', () => {
    expect(fields('aaa, bbb ,ccc')).toEqual([['aaa', ' bbb ', 'ccc']]);
    expect(fields('aaa,bbb,')).toEqual([['aaa', 'bbb', '']]);
  });

  test('5: a field may or may not be in double quotes', () => {
    expect(fields('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  test('6: line breaks, double quotes and commas may stand in quoted fields', () => {
    // A line break within a field is given as LF, whichever it was.
    expect(fields('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(fields('"a,aa",bbb')).toEqual([['a,aa', 'bbb']]);
  });

  test('7: a double quote in a quoted field is written twice', () => {
    expect(fields('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  test('whatever is written by these rules is read back, each record with the line it begins on', () => {
    const field = fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', ' ', 'é', '🚐', '='), maxLength: 6 });
    const table = fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { maxLength: 6 });
    fc.assert(
      fc.property(table, (rows) => {
        const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
        const text = rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
        const { records, bad } = csvRecords(text);
        expect(bad).toEqual([]);
        expect(records.map((record) => record.fields)).toEqual(rows);
        const begins = rows.map((_, i) => 1 + i + rows.slice(0, i).flat().join('').split('\n').length - 1);
        expect(records.map((record) => record.line)).toEqual(begins);
      }),
    );
  });
});
