import Papa from 'papaparse';
import {
  type BadBooking,
  type Booking,
  type BookingRecord,
  type BookingsKnown,
  readBookings,
} from '../../src/index.ts';

/**
 * Reads a booking file as RFC 4180 describes it; line ends may be CRLF, LF or CR, and a byte order mark is let pass.
 *
 * @param file Its bytes (UTF-8) or its text.
 * @returns    As {@link readBookings}. Never throws.
 */
export function readBookingsCsv(
  file: Uint8Array | string,
  known: BookingsKnown,
): { readonly bookings: readonly Booking[]; readonly bad: readonly BadBooking[] } {
  const text = typeof file === 'string' ? file : decoded(file);
  if (text === null) {
    const expected = 'a file saved as UTF-8 (in a spreadsheet: CSV UTF-8)';
    return { bookings: [], bad: [{ line: 1, field: '', problem: 'the file is not UTF-8 text', expected }] };
  }
  const { records, bad } = csvRecords(text);
  if (records.length === 0 && bad.length > 0) return { bookings: [], bad };
  const read = readBookings(records, known);
  return { bookings: read.bookings, bad: [...bad, ...read.bad].sort((a, b) => a.line - b.line) };
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** The records that are well formed, without empty lines. A quote that never ends takes the rest of the file with it. */
export function csvRecords(text: string): {
  readonly records: readonly BookingRecord[];
  readonly bad: readonly BadBooking[];
} {
  // One kind of line end, so that lines can be counted: outside quotes each ends a record, inside it is in a field.
  const even = text.replace(/\r\n?/g, '\n');
  const { data, errors } = Papa.parse<string[]>(even, { delimiter: ',', newline: '\n' });
  const broken = new Set(errors.map((error) => error.row ?? 0));
  const records: BookingRecord[] = [];
  const bad: BadBooking[] = [];
  let line = 1;
  for (const [row, fields] of data.entries()) {
    if (broken.has(row)) {
      const problem = 'the quotes do not match; lines below may be lost with it';
      bad.push({ line, field: '', problem, expected: '"quotes" around the whole field, and "" for a quote in it' });
    } else if (fields.length > 1 || fields[0] !== '') records.push({ line, fields });
    line += 1 + fields.join('').split('\n').length - 1;
  }
  return { records, bad };
}
