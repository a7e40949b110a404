import { getRequestListener } from '@hono/node-server';
import { phonePages } from './telegram-phones.tsx';
import { TelegramStandIn } from './telegram-stand-in.ts';

/*
 * The stand-in for Telegram, to be tried by hand: `npm run stand-in [-- plain] [-- PORT]`. It forgets everything when it ends.
 */
const words = process.argv.slice(3);
const port = Number(words.find((word) => /^\d+$/.test(word)) ?? 8090);
// A later run goes on where an earlier one can no longer have been: the program remembers what it was told.
const firstId = Math.floor(Date.now() / 1000) - Date.parse('2026-01-01') / 1000;
const standIn: TelegramStandIn = new TelegramStandIn({
  firstId,
  pages: (request, response) => void listener(request, response),
});
const phone = (label: string, name: string) => ({ label, person: standIn.person(name) });
const hirers = [phone("Ngozi's phone", 'Ngozi'), phone("Pat's phone", 'Pat')];
// Hirers must never see these names: each of the staff is shown by the name on the rota.
const staff = [
  phone("Nessa's phone", 'nessie_o'),
  phone("Gethin's phone", 'Geth at home'),
  phone("Dilys's phone", 'D.'),
];
const group = standIn.group({ forum: !words.includes('plain') });
const listener = getRequestListener(
  phonePages({ world: standIn.world, group, hirers, staff, token: standIn.token }).fetch,
);

await standIn.start(port).catch((problem: unknown) => {
  console.error(`Port ${port} cannot be had (${String(problem)}): 'npm run stand-in -- ${port + 1}' takes the next.`);
  process.exit(1);
});
console.log(`A stand-in for Telegram, on this machine alone. Its telephones: ${standIn.root}/

Put these lines into .env beside the README, and start Pitchhand in another terminal:

TELEGRAM_API_ROOT=${standIn.root}
TELEGRAM_TOKEN=${standIn.token}
TELEGRAM_STAFF_CHAT=${group.id}

It ends with Ctrl+C, and forgets everything then.`);

let told = 0;
setInterval(() => {
  for (const complaint of standIn.complaints.slice(told))
    console.error(`Against the published description: ${complaint}`);
  told = standIn.complaints.length;
}, 1000);
