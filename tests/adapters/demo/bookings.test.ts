import { existsSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoBookings } from '../../../adapters/demo/bookings.ts';
import { addDays, type Booking, daysBetween, readBookings } from '../../../src/index.ts';

const TODAY = '2027-07-15';
const CATALOGUE = '../shared/catalogue/fleet.md';

/** 2020 to 2039, so that leap days and ends of years come up. */
const day = fc.integer({ min: 0, max: 7_300 }).map((days) => addDays('2020-01-01', days));

function last(booking: Booking): string {
  return booking.to ?? '';
}

describe('the demo', () => {
  test('has four vans in the middle of a hire, one that arrives and one that leaves, on any day', () => {
    fc.assert(
      fc.property(day, (today) => {
        const bookings = demoBookings(today);
        const onPitch = bookings.filter((booking) => booking.from < today && today < last(booking));
        expect(new Set(onPitch.map((booking) => booking.van)).size).toBeGreaterThanOrEqual(4);
        expect(bookings.filter((booking) => booking.from === today)).toHaveLength(1);
        expect(bookings.filter((booking) => last(booking) === today)).toHaveLength(1);
      }),
    );
  });

  test('gives a van to one hirer at a time, and would pass as a booking file', () => {
    fc.assert(
      fc.property(day, (today) => {
        const bookings = demoBookings(today);
        const columns = ['ref', 'hirer', 'people', 'van', 'site', 'amps', 'from', 'to', 'phone', 'note'];
        const rows = bookings.map((booking) => [
          booking.ref,
          booking.hirer,
          peopleText(booking),
          booking.van,
          booking.site ?? '',
          booking.amps === null ? '' : String(booking.amps),
          booking.from,
          last(booking),
          booking.phone ?? '',
          booking.note,
        ]);
        const sites = Object.fromEntries(bookings.map(({ site }) => [site ?? '', { name: site ?? '' }]));
        const records = [columns, ...rows].map((fields, i) => ({ line: i + 1, fields }));
        const read = readBookings(records, { vans: bookings.map(({ van }) => van), sites });
        expect(read.bad).toEqual([]);
        expect(read.bookings.map(({ people, from, to }) => ({ people, from, to }))).toEqual(
          bookings.map(({ people, from, to }) => ({ people, from, to })),
        );
      }),
    );
  });

  test('has numbers kept for fiction, each its own and none of them those of the firm', () => {
    const phones = demoBookings(TODAY).map((booking) => booking.phone);
    // Ofcom, 'Telephone numbers for use in TV and radio drama': mobiles 07700 900000 to 900999.
    for (const phone of phones) expect(phone).toMatch(/^07700 900\d{3}$/);
    expect(new Set(phones).size).toBe(8);
    expect(phones).not.toContain('07700 900318');
  });

  test('names sites and vans that the graph has', () => {
    const places = readFileSync('graph/places.yaml', 'utf8');
    for (const { site, van } of demoBookings(TODAY)) {
      expect(existsSync(`graph/vans/${van}.yaml`)).toBe(true);
      if (site !== null) expect(places).toContain(`\n  ${site}:\n`);
    }
  });

  test.skipIf(!existsSync(CATALOGUE))('has the refs, hirers, vans and nights of the catalogue', () => {
    const rows = [
      ...readFileSync(CATALOGUE, 'utf8').matchAll(/^\| (BR-\d+) \| ([^|]+) \| (\w+) \| ([^|]+) \| ([^|]+) \|/gm),
    ];
    expect(
      rows.map(([, ref, hirer, van, people, days]) => ({
        ref,
        hirer,
        van: van?.toLowerCase(),
        people,
        nights: nightsOf(days ?? ''),
      })),
    ).toEqual(
      demoBookings(TODAY).map((booking) => ({
        ref: booking.ref,
        hirer: booking.hirer,
        van: booking.van,
        people: peopleText(booking),
        nights: daysBetween(booking.from, last(booking)),
      })),
    );
  });
  if (!existsSync(CATALOGUE)) console.log(`${CATALOGUE} is not there: the demo is not held against the catalogue`);
});

function peopleText({ people }: Booking): string {
  const { adults = 0, children = [], dogs = 0 } = people ?? {};
  return [
    `${adults} adult${adults === 1 ? '' : 's'}`,
    ...(children.length > 0 ? [`${children.length} children (${children.join(', ')})`] : []),
    ...(dogs > 0 ? [`${dogs} dog${dogs === 1 ? '' : 's'}`] : []),
  ].join(', ');
}

/** '28 May-4 June 2027' and '24-31 July 2027'. */
function nightsOf(days: string): number {
  const [, first = '', firstMonth, second = '', secondMonth = '', year = ''] =
    /^(\d+)(?: (\w+))?-(\d+) (\w+) (\d{4})$/.exec(days) ?? [];
  const at = (date: string, month: string): number => Date.parse(`${date} ${month} ${year} 00:00 UTC`);
  return (at(second, secondMonth) - at(first, firstMonth ?? secondMonth)) / 86_400_000;
}
