/*
 * Messages that were typed and have not reached the server. They outlive the page: each has its key from the moment
 * it was typed, so that sending it twice, from two tabs or after a lost answer, is still one message.
 */

export type Unsent = {
  readonly key: string;
  readonly text: string;
  readonly choice: string | null;
  readonly atMs: number;
  /** Set when the server would not take it: its words. It is then not sent again by itself. */
  readonly refused?: string;
};

export type Outbox = {
  readonly all: () => readonly Unsent[];
  readonly add: (message: Unsent) => void;
  readonly drop: (key: string) => void;
  readonly refuse: (key: string, says: string) => void;
};

type Keeps = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** Where the browser keeps nothing (private windows), the messages still live as long as the page. */
export function createOutbox(keeps: Keeps, name: string): Outbox {
  let here: readonly Unsent[] = [];

  const all = (): readonly Unsent[] => {
    try {
      const text = keeps.getItem(name);
      return text === null ? [] : read(text);
    } catch {
      return here;
    }
  };
  const put = (messages: readonly Unsent[]) => {
    here = messages;
    try {
      if (messages.length === 0) keeps.removeItem(name);
      else keeps.setItem(name, JSON.stringify(messages));
    } catch {
      // Full or forbidden: `here` is all there is.
    }
  };

  return {
    all,
    // Read again before each change: another tab of the same page may have changed it.
    add: (message) => put([...all().filter((one) => one.key !== message.key), message]),
    drop: (key) => put(all().filter((one) => one.key !== key)),
    refuse: (key, says) => put(all().map((one) => (one.key === key ? { ...one, refused: says } : one))),
  };
}

function read(text: string): readonly Unsent[] {
  try {
    const found: unknown = JSON.parse(text);
    return Array.isArray(found) ? found.filter(isUnsent) : [];
  } catch {
    return [];
  }
}

function isUnsent(value: unknown): value is Unsent {
  return (
    typeof value === 'object' &&
    value !== null &&
    'key' in value &&
    typeof value.key === 'string' &&
    'text' in value &&
    typeof value.text === 'string'
  );
}

/** 96 random bits. `crypto.randomUUID` is missing on pages that are not https. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
