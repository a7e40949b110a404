import type {
  Booking,
  Line,
  Message,
  OutboxRow,
  Received,
  Saved,
  Store,
  StoredEvent,
  Thread,
  Token,
  TurnResult,
} from '../../src/index.ts';
import { plainText, type Reply } from '../../src/index.ts';

/** Everything in plain maps: for `ask`, for tests, and as the slow, plain twin of the other stores. Nothing outlives the process. */
export function memoryStore(): Store {
  const threads = new Map<string, Thread>();
  const keys = new Map<string, string>();
  const waiting = new Map<number, Received>();
  const outbox = new Map<number, OutboxRow>();
  const lines = new Map<string, Omit<Line, 'sent'>[]>();
  const sent = new Map<number, Line['sent']>();
  const deliveredAs = new Map<number, string>();
  const events: StoredEvent[] = [];
  const bookings = new Map<string, Booking>();
  const tokens = new Map<string, Token>();
  const notes = new Map<string, string>();
  const addresses = new Map<string, string>();
  let lastLine = 0;

  const pair = (channel: string, name: string): string => JSON.stringify([channel, name]);
  const addThread = (thread: Thread): boolean => {
    const at = pair(thread.channel, thread.address);
    if (threads.has(thread.id) || addresses.has(at)) return false;
    threads.set(thread.id, { ...thread, version: 1 });
    addresses.set(at, thread.id);
    lines.set(thread.id, []);
    return true;
  };
  const changeThread = (thread: Thread): boolean => {
    if (threads.get(thread.id)?.version !== thread.version) return false;
    threads.set(thread.id, { ...thread, version: thread.version + 1 });
    return true;
  };
  const addLine = (line: Omit<Line, 'id' | 'sent'>): number => {
    lastLine += 1;
    lines.get(line.threadId)?.push({ ...line, id: lastLine });
    return lastLine;
  };
  const say = ({ id: threadId, channel, address }: Thread, reply: Reply, atMs: number): void => {
    const who = reply.from ?? 'bot';
    const id = addLine({ threadId, atMs, who, text: plainText(reply), reply, message: null });
    outbox.set(id, {
      id,
      threadId,
      channel,
      address,
      reply,
      tries: 0,
      notBeforeMs: 0,
      maybeSent: false,
      arrived: null,
    });
    sent.set(id, 'waiting');
  };

  const arrivedBefore = ({ id, threadId, reply: { putsRight } }: OutboxRow): OutboxRow['arrived'] => {
    if (putsRight === undefined) return null;
    const last = (lines.get(threadId) ?? []).findLast(
      (line) =>
        line.id < id && (line.id === putsRight || line.reply?.putsRight === putsRight) && deliveredAs.has(line.id),
    );
    return last?.reply == null ? null : { id: deliveredAs.get(last.id) ?? '', reply: last.reply };
  };

  const receive = (message: Message, newThread: () => Thread): Awaited<ReturnType<Store['receive']>> => {
    const { channel, address, key, atMs, text } = message;
    const known = keys.get(pair(channel, key));
    if (known !== undefined) return { kind: 'repeated', threadId: known };
    let threadId = addresses.get(pair(channel, address));
    if (threadId === undefined) {
      const made = newThread();
      const fits = made.channel === channel && made.address === address;
      if (!fits || !addThread(made)) throw new Error(`thread ${made.id} cannot be added for ${channel} ${address}`);
      threadId = made.id;
    }
    const seq = addLine({ threadId, atMs, who: 'hirer', text, reply: null, message });
    keys.set(pair(channel, key), threadId);
    waiting.set(seq, { seq, threadId, message });
    return { kind: 'stored', threadId };
  };

  const saveTurn = (result: TurnResult): Saved => {
    const { seq, thread, replies, atMs } = result;
    if (seq !== null && waiting.get(seq)?.threadId !== thread.id) return 'changed-meanwhile';
    if (!(thread.version === 0 ? addThread(thread) : changeThread(thread))) return 'changed-meanwhile';
    if (seq !== null) waiting.delete(seq);
    for (const reply of replies) say(thread, reply, atMs);
    for (const event of result.events) events.push({ id: events.length + 1, threadId: thread.id, atMs, event });
    return 'saved';
  };

  const validToken = (hash: string, use: Token['use'], nowMs: number): Token | null => {
    const token = tokens.get(hash);
    return token !== undefined && token.use === use && token.expiresMs > nowMs ? token : null;
  };

  return {
    receive: async (message, newThread) => receive(message, newThread),
    nextMessages: async (most, busy) =>
      firsts(
        waiting.values(),
        (each) => each.threadId,
        busy,
        () => true,
      ).slice(0, most),
    saveTurn: async (result) => saveTurn(result),
    saveTurns: async (results) => results.map(saveTurn),
    thread: async (id) => threads.get(id) ?? null,
    threadAt: async ({ channel, address }) => threads.get(addresses.get(pair(channel, address)) ?? '') ?? null,
    threads: async ({ keeper, booking, channel }) =>
      [...threads.values()]
        .filter((thread) => keeper?.includes(thread.keeper) ?? true)
        .filter((thread) => booking === undefined || thread.booking === booking)
        .filter((thread) => channel === undefined || thread.channel === channel)
        .sort((a, b) => a.sinceMs - b.sinceMs || inOrder(a.id, b.id)),
    lines: async (threadId, after = 0) =>
      (lines.get(threadId) ?? [])
        .filter((line) => line.id > after)
        .map((line) => ({ ...line, sent: sent.get(line.id) ?? null })),
    events: async ({ threadId, kinds, after = 0 }) =>
      events
        .slice(after)
        .filter((each) => threadId === undefined || each.threadId === threadId)
        .filter((each) => kinds?.includes(each.event.kind) ?? true),

    nextToSend: async (channel, nowMs, most, busy) => {
      const ofChannel = [...outbox.values()].filter((row) => row.channel === channel);
      return firsts(
        ofChannel,
        (row) => row.address,
        busy,
        (row) => row.notBeforeMs <= nowMs,
      )
        .slice(0, most)
        .map((row) => ({ ...row, arrived: arrivedBefore(row) }));
    },
    markSending: async (ids) => {
      for (const id of ids) {
        const row = outbox.get(id);
        if (row !== undefined) outbox.set(id, { ...row, maybeSent: true });
      }
    },
    settle: async (id, receipt, nowMs) => {
      const row = outbox.get(id);
      if (row === undefined) return;
      if (receipt.kind === 'later') {
        outbox.set(id, { ...row, tries: row.tries + 1, notBeforeMs: nowMs + receipt.afterMs, maybeSent: false });
      } else {
        outbox.delete(id);
        sent.set(id, receipt.kind);
        if (receipt.kind === 'delivered') deliveredAs.set(id, receipt.id);
      }
    },
    post: async (threadId, reply, atMs) => {
      const thread = threads.get(threadId);
      if (thread === undefined) throw new Error(`there is no thread ${threadId} to post to`);
      say(thread, reply, atMs);
    },

    booking: async (ref) => bookings.get(ref) ?? null,
    bookings: async () => [...bookings.values()].sort((a, b) => inOrder(a.from, b.from) || inOrder(a.ref, b.ref)),
    putBookings: async (given) => {
      const counts = { added: 0, changed: 0, same: 0 };
      for (const booking of given) {
        const before = bookings.get(booking.ref);
        const isSame = before !== undefined && spelled(before) === spelled(booking);
        counts[isSame ? 'same' : before === undefined ? 'added' : 'changed'] += 1;
        bookings.set(booking.ref, booking);
      }
      return counts;
    },

    putToken: async (token) => {
      tokens.set(token.hash, token);
    },
    token: async (hash, use, nowMs) => validToken(hash, use, nowMs),
    tokens: async (use, nowMs, subject) =>
      [...tokens.values()]
        .filter((token) => token.use === use && token.expiresMs > nowMs)
        .filter((token) => subject === undefined || token.subject === subject)
        .sort((a, b) => inOrder(a.subject, b.subject) || inOrder(a.hash, b.hash)),
    spendToken: async (hash, use, nowMs) => {
      const token = validToken(hash, use, nowMs);
      if (token !== null) tokens.delete(hash);
      return token;
    },
    dropToken: async (hash) => {
      tokens.delete(hash);
    },

    note: async (name) => notes.get(name) ?? null,
    putNote: async (name, value) => {
      notes.set(name, value);
    },
    putNoteSoon: async (name, value) => {
      notes.set(name, value);
    },
    notes: async (prefix) =>
      [...notes]
        .filter(([name]) => name.startsWith(prefix))
        .map(([name, value]) => ({ name, value }))
        .sort((a, b) => inOrder(a.name, b.name)),

    backup: async () => {
      throw new Error('what is kept in memory only cannot be backed up');
    },
    close: async () => {},
  };
}

/** The first of each group in the order given, without groups that are busy; `may` is asked of the firsts only. */
function firsts<T>(
  items: Iterable<T>,
  groupOf: (item: T) => string,
  busy: ReadonlySet<string>,
  may: (item: T) => boolean,
): T[] {
  const seen = new Set(busy);
  const found: T[] = [];
  for (const item of items) {
    const group = groupOf(item);
    if (seen.has(group)) continue;
    seen.add(group);
    if (may(item)) found.push(item);
  }
  return found;
}

function inOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A booking's fields in one fixed order, so that equal bookings are equal texts. */
function spelled({ ref, hirer, firstName, people, van, site, pitch, amps, from, to, phone, note }: Booking): string {
  const party = people === null ? null : [people.adults, people.children, people.dogs];
  return JSON.stringify([ref, hirer, firstName, party, van, site, pitch, amps, from, to, phone, note]);
}
