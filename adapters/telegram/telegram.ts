import { Api } from 'grammy';
import type { Address, Attachment, Bar, Channel, Clock, Message, PictureUse } from '../../src/index.ts';
import { COMMANDS } from './commands.ts';
import { createDelivery } from './deliver.ts';
import { ChannelError, inWords, toChannelError } from './errors.ts';
import { nodeFetch } from './fetch.ts';
import { openFile } from './files.ts';
import { createInbox } from './inbox.ts';
import { type Rates, TELEGRAM, TELEGRAM_RATES } from './limits.ts';
import type { Log } from './log.ts';
import { TELEGRAM_CHANNEL } from './message-of-update.ts';
import { createPace } from './pace.ts';
import { poll } from './poll.ts';
import { createSender, type OpenedFile } from './send.ts';
import { createStaffDesk, type DeskOptions, type DeskStore, type StaffDesk } from './staff-desk.ts';
import { ALLOWED_UPDATES } from './update.ts';
import { realWait, type Wait } from './wait.ts';
import { createWebhook } from './webhook.ts';

export type TelegramOptions = {
  readonly token: string;
  /** Default: https://api.telegram.org. */
  readonly apiRoot?: string | undefined;
  /** Null or left out: long polling. `url` is the whole address that Telegram posts to. */
  readonly webhook?: { readonly url: string; readonly secret: string } | null;
  readonly receive: (message: Message) => Promise<void>;
  /** A hirer has blocked the bot. */
  readonly gone?: (address: Address) => Promise<void>;
  readonly store: DeskStore;
  /** The staff group; null or left out: staff work on the yard page alone. */
  readonly desk?: DeskOptions | null;
  readonly picturePng: (use: PictureUse) => Promise<Buffer>;
  readonly barPng: (bar: Bar) => Promise<Buffer>;
  readonly openForeign?: (attachment: Attachment) => Promise<OpenedFile | null>;
  readonly clock: Clock;
  readonly log: Log;
  readonly wait?: Wait;
  readonly rates?: Rates;
  /** Seconds a poll waits for news; default 25. */
  readonly holdS?: number;
};

export type TelegramChannel = Channel & {
  /** Answers POST /telegram; with long polling it refuses everything (404). */
  readonly webhook: (request: Request) => Promise<Response>;
  /** The staff group's desk; null when there is none. */
  readonly desk: StaffDesk | null;
  /** The bot's name for t.me links, as Telegram told at the last start; null before the first. */
  readonly botName: () => Promise<string | null>;
  /** Opens what came in over Telegram, for other channels; null when Telegram no longer has it or it is over 20 MB. */
  readonly open: (attachment: Attachment) => Promise<OpenedFile | null>;
};

const BOT_NAME_NOTE = 'telegram:bot-name';
const CALL_TIMEOUT_S = 60;
const SETUP_PAUSE_MS = 5_000;
const PUBLIC_ROOT = 'https://api.telegram.org';

/** The channel to hirers' Telegram chats. Starts whether or not Telegram can be reached; a refused token is told at once. */
export function createTelegram(options: TelegramOptions): TelegramChannel {
  const { token, store, clock, log, receive, wait = realWait, holdS = 25 } = options;
  const apiRoot = (options.apiRoot ?? PUBLIC_ROOT).replace(/\/+$/, '');
  const api = new Api(token, {
    apiRoot,
    timeoutSeconds: CALL_TIMEOUT_S,
    fetch: nodeFetch,
  });
  const stopping = new AbortController();
  const pace = createPace(clock, wait, stopping.signal, options.rates ?? TELEGRAM_RATES);
  const sender = createSender({
    api,
    pace,
    notes: store,
    picturePng: options.picturePng,
    barPng: options.barPng,
    openForeign: options.openForeign ?? (async () => null),
  });
  const deliver = createDelivery(sender, store);
  const desk = options.desk == null ? null : createStaffDesk(options.desk, { api, sender, pace, store, wait, log });
  const inbox = createInbox({
    api,
    receive,
    gone: options.gone ?? (async () => {}),
    staff: desk?.inbox ?? null,
    clock,
    log,
  });
  const webhook = options.webhook ?? null;
  let running: Promise<void> = Promise.resolve();

  /** Tells Telegram how we listen. */
  async function setUp(): Promise<void> {
    const me = await api.raw.getMe();
    await store.putNote(BOT_NAME_NOTE, me.username);
    await api.raw.setMyCommands({
      commands: COMMANDS.map(({ command, description }) => ({ command, description })),
      scope: { type: 'all_private_chats' },
    });
    if (webhook === null) await api.raw.deleteWebhook({});
    else
      await api.raw.setWebhook({
        url: webhook.url,
        secret_token: webhook.secret,
        allowed_updates: ALLOWED_UPDATES,
        // One at a time keeps a chat's messages in order; at 50 ms a trip that is 20 a second, more than a fleet's hirers type.
        max_connections: 1,
      });
  }

  async function setUpInTheEnd(): Promise<void> {
    while (!stopping.signal.aborted) {
      try {
        return await setUp();
      } catch (thrown) {
        const { why, retryAfterMs } = inWords(thrown);
        log.warn({ why }, 'Telegram cannot be reached yet');
        await wait(retryAfterMs ?? SETUP_PAUSE_MS, stopping.signal);
      }
    }
  }

  return {
    name: TELEGRAM_CHANNEL,
    abilities: { buttons: true, pictures: true, edits: true, media: true, longest: TELEGRAM.textUnits },
    async start() {
      let ready = true;
      try {
        await setUp();
      } catch (thrown) {
        const error = toChannelError(thrown);
        if (error.code === 401 || error.code === 404)
          throw new ChannelError('refused', 'Telegram does not know this TELEGRAM_TOKEN', { cause: error });
        log.warn({ why: error.message }, 'Telegram cannot be reached yet: the bot goes on trying');
        ready = false;
      }
      await desk?.start();
      running = (async () => {
        if (!ready) await setUpInTheEnd();
        if (webhook === null) await poll({ api, inbox, wait, log, holdS }, stopping.signal);
      })().catch((error: unknown) => log.error({ why: String(error) }, 'the Telegram loop ended by a fault'));
    },
    async stop() {
      stopping.abort();
      await Promise.all([running, desk?.stop()]);
    },
    async deliver(reply, to, arrived) {
      try {
        return await deliver(reply, to, arrived);
      } catch (error) {
        log.error({ why: String(error) }, 'a delivery failed on our side');
        return { kind: 'later', afterMs: 10_000, why: String(error) };
      }
    },
    webhook:
      webhook === null
        ? async () => new Response('no webhook is set', { status: 404 })
        : createWebhook(webhook.secret, inbox, log),
    desk,
    botName: () => store.note(BOT_NAME_NOTE),
    open: (attachment) => openFile(api, `${apiRoot}/file/bot${token}`, attachment),
  };
}
