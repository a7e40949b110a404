import { join } from 'node:path';
import { pino } from 'pino';
import { type Booking, dayOf, daysBetween, type FirmData, type Store } from '../../src/index.ts';
import { type Config, readConfig } from '../config.ts';
import { demoBookings } from '../demo/bookings.ts';
import { newToken } from '../files/tokens.ts';
import { createLiveGraph } from '../live-graph.ts';
import { createModels } from '../training/models.ts';
import { createWorld, type World } from '../world.ts';
import { admit } from '../yard/members.ts';
import { freshLink } from './booking-links.ts';
import { command, type Terminal } from './command.ts';
import { letGoOfTheStart } from './let-go.ts';
import { preparedFolder } from './served-graph.ts';

const SIGN_IN_GOOD_MS = 24 * 60 * 60 * 1000;

export const serve = command({
  name: 'serve',
  does: 'Serves the chat page, the yard page and the channels until it is told to stop.',
  usage: '',
  help: ['Settings are environment variables or a .env file: see the README.'],
  options: {},
  run: async (_values, _words, terminal) => {
    const config = readConfig(terminal.env);
    const log = pino(
      { level: config.logLevel, redact: ['message.text', 'address', 'token', '*.phone', '*.hirer'] },
      pino.destination(2),
    );
    const graph = createLiveGraph({
      folder: config.graphFolder,
      cacheFolder: preparedFolder(),
      log,
      learntFor: createModels(preparedFolder(), log),
      lastGood: join(config.dataFolder, 'last-good-graph.json'),
    });
    const clock = { nowMs: Date.now };
    const world = await createWorld({ config, graph, clock, log });
    const { firm } = graph.served().knowledge;
    const fresh = (await world.store.bookings()).length === 0;
    if (fresh) await world.store.putBookings(demoBookings(dayOf(Date.now(), firm.timeZone)));
    const { port } = await world.start();
    await printWelcome(world, config, firm, fresh, port, terminal);
    log.info({ port }, 'serving');
    letGoOfTheStart();
    await untilToldToStop();
    log.info('stopping: what was accepted is finished first');
    await world.stop();
    return 0;
  },
});

/** Where to go: two hirers' chats and, for staff, a one-time link to the yard page. */
async function printWelcome(
  world: World,
  config: Config,
  firm: FirmData,
  fresh: boolean,
  port: number,
  terminal: Terminal,
): Promise<void> {
  const { store } = world;
  const at = config.port === 0 ? { ...config, url: `http://localhost:${port}` } : config;
  const zone = firm.timeZone;
  terminal.out(`${firm.name}: serving on http://${config.host}:${port}\n\n`);
  for (const booking of await onPitch(store, zone)) {
    const link = await freshLink(booking, store, at, zone);
    terminal.out(`  ${booking.hirer} in ${booking.van}:\n    ${link.chat}\n`);
  }
  const person = firm.people[0];
  if (fresh && person !== undefined) {
    const { token, hash } = newToken();
    await admit(store, person.firstName, 'operator');
    await store.putToken({
      hash,
      use: 'sign-in',
      subject: person.firstName,
      data: { role: 'operator' },
      expiresMs: Date.now() + SIGN_IN_GOOD_MS,
    });
    terminal.out(
      `  The yard page, for ${person.firstName} (good once, for a day):\n    ${at.url}/yard/sign-in/${token}\n`,
    );
  } else {
    terminal.out("  The yard page: 'npx pitchhand sign-in NAME' makes a link.\n");
  }
  terminal.out('\n');
}

/** Two bookings of different vans that are on pitch today. */
async function onPitch(store: Store, zone: string): Promise<readonly Booking[]> {
  const today = dayOf(Date.now(), zone);
  const all = await store.bookings();
  const now = all.filter(
    (booking) => booking.from <= today && (booking.to === null || daysBetween(today, booking.to) >= 1),
  );
  const first = now.find((booking) => booking.van === 'dunlin') ?? now[0];
  const second = now.find((booking) => booking.van === 'wren') ?? now.find((booking) => booking.van !== first?.van);
  return [first, second].filter((booking) => booking !== undefined);
}

function untilToldToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => resolve());
  });
}
