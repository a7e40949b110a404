import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';

/** A form as it was sent. `text` joins nothing: a field sent twice counts once, the first time. */
export type Form = {
  /** Empty when the field was not sent or is a file. */
  readonly text: (field: string) => string;
  /** Null when no file was chosen (browsers then send an empty one without a name). */
  readonly file: (field: string) => File | null;
};

export type ReadForm = { readonly kind: 'form'; readonly form: Form } | { readonly kind: 'unreadable' };

const FORM_TYPES = /^(application\/x-www-form-urlencoded|multipart\/form-data)\b/i;

/** Reads a urlencoded or multipart body. Anything else, or one that is broken, is `unreadable`. Never throws. */
export async function readForm(c: Context): Promise<ReadForm> {
  if (!FORM_TYPES.test(c.req.header('content-type') ?? '')) return { kind: 'unreadable' };
  let data: FormData;
  try {
    data = await c.req.formData();
  } catch {
    return { kind: 'unreadable' };
  }
  return {
    kind: 'form',
    form: {
      text: (field) => {
        const value = data.get(field);
        return typeof value === 'string' ? value : '';
      },
      file: (field) => {
        const value = data.get(field);
        return value instanceof File && (value.size > 0 || value.name !== '') ? value : null;
      },
    },
  };
}

/** Stops reading at `mostBytes` and answers with `refuse`. */
export function limitBody(mostBytes: number, refuse: (c: Context) => Response | Promise<Response>): MiddlewareHandler {
  return bodyLimit({ maxSize: mostBytes, onError: refuse });
}

/**
 * Lets at most `most` requests through at once; the rest are asked to come back. Bodies are held in memory while they
 * are read, so this bounds it: `most` times the body limit.
 */
export function fewAtOnce(most: number, refuse: (c: Context) => Response | Promise<Response>): MiddlewareHandler {
  let inside = 0;
  return async (c, next) => {
    if (inside >= most) return refuse(c);
    inside += 1;
    try {
      await next();
    } finally {
      inside -= 1;
    }
    return undefined;
  };
}
