import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { botApiDescription, faultsInCall, faultsInObject } from './telegram-description.ts';
import { readMultipart } from './telegram-form.ts';
import { bytesOf, carryOut, Refusal } from './telegram-methods.ts';
import { GroupOnTelegram, PersonOnTelegram } from './telegram-people.ts';
import { World } from './telegram-world.ts';

/** Something that goes wrong with the next calls. `method` null is any but getUpdates. */
export type Trouble = {
  readonly method: string | null;
  readonly how:
    | { readonly kind: 'refuse'; readonly code: number; readonly description: string; readonly retryAfterS?: number }
    /** The connection ends before, or after, the call was carried out. */
    | { readonly kind: 'drop'; readonly when: 'before' | 'after' }
    /** An answer that is no JSON, as gateways give. */
    | { readonly kind: 'gateway' };
  times: number;
};

export type Call = {
  readonly method: string;
  readonly payload: Readonly<Record<string, unknown>>;
  readonly atMs: number;
};

/**
 * A Bot API server of our own for tests: node:http on a free port. It checks every call against the published description
 * and keeps what it finds in `complaints`, which each test expects to be empty.
 */
export class TelegramStandIn {
  readonly token = '7000001:stand-in-token';
  readonly world: World;
  readonly calls: Call[] = [];
  readonly complaints: string[] = [];
  readonly troubles: Trouble[] = [];
  readonly description = botApiDescription();
  webhook: { url: string; secret: string | null } | null = null;
  root = '';
  #server: Server | null = null;
  #polling = 0;
  #closing = false;
  #delivering = false;
  #fault: Promise<void> = Promise.resolve();

  /** What answers requests that are none of the Bot API's. */
  #pages: ((request: IncomingMessage, response: ServerResponse) => void) | null;

  constructor(
    options: { firstId?: number; pages?: (request: IncomingMessage, response: ServerResponse) => void } = {},
  ) {
    this.world = new World(() => Math.floor(Date.now() / 1000), options.firstId);
    this.#pages = options.pages ?? null;
  }

