import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';

const flag = z.string().trim();
const url = z.url({ protocol: /^https?$/ });

const environment = z.object({
  PORT: z.coerce.number({ error: 'a port number' }).int().min(0).max(65535).default(8080),
  PITCHHAND_HOST: flag.min(1).default('127.0.0.1'),
  PITCHHAND_URL: url.default('http://localhost:8080'),
  PITCHHAND_DATA: flag.min(1).default('./data'),
  PITCHHAND_GRAPH: flag.min(1).default('./graph'),
  DATABASE_URL: z
    .undefined({ error: 'PostgreSQL is not supported yet; leave it out and the data folder is used' })
    .optional(),
  TELEGRAM_TOKEN: flag.regex(/^\d+:[A-Za-z0-9_-]{10,}$/, 'a bot token such as 123456:ABC... ').optional(),
  TELEGRAM_API_ROOT: url.default('https://api.telegram.org'),
  TELEGRAM_STAFF_CHAT: flag.regex(/^-?\d+$/, 'the number of a group, such as -1001234567890').optional(),
  TELEGRAM_WEBHOOK_URL: url.optional(),
  TELEGRAM_WEBHOOK_SECRET: flag.regex(/^[A-Za-z0-9_-]{1,256}$/, '1 to 256 of A-Z a-z 0-9 _ -').optional(),
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'silent']).default('info'),
});

/** The settings of a run, all checked. */
export type Config = {
  readonly port: number;
  readonly host: string;
  readonly url: string;
  readonly dataFolder: string;
  readonly graphFolder: string;
  readonly logLevel: string;
  readonly telegram: TelegramConfig | null;
};

export type TelegramConfig = {
  readonly token: string;
  readonly apiRoot: string;
  readonly staffChat: string | null;
  readonly webhook: { readonly url: string; readonly secret: string } | null;
};

/** Every wrong variable at once, each by its name. */
export class ConfigError extends Error {
  override readonly name = 'ConfigError';
  constructor(readonly problems: readonly string[]) {
    super(`These settings are wrong:\n${problems.map((each) => `  ${each}`).join('\n')}`);
  }
}

/**
 * Reads the settings from an environment.
 *
 * @throws ConfigError naming every variable that is wrong.
 */
export function readConfig(env: Readonly<Record<string, string | undefined>>): Config {
  const given = Object.fromEntries(Object.entries(env).filter(([, value]) => value !== undefined && value !== ''));
  const read = environment.safeParse(given);
  if (!read.success) {
    throw new ConfigError(read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`));
  }
  const { data } = read;
  if (data.TELEGRAM_WEBHOOK_URL !== undefined && data.TELEGRAM_WEBHOOK_SECRET === undefined) {
    throw new ConfigError([
      'TELEGRAM_WEBHOOK_SECRET: needed with TELEGRAM_WEBHOOK_URL, so that nobody else can post updates',
    ]);
  }
  return {
    port: data.PORT,
    host: data.PITCHHAND_HOST,
    url: data.PITCHHAND_URL.replace(/\/$/, ''),
    dataFolder: data.PITCHHAND_DATA,
    graphFolder: data.PITCHHAND_GRAPH,
    logLevel: data.LOG_LEVEL,
    telegram: telegramOf(data),
  };
}

function telegramOf(data: z.infer<typeof environment>): TelegramConfig | null {
  if (data.TELEGRAM_TOKEN === undefined) return null;
  const { TELEGRAM_WEBHOOK_URL: webhookUrl, TELEGRAM_WEBHOOK_SECRET: secret } = data;
  return {
    token: data.TELEGRAM_TOKEN,
    apiRoot: data.TELEGRAM_API_ROOT.replace(/\/$/, ''),
    staffChat: data.TELEGRAM_STAFF_CHAT ?? null,
    webhook: webhookUrl === undefined || secret === undefined ? null : { url: webhookUrl, secret },
  };
}

/** The process's environment, with what a .env file in the working folder adds; the environment wins. */
export function environmentWithFile(env: NodeJS.ProcessEnv, file = '.env'): Record<string, string | undefined> {
  if (!existsSync(file)) return { ...env };
  const added: Record<string, string> = {};
  for (const line of readFileSync(file, 'utf8').split(/\r?\n/)) {
    const found = /^\s*(?:export\s+)?([A-Z][A-Z0-9_]*)\s*=\s*(.*?)\s*$/.exec(line);
    if (found === null) continue;
    added[found[1] ?? ''] = (found[2] ?? '').replace(/^(["'])(.*)\1$/, '$2');
  }
  return { ...added, ...env };
}
