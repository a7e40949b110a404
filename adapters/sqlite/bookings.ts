import type { Booking, People, Store } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';
import type { Writer } from './group-commit.ts';
import type { BookingRow } from './tables.ts';

export function bookingsIn(at: Connection, writer: Writer): Pick<Store, 'booking' | 'bookings' | 'putBookings'> {
  const byRef = prepare(at, (sql, given: { ref: string }) =>
    sql.selectFrom('bookings').selectAll().where('ref', '=', given.ref),
  );
  const all = prepare(at, (sql, _given: Record<never, never>) =>
    sql.selectFrom('bookings').selectAll().orderBy('from_day').orderBy('ref'),
  );
  const put = prepare(at, (sql, given: BookingRow) => {
    const { ref, ...rest } = columns(given);
    return sql
      .insertInto('bookings')
      .values({ ref, ...rest })
      .onConflict((conflict) => conflict.column('ref').doUpdateSet(rest));
  });
  const putAll = (bookings: readonly Booking[]): Awaited<ReturnType<Store['putBookings']>> => {
    const counts = { added: 0, changed: 0, same: 0 };
    for (const booking of bookings) {
      const row = rowOf(booking);
      const before = byRef.first({ ref: booking.ref });
      if (before !== undefined && isSame(before, row)) counts.same += 1;
      else {
        put.run(row);
        counts[before === undefined ? 'added' : 'changed'] += 1;
      }
    }
    return counts;
  };
  return {
    booking: async (ref) => {
      const row = byRef.first({ ref });
      return row === undefined ? null : bookingOf(row);
    },
    bookings: async () => all.all({}).map(bookingOf),
    putBookings: (bookings) => writer.write(() => putAll(bookings)),
  };
}

/** One by one, since the named places of a prepared query have no keys to spread. */
function columns(row: BookingRow): BookingRow {
  return {
    ref: row.ref,
    hirer: row.hirer,
    first_name: row.first_name,
    people: row.people,
    van: row.van,
    site: row.site,
    pitch: row.pitch,
    amps: row.amps,
    from_day: row.from_day,
    to_day: row.to_day,
    phone: row.phone,
    note: row.note,
  };
}

function isSame(one: BookingRow, other: BookingRow): boolean {
  return JSON.stringify(columns(one)) === JSON.stringify(columns(other));
}

function rowOf(booking: Booking): BookingRow {
  const { people } = booking;
  return {
    ref: booking.ref,
    hirer: booking.hirer,
    first_name: booking.firstName,
    people: people === null ? null : peopleText(people),
    van: booking.van,
    site: booking.site,
    pitch: booking.pitch,
    amps: booking.amps,
    from_day: booking.from,
    to_day: booking.to,
    phone: booking.phone,
    note: booking.note,
  };
}

function bookingOf(row: BookingRow): Booking {
  return {
    ref: row.ref,
    hirer: row.hirer,
    firstName: row.first_name,
    people: row.people === null ? null : (JSON.parse(row.people) as People),
    van: row.van,
    site: row.site,
    pitch: row.pitch,
    amps: row.amps,
    from: row.from_day,
    to: row.to_day,
    phone: row.phone,
    note: row.note,
  };
}

/** One spelling for one party, so that a repeated import finds it the same. */
function peopleText({ adults, children, dogs }: People): string {
  return JSON.stringify({ adults, children, dogs });
}
