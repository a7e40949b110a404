import type { Message, Reply, Saved, Store, Thread, TurnResult } from '../../src/index.ts';
import type { Writer } from './group-commit.ts';
import type { History } from './history.ts';
import type { Inbox } from './inbox.ts';
import type { Outbox } from './outbox.ts';
import type { Threads } from './threads.ts';

type Rooms = {
  readonly threads: Threads;
  readonly inbox: Inbox;
  readonly outbox: Outbox;
  readonly history: History;
};

/** What is written together: a message with its line, and everything that one turn leaves behind. */
export function turnsIn(
  writer: Writer,
  { threads, inbox, outbox, history }: Rooms,
): Pick<Store, 'receive' | 'saveTurn' | 'saveTurns' | 'post'> {
  const receive = (message: Message, newThread: () => Thread): Awaited<ReturnType<Store['receive']>> => {
    const known = inbox.threadOf(message.channel, message.key);
    if (known !== null) return { kind: 'repeated', threadId: known };
    const threadId = (threads.at(message) ?? added(newThread(), message)).id;
    inbox.add(history.addLine(threadId, message.atMs, null), threadId, message);
    return { kind: 'stored', threadId };
  };
  const added = (thread: Thread, { channel, address }: Message): Thread => {
    const fits = thread.channel === channel && thread.address === address;
    if (!fits || !threads.add(thread)) throw new Error(`thread ${thread.id} cannot be added for ${channel} ${address}`);
    return thread;
  };
  const say = (thread: Thread, reply: Reply, atMs: number): void =>
    outbox.add(history.addLine(thread.id, atMs, reply), thread);

  const saveTurn = ({ seq, thread, replies, events, atMs }: TurnResult): Saved => {
    // Looked at before anything is written: there is nothing to undo when the message was handled or the thread changed.
    if (seq !== null && !inbox.isWaiting(seq, thread.id)) return 'changed-meanwhile';
    if (!(thread.version === 0 ? threads.add(thread) : threads.change(thread))) return 'changed-meanwhile';
    if (seq !== null) inbox.handle(seq, atMs);
    for (const reply of replies) say(thread, reply, atMs);
    for (const event of events) history.addEvent(thread.id, atMs, event);
    return 'saved';
  };

  return {
    receive: (message, newThread) => writer.write(() => receive(message, newThread)),
    saveTurn: (result) => writer.write(() => saveTurn(result)),
    saveTurns: (results) => writer.write(() => results.map(saveTurn)),
    post: (threadId, reply, atMs) =>
      writer.write(() => {
        const thread = threads.byId(threadId);
        if (thread === null) throw new Error(`there is no thread ${threadId} to post to`);
        say(thread, reply, atMs);
      }),
  };
}
