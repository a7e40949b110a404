import { readFileSync } from 'node:fs';
import { readBookingsCsv } from '../files/bookings-csv.ts';
import { command, UsageError, WorkError } from './command.ts';
import { withData } from './with-data.ts';

export const bookings = command({
  name: 'bookings',
  does: 'Takes bookings from a CSV file, or lists them.',
  usage: 'import FILE.csv [--keep-good] | list [--json]',
  help: [
    'import FILE.csv  columns ref, hirer, people, van, site, amps, from, to, phone, note, in any order (RFC 4180)',
    '                 a ref that is there already is changed, never doubled; with one bad row nothing is taken',
    '--keep-good      takes the good rows of a file with bad ones',
    'list             what is booked; --json gives one object a line',
  ],
  options: { 'keep-good': { type: 'boolean' }, json: { type: 'boolean' } },
  run: async (values, [action, file], terminal) => {
    if (action === 'list') {
      return withData(terminal, async ({ store }) => {
        for (const booking of await store.bookings()) {
          const line = `${booking.ref}  ${booking.van.padEnd(8)} ${booking.from} to ${booking.to}  ${booking.hirer}`;
          terminal.out(`${values.json === true ? JSON.stringify(booking) : line}\n`);
        }
        return 0;
      });
    }
    if (action !== 'import' || file === undefined) throw new UsageError('expected import FILE.csv, or list');
    const bytes = readBytes(file);
    return withData(terminal, async ({ store, served }) => {
      const { vans, places } = served().knowledge;
      const others = await store.bookings();
      const read = readBookingsCsv(bytes, { vans: [...vans.keys()], sites: places.sites, others });
      for (const bad of read.bad)
        terminal.err(`${file}:${bad.line} ${bad.field}: ${bad.problem} (expected ${bad.expected})\n`);
      const badRows = new Set(read.bad.map((bad) => bad.line)).size;
      if (badRows > 0 && values['keep-good'] !== true) {
        terminal.err(`${badRows} bad rows: nothing was taken. Mend them, or take the good rows with --keep-good.\n`);
        return 1;
      }
      const taken = await store.putBookings(read.bookings);
      const report = { ...taken, bad: badRows };
      terminal.out(
        values.json === true
          ? `${JSON.stringify(report)}\n`
          : `${taken.added} added, ${taken.changed} changed, ${taken.same} as they were.\n`,
      );
      return badRows > 0 ? 1 : 0;
    });
  },
});

function readBytes(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch (error) {
    throw new WorkError(`cannot read ${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
