import { Hono } from 'hono';
import type { TelegramChannel } from './telegram.ts';

/** POST of an update by Telegram, to be mounted where TELEGRAM_WEBHOOK_URL points; all else is not found. */
export function telegramRoutes(channel: Pick<TelegramChannel, 'webhook'>): Hono {
  const routes = new Hono();
  routes.post('/', (context) => channel.webhook(context.req.raw));
  return routes;
}
