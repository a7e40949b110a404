import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/basics/time.ts';
import type { Booking } from '../../../src/message/message.ts';
import {
  type BadBooking,
  BOOKING_COLUMNS,
  type BookingsKnown,
  readBookings,
} from '../../../src/message/read-bookings.ts';

const KNOWN: BookingsKnown = {
  vans: ['dunlin', 'wren', 'curlew'],
  sites: { 'fernbeck-meadow': { name: 'Fernbeck Meadow' }, 'gullstone-sands': { name: 'Gullstone Sands' } },
};

const GOOD = {
  ref: 'BR-2702',
  hirer: 'The Okonkwo-Hale family',
  people: '2 adults, 2 children (9, 12), 1 dog',
  van: 'dunlin',
  site: 'gullstone-sands',
  amps: '10',
  from: '2027-07-24',
  to: '2027-07-31',
  phone: '07700 900214',
  note: 'Bring a hair dryer',
};
type Fields = Partial<Record<keyof typeof GOOD, string>>;

/** A file of the given records, each differing from the good one; records stand on lines 2, 3 and so on. */
function read(
  changes: readonly Fields[],
  known: Partial<BookingsKnown> = {},
  columns: readonly string[] = BOOKING_COLUMNS,
) {
  const rows = changes.map((change) =>
    columns.map((name) => ({ ...GOOD, ...change })[name as keyof typeof GOOD] ?? ''),
  );
  const records = [columns, ...rows].map((fields, i) => ({ line: i + 1, fields }));
  return readBookings(records, { ...KNOWN, ...known });
}

function one(change: Fields): Booking {
  const { bookings, bad } = read([change]);
  expect(bad).toEqual([]);
  return bookings[0] as Booking;
}

/** The fields that are bad, as `line field`. */
function places(bad: readonly BadBooking[]): string[] {
  return bad.map(({ line, field }) => `${line} ${field}`);
}

describe('a good record', () => {
  test('becomes a booking', () => {
    expect(one({})).toEqual({
      ref: 'BR-2702',
      hirer: 'The Okonkwo-Hale family',
      firstName: 'Okonkwo-Hale family',
      people: { adults: 2, children: [9, 12], dogs: 1 },
      van: 'dunlin',
      site: 'gullstone-sands',
      pitch: null,
      amps: 10,
      from: '2027-07-24',
      to: '2027-07-31',
      phone: '07700 900214',
      note: 'Bring a hair dryer',
    });
  });

  test('may have its columns in any order, in capitals and with empty columns at the end', () => {
    const columns = [...BOOKING_COLUMNS].reverse();
    const straight = read([{}]);
    const records = [columns.map((name) => ` ${name.toUpperCase()} `), columns.map((name) => ` ${GOOD[name]} `)];
    const turned = readBookings(
      records.map((fields, i) => ({ line: i + 1, fields: [...fields, '', ''] })),
      KNOWN,
    );
    expect(turned).toEqual(straight);
  });

  test.each([
    ['2 adults', { adults: 2, children: [], dogs: 0 }],
    ['1 adult', { adults: 1, children: [], dogs: 0 }],
    ['2 adults, 4 children (5, 7, 10, 13)', { adults: 2, children: [5, 7, 10, 13], dogs: 0 }],
    ['1 dog, 1 child (0) and 1 adult', { adults: 1, children: [0], dogs: 1 }],
    ['2 Adults, 2 children (8,10), 2 dogs', { adults: 2, children: [8, 10], dogs: 2 }],
  ])('reads the party %s', (people, expected) => {
    expect(one({ people }).people).toEqual(expected);
  });

  test.each([
    ['', null],
    ['0', 0],
    ['16', 16],
    ['10 A', 10],
    ['6a', 6],
    ['16 amps', 16],
  ])('reads the amps "%s" as %s', (amps, expected) => {
    expect(one({ amps }).amps).toBe(expected);
  });

  test.each([
    ['', null],
    ['touring', null],
    ['Fernbeck Meadow', 'fernbeck-meadow'],
    ['FERNBECK-MEADOW', 'fernbeck-meadow'],
  ])('reads the site "%s" as %s', (site, expected) => {
    expect(one({ site }).site).toBe(expected);
  });

  test('has no phone where none is given, and its ref in capitals', () => {
    expect(one({ phone: ' ', ref: 'br-2702', van: 'Dunlin' })).toMatchObject({
      phone: null,
      ref: 'BR-2702',
      van: 'dunlin',
    });
  });

  test.each([
    ['Pat and Sol Amberley', 'Pat'],
    ['Tomasz Wierzba, Ana Ruiz', 'Tomasz'],
    ['The Bewlay family', 'Bewlay family'],
    ['Bewlay party', 'Bewlay party'],
    ['Mrs Farrant', 'Mrs Farrant'],
    ['J. Farrant', 'J. Farrant'],
    ['Mirren', 'Mirren'],
  ])('greets %s as %s', (hirer, firstName) => {
    expect(one({ hirer }).firstName).toBe(firstName);
  });
});

