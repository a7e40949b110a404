import type { MiddlewareHandler } from 'hono';

/**
 * Refuses forms that another site's page sends with our cookies. Browsers say where a form comes from in
 * Sec-Fetch-Site, older ones in Origin; a client that says neither (a command line) holds no one's cookies and may pass.
 */
export const sameSiteOnly: MiddlewareHandler = async (c, next) => {
  if (c.req.method !== 'GET' && c.req.method !== 'HEAD' && comesFromElsewhere(c.req.header.bind(c.req), c.req.url)) {
    return c.text('This form was sent from another site. Open our own page and send it from there.', 403);
  }
  await next();
  return undefined;
};

function comesFromElsewhere(header: (name: string) => string | undefined, url: string): boolean {
  const site = header('sec-fetch-site');
  if (site !== undefined) return site !== 'same-origin' && site !== 'none';
  const origin = header('origin');
  if (origin === undefined) return false;
  // Behind a proxy the scheme differs from what this server sees; the host is what tells sites apart.
  const host = header('host') ?? new URL(url).host;
  return !URL.canParse(origin) || new URL(origin).host !== host;
}
