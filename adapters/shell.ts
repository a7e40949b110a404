import { randomUUID } from 'node:crypto';
import type { Logger } from 'pino';
import {
  type ActionResult,
  type Attachment,
  attachmentsOf,
  type Binding,
  type Booking,
  type Channel,
  type Clock,
  codeIn,
  codeWaitMs,
  giveBack,
  handOver,
  linkTokenIn,
  type Message,
  newThread,
  putRight,
  type Received,
  type Reply,
  type Served,
  type Store,
  staffNotes,
  staffSays,
  type Thread,
  type TurnResult,
  takeThread,
  turn,
} from '../src/index.ts';
import { type Delivery, deliverAll } from './delivery.ts';
import { hashOf } from './files/tokens.ts';
import { createWakeable } from './wakeable.ts';

/** Turns computed and saved together: one fsync for all that waits in one tick. */
const MOST_AT_ONCE = 64;

export type ShellParts = {
  readonly store: Store;
  /** The knowledge being served; a new one after an edit of the graph. */
  readonly served: () => Served;
  readonly clock: Clock;
  readonly channels: readonly Channel[];
  readonly log: Logger;
  /** Told after something was saved in a thread: pages and desks look again. */
  readonly onChange?: (threadId: string) => void;
};

export type Shell = {
  /** Stores a message once; resolves when it is safe. Rejects when the store fails: then the channel must not confirm it. */
  readonly receive: (message: Message) => Promise<void>;
  readonly take: (threadId: string, by: string) => Promise<StaffResult>;
  readonly giveBack: (threadId: string, by: string) => Promise<StaffResult>;
  readonly say: (
    threadId: string,
    by: string,
    text: string,
    attachments?: readonly Attachment[],
  ) => Promise<StaffResult>;
  /** Changes what `by` said in a line of the thread; the hirer sees the new words in the place of the old. */
  readonly putRight: (
    threadId: string,
    by: string,
    line: number,
    text: string,
    attachments?: readonly Attachment[],
  ) => Promise<StaffResult>;
  readonly note: (threadId: string, by: string, text: string) => Promise<StaffResult>;
  /** Hands the thread to a colleague. */
  readonly pass: (threadId: string, by: string, to: string) => Promise<StaffResult>;
  readonly start: () => void;
  /** Ends after the turn at work is saved; what is still unhandled or unsent waits in the store. */
  readonly stop: () => Promise<void>;
  /** Resolves when nothing waits to be handled or sent now: for tests and for `ask`. */
  readonly idle: () => Promise<void>;
};

export type StaffResult =
  | { readonly kind: 'done' }
  | { readonly kind: 'taken-by'; readonly name: string }
  /** Also for a line that is not there or that somebody else said. */
  | { readonly kind: 'no-such-thread' };