describe('a bad record', () => {
  test.each<[keyof typeof GOOD, string, string]>([
    ['ref', '', 'is empty'],
    ['ref', 'BR 2702', "'BR 2702' is not a reference"],
    ['hirer', '  ', 'is empty'],
    ['people', '', 'is empty'],
    ['people', 'a family', "'a family' is not a party of adults, children and dogs"],
    ['people', '2 children (9, 12)', "'2 children (9, 12)' has no adult"],
    ['people', '2 adults, 2 children', "'2 adults, 2 children' has 2 children and 0 ages"],
    ['people', '2 adults, 2 children (9)', "'2 adults, 2 children (9)' has 2 children and 1 ages"],
    ['people', '2 adults, 1 child (19)', "'(19)' are not children's ages"],
    ['people', '2 adults (40, 41)', "'(40, 41)' are not children's ages"],
    ['people', '2 adults, 1 adult', "'2 adults, 1 adult' counts each adult twice"],
    ['people', '2.5 adults', "'2.5 adults' is not a party of adults, children and dogs"],
    ['people', '200 adults', "'200 adults' is more than any van holds"],
    ['van', '', 'is empty'],
    ['van', 'heron', "there is no van 'heron'"],
    ['van', 'constructor', "there is no van 'constructor'"],
    ['site', 'Nowhere', "there is no site 'Nowhere'"],
    ['site', 'constructor', "there is no site 'constructor'"],
    ['amps', '-1', "'-1' is not a number of amps"],
    ['amps', '64', "'64' is not a number of amps"],
    ['amps', '10.5', "'10.5' is not a number of amps"],
    ['from', '24/07/2027', "'24/07/2027' is not written year-month-day"],
    ['from', '2027-02-30', 'there is no day 2027-02-30'],
    ['from', '2027-13-01', 'there is no day 2027-13-01'],
    ['to', '', 'is empty'],
    ['to', '2027-07-24', '2027-07-24 is not after 2027-07-24'],
    ['to', '2027-07-23', '2027-07-23 is not after 2027-07-24'],
    ['phone', 'ask the office', "'ask the office' is not a phone number"],
    ['phone', '123', "'123' is not a phone number"],
  ])('%s "%s" %s', (field, value, problem) => {
    const { bookings, bad } = read([{ [field]: value }]);
    expect(bookings).toEqual([]);
    expect(bad).toMatchObject([{ line: 2, field, problem }]);
    expect(bad[0]?.expected).not.toBe('');
  });

  test('is told with all its bad fields, and the good ones beside it are read', () => {
    const { bookings, bad } = read([
      { van: 'heron', amps: 'lots', from: 'soon' },
      { ref: 'BR-2', van: 'wren' },
      { ref: '', van: '' },
    ]);
    expect(places(bad)).toEqual(['2 van', '2 amps', '2 from', '4 ref', '4 van']);
    expect(bookings.map((booking) => booking.ref)).toEqual(['BR-2']);
  });

  test('has another number of fields than the first line', () => {
    const records = [[...BOOKING_COLUMNS], ['BR-2702', 'Pat', '2 adults', ' 1 dog']].map((fields, i) => ({
      line: i + 1,
      fields,
    }));
    expect(readBookings(records, KNOWN).bad).toMatchObject([{ line: 2, field: '', problem: 'has 4 fields' }]);
  });

  test('has a ref that stands above it already', () => {
    const { bookings, bad } = read([{}, { ref: 'br-2702', van: 'wren' }]);
    expect(bookings).toHaveLength(1);
    expect(bad).toMatchObject([{ line: 3, field: 'ref', problem: 'BR-2702 is on line 2 already' }]);
  });
});

