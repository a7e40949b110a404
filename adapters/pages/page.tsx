import { html } from 'hono/html';
import type { FC, PropsWithChildren } from 'hono/jsx';
import { COLOURS } from './colours.ts';

export type PageProps = PropsWithChildren<{
  readonly title: string;
  /** Paths of style sheet and script. */
  readonly style: string;
  readonly script?: string | undefined;
  /** Read by the page's script and by its styles. */
  readonly body?: Readonly<Record<string, string>>;
}>;

/** A small enamel sign with a van's window in it. */
const ICON = `data:image/svg+xml,${encodeURIComponent(
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="6" fill="${COLOURS.light.plate}"/><path d="M5 22V13q0-4 4-4h16q2 0 2 2v11z" fill="${COLOURS.light.onPlate}"/><path d="M9 12h7v5H9zM19 12h4v10h-4z" fill="${COLOURS.light.plate}"/><circle cx="15" cy="22.5" r="3.5" fill="${COLOURS.light.marigold}"/></svg>`,
)}`;

const Frame: FC<PageProps> = ({ title, style, script, body = {}, children }) => (
  <html lang="en-GB">
    <head>
      <meta charset="utf-8" />
      <meta name="viewport" content="width=device-width, initial-scale=1, interactive-widget=resizes-content" />
      <title>{title}</title>
      <meta name="robots" content="noindex" />
      <meta name="theme-color" media="(prefers-color-scheme: light)" content={COLOURS.light.plate} />
      <meta name="theme-color" media="(prefers-color-scheme: dark)" content={COLOURS.dark.plate} />
      <link rel="icon" href={ICON} />
      <link rel="stylesheet" href={style} />
      {script === undefined ? null : <script type="module" src={script} />}
    </head>
    <body {...body}>{children}</body>
  </html>
);

/** The whole document. */
export function page(props: PageProps): ReturnType<typeof html> {
  return html`<!doctype html>${<Frame {...props} />}`;
}