/** Load, turn, save, act: the only place where the pure core meets the outside world. */
export function createShell(parts: ShellParts): Shell {
  const { store, clock, log, served } = parts;
  const direct = directNotices(parts);
  const changed = (threadId: string): void => parts.onChange?.(threadId);
  const deliveries = parts.channels.map(
    (channel): Delivery => deliverAll(channel, { store, clock, log, onChange: changed }),
  );
  const wakeSenders = (): void => {
    for (const delivery of deliveries) delivery.wake();
  };

  const handle = async (received: Received): Promise<TurnResult | null> => {
    const thread = await store.thread(received.threadId);
    if (thread === null) return null;
    const binding = await bindingFor(thread, received.message, store, clock.nowMs());
    const nowMs = clock.nowMs();
    const { thread: after, replies, events } = turn(thread, received.message, served(), binding, nowMs);
    return { seq: received.seq, thread: after, replies, events, atMs: nowMs };
  };

  const worker = createWakeable(async () => {
    const waiting = await store.nextMessages(MOST_AT_ONCE, new Set());
    if (waiting.length === 0) return false;
    const results = (await Promise.all(waiting.map(handle))).filter((each) => each !== null);
    const saved = await store.saveTurns(results);
    saved.forEach((outcome, i) => {
      const threadId = results[i]?.thread.id ?? '';
      if (outcome === 'saved') changed(threadId);
      else log.debug({ threadId }, 'the thread changed meanwhile; its message is taken again');
    });
    wakeSenders();
    return true;
  }, log);

  const act = async (
    threadId: string,
    action: (thread: Thread, nowMs: number) => ActionResult,
  ): Promise<StaffResult> => {
    for (;;) {
      const thread = await store.thread(threadId);
      if (thread === null) return { kind: 'no-such-thread' };
      const nowMs = clock.nowMs();
      const result = action(thread, nowMs);
      if (result.kind === 'taken-by') return result;
      const { thread: after, replies, events } = result;
      if ((await store.saveTurn({ seq: null, thread: after, replies, events, atMs: nowMs })) === 'saved') break;
    }
    changed(threadId);
    wakeSenders();
    return { kind: 'done' };
  };

  /** The line as `by` first said it, when `id` is that line or one that put it right. */
  const saidIn = async (threadId: string, by: string, id: number): Promise<{ id: number; reply: Reply } | null> => {
    const lineAt = async (at: number) => (await store.lines(threadId, at - 1)).find((line) => line.id === at);
    const named = await lineAt(id);
    const first = named?.reply?.putsRight === undefined ? named : await lineAt(named.reply.putsRight);
    return first?.reply?.from === by ? { id: first.id, reply: first.reply } : null;
  };

  return {
    receive: async (message) => {
      const makeThread = (): Thread =>
        newThread({ id: randomUUID(), channel: message.channel, address: message.address }, clock.nowMs());
      try {
        const { kind, threadId } = await store.receive(message, makeThread);
        if (kind === 'stored') changed(threadId);
      } catch (error) {
        await direct(message);
        throw error;
      }
      worker.wake();
    },
    take: (threadId, by) => act(threadId, (thread, nowMs) => takeThread(thread, by, nowMs)),
    giveBack: (threadId, by) => act(threadId, (thread, nowMs) => giveBack(thread, by, nowMs)),
    say: (threadId, by, text, attachments = []) =>
      act(threadId, (thread, nowMs) => staffSays(thread, by, text, attachments, nowMs)),
    putRight: async (threadId, by, id, text, attachments) => {
      const line = await saidIn(threadId, by, id);
      if (line === null) return { kind: 'no-such-thread' };
      return act(threadId, (thread) => putRight(thread, by, line, text, attachments ?? attachmentsOf(line.reply)));
    },
    note: (threadId, by, text) => act(threadId, (thread) => staffNotes(thread, by, text)),
    pass: (threadId, by, to) => act(threadId, (thread, nowMs) => handOver(thread, by, to, nowMs)),
    start: () => {
      worker.start();
      for (const delivery of deliveries) delivery.start();
    },
    stop: async () => {
      await worker.stop();
      await Promise.all(deliveries.map((delivery) => delivery.stop()));
    },
    idle: async () => {
      await worker.idle();
      await Promise.all(deliveries.map((delivery) => delivery.idle()));
    },
  };
}

/** Finds the booking of a thread, or the one that a link or code in the message names. */
async function bindingFor(thread: Thread, message: Message, store: Store, nowMs: number): Promise<Binding> {
  const own = thread.booking === null ? null : await store.booking(thread.booking);
  const named = await bookingNamed(message, thread, store, nowMs);
  if (named === 'wrong') return { booking: own, code: own === null ? 'wrong' : 'none' };
  if (named === null || named.ref === own?.ref) return { booking: own, code: 'none' };
  return { booking: named, code: 'right' };
}

async function bookingNamed(
  message: Message,
  thread: Thread,
  store: Store,
  nowMs: number,
): Promise<Booking | 'wrong' | null> {
  const token = message.startToken ?? linkTokenIn(message.text);
  if (token !== null) {
    const found = await store.token(hashOf(token), 'chat', nowMs);
    return found === null ? 'wrong' : ((await store.booking(found.subject)) ?? 'wrong');
  }
  const code = codeIn(message.text);
  if (code === null || thread.booking !== null) return null;
  // While too many wrong codes are counted no code is looked up, so that a right guess cannot be told from a wrong one.
  if (codeWaitMs(thread.memory.wrongCodesAtMs, nowMs) !== null) return 'wrong';
  const found = await store.token(hashOf(code), 'code', nowMs);
  return found === null ? 'wrong' : ((await store.booking(found.subject)) ?? 'wrong');
}

const MOST_DIRECT_KEYS = 10_000;

/**
 * While the store is down a danger's notice is sent at once, past the outbox: once for each key in this process.
 * The message stays unconfirmed, so that it comes again and is written, and the notice with it, when the store is back.
 */
function directNotices({ channels, served, clock, log }: ShellParts): (message: Message) => Promise<void> {
  const told = new Set<string>();
  return async (message) => {
    const key = `${message.channel} ${message.key}`;
    if (told.has(key)) return;
    const nowMs = clock.nowMs();
    const thread = newThread({ id: '', channel: message.channel, address: message.address }, nowMs);
    const { replies } = turn(thread, message, served(), { booking: null, code: 'none' }, nowMs);
    const notice = replies.find((reply) => reply.kind === 'notice');
    const channel = channels.find((each) => each.name === message.channel);
    if (notice === undefined || channel === undefined) return;
    told.add(key);
    if (told.size > MOST_DIRECT_KEYS) told.delete([...told][0] ?? '');
    const receipt = await channel.deliver(notice, message);
    log.error({ receipt: receipt.kind }, 'the store is down; a notice was sent directly');
  };
}