describe('the columns', () => {
  test('are told when missing, and then nothing is read', () => {
    const { bookings, bad } = read([{}], {}, ['ref', 'hirer', 'people', 'van', 'site', 'amps', 'from', 'to']);
    expect(bookings).toEqual([]);
    expect(places(bad)).toEqual(['1 phone', '1 note']);
  });

  test('are told when there twice', () => {
    expect(read([{}], {}, [...BOOKING_COLUMNS, 'Ref'.toLowerCase()]).bad).toMatchObject([
      { field: 'ref', problem: 'the column is there twice' },
    ]);
  });

  test('are told when not known, and the records are read all the same', () => {
    const { bookings, bad } = read([{}], {}, [...BOOKING_COLUMNS, 'colour']);
    expect(bad).toMatchObject([{ line: 1, field: 'colour', problem: 'no such column' }]);
    expect(bookings).toHaveLength(1);
  });

  test('are told when the file is empty', () => {
    expect(readBookings([], KNOWN).bad).toMatchObject([{ line: 1, problem: 'the file is empty' }]);
    expect(read([])).toEqual({ bookings: [], bad: [] });
  });
});

describe('bookings of one van', () => {
  const other = one({ ref: 'BR-1', from: '2027-08-01', to: '2027-08-08' });

  test('may meet on the day of return and not overlap', () => {
    const { bookings, bad } = read([
      {},
      { ref: 'BR-3', from: '2027-07-31', to: '2027-08-02' },
      { ref: 'BR-4', from: '2027-07-30', to: '2027-08-01' },
    ]);
    expect(bookings.map((booking) => booking.ref)).toEqual(['BR-2702', 'BR-3']);
    expect(bad).toMatchObject([
      { line: 4, field: 'van', problem: 'BR-2702 on line 2 has dunlin from 2027-07-24 to 2027-07-31' },
    ]);
  });

  test('do not overlap those there were before', () => {
    expect(read([{ to: '2027-08-02' }], { others: [other] }).bad).toMatchObject([
      { line: 2, field: 'van', problem: 'BR-1 has dunlin from 2027-08-01 to 2027-08-08' },
    ]);
    expect(read([{ to: '2027-08-02', van: 'wren' }], { others: [other] }).bad).toEqual([]);
  });

  test('may take the place of those that the same file moves away', () => {
    const moved = { ref: 'BR-1', from: '2027-09-01', to: '2027-09-08' };
    expect(read([{ to: '2027-08-02' }, moved], { others: [other] }).bad).toEqual([]);
  });

  test('do not take the place of one that cannot be moved after all', () => {
    const third = { ...other, ref: 'BR-9', from: '2027-09-01', to: '2027-09-08' };
    const moved = { ref: 'BR-1', from: '2027-09-01', to: '2027-09-08' };
    const { bookings, bad } = read([{ to: '2027-08-02' }, moved], { others: [other, third] });
    expect(bookings).toEqual([]);
    expect(places(bad)).toEqual(['2 van', '3 van']);
  });

  test('never overlap in what is taken, whatever stands in the file and in the store', () => {
    const stay = fc.record({
      ref: fc.constantFrom('BR-1', 'BR-2', 'BR-3', 'BR-4', 'BR-5'),
      van: fc.constantFrom('wren', 'dunlin'),
      first: fc.integer({ min: 0, max: 20 }),
      nights: fc.integer({ min: 1, max: 8 }),
    });
    const fieldsOf = ({
      ref,
      van,
      first,
      nights,
    }: {
      ref: string;
      van: string;
      first: number;
      nights: number;
    }): Fields => ({
      ref,
      van,
      from: addDays('2027-07-01', first),
      to: addDays('2027-07-01', first + nights),
    });
    fc.assert(
      fc.property(fc.array(stay, { maxLength: 6 }), fc.array(stay, { maxLength: 8 }), (before, file) => {
        const others = read(before.map(fieldsOf)).bookings;
        const { bookings, bad } = read(file.map(fieldsOf), { others });
        const after = new Map([...others, ...bookings].map((booking) => [booking.ref, booking]));
        for (const a of after.values()) {
          for (const b of after.values()) {
            if (a.ref < b.ref && a.van === b.van) expect(a.from >= (b.to ?? '') || b.from >= (a.to ?? '')).toBe(true);
          }
        }
        // Every record is either taken or told.
        expect(bookings.length + new Set(bad.map((each) => each.line)).size).toBe(file.length);
      }),
    );
  });
});