  async start(port = 0): Promise<this> {
    const server = createServer((request, response) => {
      this.#serve(request, response).catch((problem) => {
        this.complaints.push(`the stand-in itself failed: ${problem}`);
        response.destroy();
      });
    });
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, '127.0.0.1', resolve);
    });
    this.#server = server;
    this.#closing = false;
    this.root = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    return this;
  }

  /** Takes the server off the network; `start` with the same port brings it back with everything it knew. */
  async close(): Promise<void> {
    this.#closing = true;
    this.webhook = null;
    this.#server?.closeAllConnections();
    await new Promise<void>((resolve) => (this.#server === null ? resolve() : this.#server.close(() => resolve())));
    await this.#fault;
  }

  person(firstName: string): PersonOnTelegram {
    return new PersonOnTelegram(this.world, this.world.newUser(firstName));
  }

  group(options: { forum: boolean; title?: string }): GroupOnTelegram {
    const type = options.forum ? 'supergroup' : 'group';
    return new GroupOnTelegram(
      this.world,
      this.world.addPlace({ type, title: options.title ?? 'The yard', forum: options.forum }),
    );
  }

  trouble(method: string | null, how: Trouble['how'], times = 1): void {
    this.troubles.push({ method, how, times });
  }

  callsOf(method: string): Call[] {
    return this.calls.filter((call) => call.method === method);
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = request.url ?? '';
    if (url.startsWith(`/file/bot${this.token}/`)) return this.#download(url, response);
    if (this.#pages !== null && !url.startsWith('/bot')) return this.#pages(request, response);
    const method = new RegExp(`^/bot${this.token}/(\\w+)$`).exec(url)?.[1];
    if (method === undefined) return answer(response, 401, { ok: false, error_code: 401, description: 'Unauthorized' });
    const payload = await readPayload(request);
    this.calls.push({ method, payload, atMs: Date.now() });
    this.complaints.push(...faultsInCall(this.description, method, payload));
    const trouble = this.#takeTrouble(method);
    if (trouble?.how.kind === 'drop' && trouble.how.when === 'before') return void request.socket.destroy();
    if (trouble?.how.kind === 'gateway') return void response.writeHead(502).end('<html>Bad gateway</html>');
    try {
      if (trouble?.how.kind === 'refuse') throw refusal(trouble.how);
      const result = await this.#result(method, payload, response);
      if (trouble?.how.kind === 'drop') return void request.socket.destroy();
      answer(response, 200, { ok: true, result });
    } catch (problem) {
      if (!(problem instanceof Refusal)) throw problem;
      const parameters = problem.parameters === undefined ? {} : { parameters: problem.parameters };
      answer(response, problem.code, {
        ok: false,
        error_code: problem.code,
        description: problem.message,
        ...parameters,
      });
    }
  }

  #takeTrouble(method: string): Trouble | undefined {
    const found = this.troubles.find(
      (t) => t.times > 0 && (t.method === method || (t.method === null && method !== 'getUpdates')),
    );
    if (found !== undefined) found.times -= 1;
    return found;
  }

  async #result(
    method: string,
    payload: Readonly<Record<string, unknown>>,
    response: ServerResponse,
  ): Promise<unknown> {
    if (method === 'getUpdates') return this.#getUpdates(payload, response);
    if (method === 'deleteWebhook') {
      this.webhook = null;
      return true;
    }
    if (method === 'setWebhook') {
      this.webhook = { url: String(payload.url), secret: (payload.secret_token as string | undefined) ?? null };
      if (!this.#delivering) this.#fault = this.#deliverToWebhook();
      return true;
    }
    return carryOut(this.world, method, payload);
  }

  /** Updates below `offset` are confirmed and forgotten; one poller at a time, as the real server has it. */
  async #getUpdates(payload: Readonly<Record<string, unknown>>, response: ServerResponse): Promise<unknown> {
    if (this.webhook !== null) throw new Refusal(409, "Conflict: can't use getUpdates method while webhook is active");
    if (this.#polling > 0) throw new Refusal(409, 'Conflict: terminated by other getUpdates request');
    const { world } = this;
    const offset = payload.offset as number | undefined;
    if (offset !== undefined) world.pending = world.pending.filter((update) => update.update_id >= offset);
    const timeoutMs = Number(payload.timeout ?? 0) * 1000;
    if (world.pending.length === 0 && timeoutMs > 0) {
      this.#polling += 1;
      await Promise.race([world.waitForUpdate(), untilOver(response, timeoutMs)]);
      this.#polling -= 1;
    }
    const updates = world.pending.slice(0, Number(payload.limit ?? 100));
    for (const update of updates) this.#checkUpdate(update);
    return updates;
  }

  #checkUpdate(update: unknown): void {
    if (this.description.published) this.complaints.push(...faultsInObject(this.description, 'Update', update));
  }

  /** One update at a time, tried again until the other side says 2xx. */
  async #deliverToWebhook(): Promise<void> {
    this.#delivering = true;
    while (this.webhook !== null && !this.#closing) {
      const next = this.world.pending[0];
      if (next === undefined) {
        await Promise.race([this.world.waitForUpdate(), pause(20)]);
        continue;
      }
      this.#checkUpdate(next);
      const secret: Record<string, string> =
        this.webhook.secret === null ? {} : { 'x-telegram-bot-api-secret-token': this.webhook.secret };
      const said = await fetch(this.webhook.url, {
        method: 'POST',
        headers: { 'content-type': 'application/json', ...secret },
        body: JSON.stringify(next),
      }).catch(() => null);
      if (said?.ok) this.world.pending = this.world.pending.filter((update) => update !== next);
      else await pause(10);
    }
    this.#delivering = false;
  }

  #download(url: string, response: ServerResponse): void {
    const path = url.slice(`/file/bot${this.token}/`.length);
    const file = [...this.world.files.values()].find((each) => each.path === path);
    if (file === undefined) return void response.writeHead(404).end();
    response.writeHead(200, { 'content-type': 'application/octet-stream' }).end(file.bytes);
  }
}

/** Resolves when the call is over, hung up or answered, or when the time is. */
function untilOver(response: ServerResponse, ms: number): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    response.once('close', () => {
      clearTimeout(timer);
      resolve();
    });
  });
}

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

function refusal(how: Extract<Trouble['how'], { kind: 'refuse' }>): Refusal {
  return new Refusal(
    how.code,
    how.description,
    how.retryAfterS === undefined ? undefined : { retry_after: how.retryAfterS },
  );
}

function answer(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
}

async function readPayload(request: IncomingMessage): Promise<Readonly<Record<string, unknown>>> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  const body = Buffer.concat(chunks);
  const type = request.headers['content-type'] ?? '';
  if (type.startsWith('multipart/form-data')) return readForm(body, type);
  return body.length === 0 ? {} : (JSON.parse(body.toString('utf8')) as Record<string, unknown>);
}

const TEXT_FIELDS = new Set(['text', 'caption', 'parse_mode', 'name', 'phone_number', 'first_name']);

/** In a form everything but files and text is JSON. `attach://name` stands for the file of that name. */
function readForm(body: Buffer, type: string): Readonly<Record<string, unknown>> {
  const parts = readMultipart(body, type);
  const files = new Map<string, File>();
  for (const part of parts)
    if ('file' in part) {
      files.set(part.name, part.file);
      bytesOf.set(part.file, part.bytes);
    }
  const payload: Record<string, unknown> = {};
  for (const part of parts) {
    if ('file' in part) continue;
    const attached = part.text.startsWith('attach://') ? part.text.slice('attach://'.length) : null;
    if (attached === null) payload[part.name] = TEXT_FIELDS.has(part.name) ? part.text : fromForm(part.text);
    else {
      payload[part.name] = files.get(attached);
      files.delete(attached);
    }
  }
  return { ...payload, ...Object.fromEntries(files) };
}

function fromForm(value: string): unknown {
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
}
