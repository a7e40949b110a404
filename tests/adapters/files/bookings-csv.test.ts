import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBookingsCsv } from '../../../adapters/files/bookings-csv.ts';
import { memoryStore } from '../../../adapters/memory/memory-store.ts';

const KNOWN = { vans: ['dunlin', 'wren'], sites: { 'fernbeck-meadow': { name: 'Fernbeck Meadow' } } };
const HEADER = 'ref,hirer,people,van,site,amps,from,to,phone,note';
const FIRST = 'BR-1,Pat and Sol Amberley,"2 adults, 1 dog",wren,Fernbeck Meadow,16,2027-05-28,2027-06-04,,First time';
const SECOND =
  'BR-2,Mirren Calder,1 adult,dunlin,,,2027-07-13,2027-07-17,07700 900127,"Winter trip, insulin in the fridge"';

describe('a booking file', () => {
  test('is read whole', () => {
    const { bookings, bad } = readBookingsCsv([HEADER, FIRST, SECOND].join('\r\n'), KNOWN);
    expect(bad).toEqual([]);
    expect(bookings.map(({ ref, people, note }) => [ref, people, note])).toEqual([
      ['BR-1', { adults: 2, children: [], dogs: 1 }, 'First time'],
      ['BR-2', { adults: 1, children: [], dogs: 0 }, 'Winter trip, insulin in the fridge'],
    ]);
  });

  test('gives the line on which a bad record begins, after notes of several lines and empty lines', () => {
    const long = FIRST.replace('First time', '"one\r\ntwo\r\nthree"');
    const { bookings, bad } = readBookingsCsv(
      [HEADER, '', long, '', SECOND.replace('dunlin', 'heron')].join('\r\n'),
      KNOWN,
    );
    expect(bookings[0]?.note).toBe('one\ntwo\nthree');
    expect(bad).toMatchObject([{ line: 7, field: 'van' }]);
  });

  test('may have any line ends, even mixed, and a byte order mark', () => {
    const plain = readBookingsCsv([HEADER, FIRST, SECOND].join('\n'), KNOWN);
    for (const text of [
      [HEADER, FIRST, SECOND].join('\r'),
      `${HEADER}\r\n${FIRST}\n${SECOND}\n\n`,
      `\ufeff${HEADER}\n${FIRST}\n${SECOND}`,
      `\ufeff"ref"${HEADER.slice(3)}\n${FIRST}\n${SECOND}`,
    ]) {
      expect(readBookingsCsv(text, KNOWN)).toEqual(plain);
      expect(readBookingsCsv(new TextEncoder().encode(text), KNOWN)).toEqual(plain);
    }
  });

  test('is told to be saved otherwise when it is not UTF-8', () => {
    // 'é' as Windows-1252 has it.
    const bytes = new Uint8Array([...new TextEncoder().encode(`${HEADER}\n`), 0xe9]);
    expect(readBookingsCsv(bytes, KNOWN)).toMatchObject({
      bookings: [],
      bad: [{ line: 1, problem: 'the file is not UTF-8 text' }],
    });
  });

  test('is told where its quotes do not match', () => {
    const { bookings, bad } = readBookingsCsv([HEADER, FIRST, 'BR-2,"Mirren Calder,1 adult', SECOND].join('\n'), KNOWN);
    expect(bookings.map((booking) => booking.ref)).toEqual(['BR-1']);
    expect(bad).toMatchObject([{ line: 3, field: '', problem: expect.stringContaining('quotes') }]);
    expect(readBookingsCsv('"', KNOWN)).toMatchObject({ bookings: [], bad: [{ line: 1 }] });
  });

  test('changes and never doubles when it is taken a second time', async () => {
    const store = memoryStore();
    const take = async (text: string) => {
      const { bookings } = readBookingsCsv(text, { ...KNOWN, others: await store.bookings() });
      return store.putBookings(bookings);
    };
    expect(await take([HEADER, FIRST, SECOND].join('\n'))).toEqual({ added: 2, changed: 0, same: 0 });
    expect(await take([HEADER, SECOND, FIRST].join('\r\n'))).toEqual({ added: 0, changed: 0, same: 2 });
    expect(await take([HEADER, FIRST.replace(',16,', ',10,')].join('\n'))).toEqual({ added: 0, changed: 1, same: 0 });
    expect(await store.bookings()).toHaveLength(2);
  });

  test('never throws, whatever it holds', () => {
    const piece = fc.constantFrom(HEADER, FIRST, SECOND, '"', '""', ',', '\r\n', '\n', '\r', '\ufeff', ' ', 'x');
    const text = fc.oneof(
      fc.array(piece, { maxLength: 20 }).map((pieces) => pieces.join('')),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(text, (file) => {
        const { bookings, bad } = readBookingsCsv(file, KNOWN);
        const lines = file.split(/\r\n?|\n/).length;
        for (const each of bad) {
          expect(each.line).toBeGreaterThanOrEqual(1);
          expect(each.line).toBeLessThanOrEqual(lines);
        }
        expect(bookings.length).toBeLessThanOrEqual(lines);
      }),
    );
    fc.assert(fc.property(fc.uint8Array(), (bytes) => Array.isArray(readBookingsCsv(bytes, KNOWN).bad)));
  });
});
