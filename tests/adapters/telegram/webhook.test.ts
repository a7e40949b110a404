import { createServer, type Server } from 'node:http';
import fc from 'fast-check';
import { Hono } from 'hono';
import { afterEach, describe, expect, it } from 'vitest';
import { telegramRoutes } from '../../../adapters/telegram/routes.ts';
import { createTelegram } from '../../../adapters/telegram/telegram.ts';
import { createWebhook, SECRET_HEADER } from '../../../adapters/telegram/webhook.ts';
import { until } from '../../contracts/channel.ts';
import { anInTray, optionsFor, QUIET } from '../../helpers/telegram-rig.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';

const SECRET = 'a-Secret_42';
const update = (text: string, id = 1) => ({
  update_id: id,
  message: { message_id: 1, date: 2, chat: { id: 42, type: 'private' }, from: { id: 42, first_name: 'Ada' }, text },
});
const post = (body: string | Uint8Array<ArrayBuffer>, secret: string | null = SECRET) =>
  new Request('http://localhost/telegram', {
    method: 'POST',
    body,
    headers: secret === null ? {} : { [SECRET_HEADER]: secret },
  });

describe('the webhook', () => {
  const make = () => {
    const stored: unknown[] = [];
    let broken = false;
    const webhook = createWebhook(
      SECRET,
      async (given) => {
        if (broken) throw new Error('disk full');
        stored.push(given);
      },
      QUIET,
    );
    return {
      webhook,
      stored,
      breakStore: (to: boolean) => {
        broken = to;
      },
    };
  };

  it('says 200 only once the update is stored, and 500 when it could not be', async () => {
    const { webhook, stored, breakStore } = make();
    breakStore(true);
    expect((await webhook(post(JSON.stringify(update('hello'))))).status).toBe(500);
    expect(stored).toEqual([]);
    breakStore(false);
    expect((await webhook(post(JSON.stringify(update('hello'))))).status).toBe(200);
    expect(stored).toHaveLength(1);
  });

  it('lets nobody in without the secret', async () => {
    const { webhook, stored } = make();
    for (const secret of [null, '', 'A-Secret_42', `${SECRET} `.trim().slice(1), `${SECRET}x`, 'x'.repeat(5000)])
      expect((await webhook(post(JSON.stringify(update('hello')), secret))).status).toBe(401);
    expect(stored).toEqual([]);
  });

  it('refuses what is no update and what is too large', async () => {
    const { webhook, stored } = make();
    for (const body of ['', 'null', '[]', '{}', '{"update_id":"1"}', '{"update_id":1.5}', '{"update_id":', '\u0000'])
      expect((await webhook(post(body))).status).toBe(400);
    expect((await webhook(post('x'.repeat(1_000_001)))).status).toBe(413);
    expect(stored).toEqual([]);
  });

  it('answers every body with one of its own words and never throws', async () => {
    const { webhook } = make();
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.json(), fc.string(), fc.uint8Array({ maxLength: 200 })), async (body) => {
        const response = await webhook(post(typeof body === 'string' ? body : new Uint8Array(body)));
        expect([200, 400]).toContain(response.status);
      }),
    );
  });

  it('stores nothing but whole messages, whatever an update looks like', async () => {
    const standIn = await new TelegramStandIn().start();
    const tray = anInTray();
    const channel = createTelegram(
      optionsFor(standIn, { receive: tray.receive, webhook: { url: `${standIn.root}/nobody`, secret: SECRET } }),
    );
    const odd = fc.anything({ withNullPrototype: false });
    const bent = fc.record(
      {
        update_id: fc.integer(),
        message: fc.oneof(
          odd,
          fc.record(
            {
              message_id: odd,
              date: odd,
              chat: fc.oneof(odd, fc.constant({ id: 42, type: 'private' })),
              text: odd,
              photo: odd,
            },
            { requiredKeys: [] },
          ),
        ),
        edited_message: odd,
        callback_query: fc.oneof(odd, fc.record({ id: odd, from: odd, data: odd, message: odd }, { requiredKeys: [] })),
      },
      { requiredKeys: ['update_id'] },
    );
    await fc.assert(
      fc.asyncProperty(bent, async (given) => {
        const body = JSON.stringify(given);
        expect((await channel.webhook(post(body))).status).toBe(200);
      }),
      { numRuns: 300 },
    );
    for (const message of tray.messages)
      expect(message).toMatchObject({
        channel: 'telegram',
        key: expect.stringMatching(/^-?\d+$/),
        text: expect.any(String),
      });
    await standIn.close();
  });
});

describe('a channel on a webhook', () => {
  let server: Server | null = null;
  afterEach(() => server?.close());

  it('is called by Telegram with the secret, in order, and again when storing failed', async () => {
    const standIn = await new TelegramStandIn().start();
    const tray = anInTray();
    let failures = 2;
    const routes = new Hono();
    server = createServer(async (request, response) => {
      const body = await new Response(request as unknown as ReadableStream).text();
      const answer = await routes.fetch(
        new Request(`http://localhost${request.url}`, {
          method: 'POST',
          body,
          headers: request.headers as Record<string, string>,
        }),
      );
      response.writeHead(answer.status).end(await answer.text());
    });
    await new Promise<void>((resolve) => server?.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as { port: number };
    const channel = createTelegram(
      optionsFor(standIn, {
        receive: async (message) => {
          if (failures-- > 0) throw new Error('disk full');
          await tray.receive(message);
        },
        webhook: { url: `http://127.0.0.1:${port}/telegram`, secret: SECRET },
      }),
    );
    routes.route('/telegram', telegramRoutes(channel));
    await channel.start();
    const ada = standIn.person('Ada');
    for (const text of ['one', 'two', 'three']) ada.says(text);
    await until(() => tray.messages.length === 3, 'three messages');
    expect(tray.messages.map((message) => message.text)).toEqual(['one', 'two', 'three']);
    expect(standIn.callsOf('setWebhook')[0]?.payload).toMatchObject({ secret_token: SECRET, max_connections: 1 });
    expect(standIn.callsOf('getUpdates')).toEqual([]);
    await channel.stop();
    await standIn.close();
    expect(standIn.complaints).toEqual([]);
  });

  it('refuses posts when the channel polls', async () => {
    const standIn = await new TelegramStandIn().start();
    const channel = createTelegram(optionsFor(standIn));
    expect((await channel.webhook(post('{}'))).status).toBe(404);
    await standIn.close();
  });
});
