import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import QRCode from 'qrcode';
import { dayOf } from '../../src/index.ts';
import { type BookingLink, freshCode, freshLink } from './booking-links.ts';
import { command, WorkError } from './command.ts';
import { withData } from './with-data.ts';

export const links = command({
  name: 'links',
  does: 'Makes fresh links for bookings: to the chat page and to the bot on Telegram.',
  usage: '[--ref BR-2702] [--qr] [--png FOLDER] [--codes] [--json]',
  help: [
    '--ref REF     one booking; left out: every booking that has not ended',
    '--qr          draws each chat link as a QR code on the terminal',
    '--png FOLDER  writes each chat link as a QR code to FOLDER/REF.png, for the document wallet',
    '--codes       a fresh code for the wallet as well, for those without a link',
    '--json        {"ref","van","token","telegram","chat"} a line',
  ],
  options: {
    ref: { type: 'string' },
    qr: { type: 'boolean' },
    png: { type: 'string' },
    codes: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  run: async (values, _, terminal) =>
    withData(terminal, async ({ store, served, config, now }) => {
      const zone = served().knowledge.firm.timeZone;
      const today = dayOf(now(), zone);
      const all = await store.bookings();
      const wanted = all.filter((booking) =>
        values.ref === undefined ? booking.to === null || booking.to >= today : booking.ref === values.ref,
      );
      if (values.ref !== undefined && wanted.length === 0)
        throw new WorkError(`no booking '${values.ref}'; 'pitchhand bookings list' shows all`);
      for (const booking of wanted) {
        const link = await freshLink(booking, store, config, zone);
        const code = values.codes === true ? await freshCode(booking, store, zone) : null;
        if (values.json === true) terminal.out(`${JSON.stringify(code === null ? link : { ...link, code })}\n`);
        else terminal.out(linkText(link, booking.hirer, code));
        if (values.qr === true)
          terminal.out(`${await QRCode.toString(link.chat, { type: 'utf8', errorCorrectionLevel: 'M' })}\n`);
        if (values.png !== undefined) {
          mkdirSync(values.png, { recursive: true });
          await QRCode.toFile(join(values.png, `${booking.ref}.png`), link.chat, {
            errorCorrectionLevel: 'M',
            width: 600,
          });
        }
      }
      return 0;
    }),
});

function linkText(link: BookingLink, hirer: string, code: string | null): string {
  const telegram = link.telegram === null ? '' : `  ${link.telegram}\n`;
  const wallet = code === null ? '' : `  code for the wallet: ${code}\n`;
  return `${link.ref} ${link.van}, ${hirer}\n  ${link.chat}\n${telegram}${wallet}`;
}
