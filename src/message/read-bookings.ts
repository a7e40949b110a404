import type { VanId } from '../basics/ids.ts';
import { addDays } from '../basics/time.ts';
import { bookingFields, EXPECTED, type SiteNames } from './booking-fields.ts';
import type { Booking } from './message.ts';

/** The columns of a booking file, all of them needed, in any order. */
export const BOOKING_COLUMNS = [
  'ref',
  'hirer',
  'people',
  'van',
  'site',
  'amps',
  'from',
  'to',
  'phone',
  'note',
] as const;

/** One record of a file as text; `line` is where it begins, counted from 1. */
export type BookingRecord = { readonly line: number; readonly fields: readonly string[] };

/** What is wrong in a booking file, and where. `field` is empty when it is the whole record. */
export type BadBooking = {
  readonly line: number;
  readonly field: string;
  readonly problem: string;
  readonly expected: string;
};

/** What a file is read against. `others`: the bookings there are already, which new ones may change but not overlap. */
export type BookingsKnown = {
  readonly vans: readonly VanId[];
  readonly sites: SiteNames;
  readonly others?: readonly Booking[];
};

type Read = { readonly line: number; readonly booking: Booking };

/**
 * Reads the records of a booking file, the first of which names the columns.
 *
 * @returns `bookings` that are good in themselves and do not overlap, in the file's order; `bad` has everything wrong,
 *          by line. Whether good ones are taken while others are bad is the caller's choice. Never throws.
 */
export function readBookings(
  records: readonly BookingRecord[],
  { vans, sites, others = [] }: BookingsKnown,
): { readonly bookings: readonly Booking[]; readonly bad: readonly BadBooking[] } {
  const [header, ...rows] = records;
  if (header === undefined) {
    const problem = 'the file is empty';
    return { bookings: [], bad: [{ line: 1, field: '', problem, expected: BOOKING_COLUMNS.join(',') }] };
  }
  const columns = header.fields.map((name) => name.trim().toLowerCase());
  const { unusable, strange } = badColumns(header.line, columns);
  const bad = [...unusable, ...strange];
  if (unusable.length > 0) return { bookings: [], bad };

  const readOne = recordReader(columns, vans, sites);
  const lineOfRef = new Map<string, number>();
  const good: Read[] = [];
  for (const row of rows) {
    if (row.fields.every((text) => text.trim() === '')) continue;
    const read = readOne(row);
    if (!('booking' in read)) {
      bad.push(...read);
      continue;
    }
    const { line, booking } = read;
    const before = lineOfRef.get(booking.ref);
    if (before === undefined) {
      lineOfRef.set(booking.ref, line);
      good.push(read);
    } else {
      bad.push({
        line,
        field: 'ref',
        problem: `${booking.ref} is on line ${before} already`,
        expected: 'each booking once',
      });
    }
  }
  const { kept, overlaps } = apart(good, others);
  return { bookings: kept.map((each) => each.booking), bad: [...bad, ...overlaps].sort((a, b) => a.line - b.line) };
}

/** Reads one record after another: the booking, or all that is wrong with it. */
function recordReader(
  columns: readonly string[],
  vans: readonly VanId[],
  sites: SiteNames,
): (record: BookingRecord) => Read | readonly BadBooking[] {
  const schema = bookingFields(vans, sites);
  const expected: Readonly<Record<string, string>> = {
    ...EXPECTED,
    van: vans.join(', '),
    site: `${Object.keys(sites).join(', ')}, or nothing while touring`,
  };
  return ({ line, fields }) => {
    if (fields.length !== columns.length) {
      const count = `${columns.length}, as in the first line; a field with a comma in it stands in "quotes"`;
      return [{ line, field: '', problem: `has ${fields.length} fields`, expected: count }];
    }
    const read = schema.safeParse(Object.fromEntries(columns.map((name, i) => [name, fields[i]])));
    if (!read.success) {
      return read.error.issues.map(({ path, message }) => {
        const field = String(path[0]);
        return { line, field, problem: message, expected: expected[field] ?? '' };
      });
    }
    const { data } = read;
    if (data.to <= data.from) {
      const problem = `${data.to} is not after ${data.from}`;
      return [{ line, field: 'to', problem, expected: 'the day of return, after the first day' }];
    }
    return { line, booking: { ...data, firstName: nameToGreet(data.hirer), pitch: null } };
  };
}

/** `unusable`: no record can be read with such columns. Columns without a name, as spreadsheets leave them, are let pass. */
function badColumns(
  line: number,
  columns: readonly string[],
): { readonly unusable: BadBooking[]; readonly strange: BadBooking[] } {
  const all: readonly string[] = BOOKING_COLUMNS;
  const expected = all.join(',');
  const slip = (field: string, problem: string): BadBooking => ({ line, field, problem, expected });
  const missing = all.filter((name) => !columns.includes(name));
  const twice = all.filter((name) => columns.indexOf(name) !== columns.lastIndexOf(name));
  return {
    unusable: [
      ...missing.map((name) => slip(name, 'the column is missing')),
      ...twice.map((name) => slip(name, 'the column is there twice')),
    ],
    strange: columns.filter((name) => name !== '' && !all.includes(name)).map((name) => slip(name, 'no such column')),
  };
}

/**
 * Takes out each booking that has its van while another one has it: one that stands above it in the file, or one there
 * was before that this file does not change. A van may be returned and collected on the same day.
 */
function apart(
  good: readonly Read[],
  others: readonly Booking[],
): { readonly kept: readonly Read[]; readonly overlaps: readonly BadBooking[] } {
  const overlaps: BadBooking[] = [];
  let kept = good;
  for (;;) {
    // A booking that is taken out stays as it was before, and may then be in the way of another: hence again.
    const changing = new Set(kept.map((each) => each.booking.ref));
    const standing = others.filter((booking) => !changing.has(booking.ref));
    const free: Read[] = [];
    for (const each of kept) {
      const inFile = free.find((other) => overlap(other.booking, each.booking));
      const other = inFile?.booking ?? standing.find((booking) => overlap(booking, each.booking));
      if (other === undefined) free.push(each);
      else {
        const where = inFile === undefined ? '' : ` on line ${inFile.line}`;
        const problem = `${other.ref}${where} has ${other.van} from ${other.from} to ${other.to ?? 'a day not known'}`;
        overlaps.push({ line: each.line, field: 'van', problem, expected: 'one hirer at a time' });
      }
    }
    if (free.length === kept.length) return { kept, overlaps };
    kept = free;
  }
}

function overlap(one: Booking, other: Booking): boolean {
  return one.van === other.van && one.from < lastDay(other) && other.from < lastDay(one);
}

function lastDay({ from, to }: Booking): string {
  return to ?? addDays(from, 1);
}

/** 'Pat' of 'Pat and Sol Amberley'; what begins otherwise is greeted whole, without its article: 'Okonkwo-Hale family'. */
function nameToGreet(hirer: string): string {
  const whole = hirer.replace(/^the\s+/i, '');
  const [first = whole] = whole.split(/[\s,&]+/);
  const isName =
    whole === hirer && !/\b(family|party|group)\b/i.test(hirer) && !/^(mr|mrs|ms|miss|mx|dr|prof|rev)\.?$/i.test(first);
  return isName && first.length > 1 && !first.endsWith('.') ? first : whole;
}
