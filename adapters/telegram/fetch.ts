import { Readable } from 'node:stream';
import type { ApiClientOptions } from 'grammy';

type FrameworkFetch = NonNullable<ApiClientOptions['fetch']>;
type FrameworkSignal = {
  readonly aborted: boolean;
  readonly addEventListener: (kind: 'abort', then: () => void) => void;
};
/** What the framework gives: it only ever posts. */
type Given = {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Readable;
  readonly signal: FrameworkSignal;
};

/**
 * Node's own fetch, for the framework to call. The one it brings along knows its abort signals by the name of their
 * class, which a bundler may change: then every call fails. Node's also drops idle connections after four seconds, so
 * that no message is sent on one that died unnoticed and is then in doubt.
 */
export const nodeFetch = (async (url: string, { headers, body, signal }: Given) => {
  // Node asks for `duplex` where a body is a stream; the types do not know it yet.
  const init = {
    method: 'POST',
    headers,
    body: typeof body === 'string' ? body : (Readable.toWeb(body) as ReadableStream),
    duplex: 'half',
    signal: nodeSignal(signal),
  };
  return fetch(url, init);
}) as unknown as FrameworkFetch;

/** The framework's signals are its own class; Node takes only Node's. */
function nodeSignal(signal: FrameworkSignal): AbortSignal {
  const controller = new AbortController();
  if (signal.aborted) controller.abort();
  else signal.addEventListener('abort', () => controller.abort());
  return controller.signal;
}
