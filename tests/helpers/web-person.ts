import type { PagesWorld } from './pages-world.ts';

/** One line of the conversation as it stands on a page. */
export type SeenLine = {
  readonly text: string;
  readonly choices: readonly { id: string; label: string }[];
  readonly media: string | null;
};

/** Someone with a browser that runs no scripts: keeps cookies, sends forms, reads pages. */
export type WebPerson = {
  readonly path: string;
  readonly get: (path?: string) => Promise<Response>;
  readonly post: (fields: Readonly<Record<string, string | File>>, path?: string) => Promise<Response>;
  readonly screen: () => Promise<readonly SeenLine[]>;
};

export function webPerson(world: PagesWorld, path = '/chat'): WebPerson {
  const jar = new Map<string, string>();
  const call = async (at: string, init: RequestInit = {}) => {
    const headers = new Headers(init.headers);
    if (jar.size > 0) headers.set('cookie', [...jar].map(([name, value]) => `${name}=${value}`).join('; '));
    const answer = await fetch(world.origin + at, { ...init, headers, redirect: 'manual' });
    for (const cookie of answer.headers.getSetCookie()) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
      if (name !== undefined && value !== undefined) jar.set(name, value);
    }
    return answer;
  };
  return {
    path,
    get: (at = path) => call(at),
    post: (fields, at = path) => {
      const body = new FormData();
      for (const [name, value] of Object.entries(fields)) body.set(name, value);
      return call(at, { method: 'POST', body });
    },
    screen: async () => readLines(await (await call(path)).text()),
  };
}

/** Reads the lines out of a page, as text. */
export function readLines(html: string): readonly SeenLine[] {
  return [...html.matchAll(/<article class="line[^"]*"[^>]*>(.*?)<\/article>/gs)].map(([, inside = '']) => {
    const body = inside.replace(/<form.*?<\/form>/gs, '');
    return {
      text: plain(body.replace(/<h3 class="hush">.*?<\/h3>/gs, '').replace(/<time.*?<\/time>/gs, '')),
      choices: [...inside.matchAll(/name="choice" value="([^"]*)"[^>]*>(.*?)<\/button>/gs)].map(
        ([, id = '', label = '']) => ({
          id: plain(id),
          label: plain(label.replace(/<span class="digit">.*?<\/span>/s, '')),
        }),
      ),
      media: /<img/.test(body) ? 'photo' : /href="geo:/.test(body) ? 'location' : null,
    };
  });
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function plain(html: string): string {
  const text = html.replace(/<\/(p|li|h3|div|label|td|th|tr|figcaption)>/g, ' ').replace(/<[^>]*>/g, '');
  return unescaped(text).replace(/\s+/g, ' ').trim();
}

/** What stands in an attribute. */
export function unescaped(html: string): string {
  return html.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => ENTITIES[name] ?? '');
}
