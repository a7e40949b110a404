import { HOUR_MS } from '../../src/index.ts';
import { newToken } from '../files/tokens.ts';
import { admit, roleNow } from '../yard/members.ts';
import { BOT_NAME_NOTE } from './booking-links.ts';
import { command, UsageError, WorkError } from './command.ts';
import { withData } from './with-data.ts';

const GOOD_FOR_MS = 24 * HOUR_MS;

export const signIn = command({
  name: 'sign-in',
  does: 'Makes a one-time link to the yard page.',
  usage: 'NAME [--role operator] [--telegram] [--json]',
  help: [
    'NAME         a name on the rota, such as Gethin',
    '--role ROLE  staff or operator, who also grows the graph and lets others in; usual: as they are now, else staff',
    '--telegram   a one-time link by which Telegram learns who of the rota this is, instead',
    '--json       {"url"}',
  ],
  options: { role: { type: 'string' }, telegram: { type: 'boolean' }, json: { type: 'boolean' } },
  run: async ({ role, telegram, json }, [said], terminal) => {
    if (said === undefined) throw new UsageError('expected a NAME');
    if (role !== undefined && role !== 'staff' && role !== 'operator')
      throw new UsageError(`no role '${role}', expected staff or operator`);
    return withData(terminal, async ({ store, served, config, now }) => {
      const people = served().knowledge.firm.people;
      const person = people.find((each) =>
        [each.name, each.firstName].some((name) => name.toLowerCase() === said.toLowerCase()),
      );
      if (person === undefined)
        throw new UsageError(
          `nobody called '${said}' on the rota, expected one of ${people.map((each) => each.firstName).join(', ')}`,
        );
      const { token, hash } = newToken();
      const name = person.firstName;
      const may = role ?? (await roleNow(store, name, 'staff')) ?? 'staff';
      // A link for Telegram says who somebody is there, and lets nobody into the yard page.
      if (telegram !== true) await admit(store, name, may);
      await store.putToken({
        hash,
        use: telegram === true ? 'staff-telegram' : 'sign-in',
        subject: name,
        data: { role: may },
        expiresMs: now() + GOOD_FOR_MS,
      });
      const bot = telegram === true ? await store.note(BOT_NAME_NOTE) : null;
      if (telegram === true && bot === null)
        throw new WorkError(
          'the bot has not been connected to Telegram yet: set TELEGRAM_TOKEN and start the server, then ask again',
        );
      const url = bot === null ? `${config.url}/yard/sign-in/${token}` : `https://t.me/${bot}?start=${token}`;
      terminal.out(json === true ? `${JSON.stringify({ url })}\n` : `${url}\nGood once, for a day.\n`);
      return 0;
    });
  },
});
