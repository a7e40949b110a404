import fc from 'fast-check';
import type { Receipt, Thread } from '../../src/index.ts';
import { aBooking, aGap, aMessage, aReply, type Kept, NOW, threadFor } from './store-fixtures.ts';

/**
 * One thing done to a store. It gives everything that came back, so that two stores can be compared step by step.
 * Names are drawn from few, so that steps meet: the same key twice, one thread changed by two, a row settled again.
 */
export type Step = { readonly name: string; readonly run: (kept: Kept) => Promise<unknown> };

const few = (...names: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...names);
const address = few('a', 'b', 'c');
const key = few('1', '2', '3', '4', '5', '6');
const channel = few('telegram', 'web');
/** Anything a hirer may send, halves of letters too; and what stands in a column of its own: whole letters. */
const text = fc.string({ unit: 'binary', maxLength: 20 });
const letters = fc.string({ unit: 'grapheme', maxLength: 20 });
const most = fc.integer({ min: 0, max: 4 });
const instant = fc.integer({ min: NOW, max: NOW + 10 });
const busy = fc.uniqueArray(
  fc.oneof(
    address,
    address.map((each) => threadId('telegram', each)),
  ),
  { maxLength: 2 },
);
const tokenUse = fc.constantFrom('chat' as const, 'sign-in' as const);
const receipt: fc.Arbitrary<Receipt> = fc.oneof(
  fc.record({ kind: fc.constant('delivered' as const), id: text }),
  fc.record({ kind: fc.constant('later' as const), afterMs: fc.integer({ min: 0, max: 5 }), why: text }),
  fc.record({ kind: fc.constantFrom('unknown' as const, 'gone' as const), why: text }),
);
const booking = fc
  .record({
    ref: few('BR-1', 'BR-2', 'br-1'),
    note: letters,
    people: fc.option(
      fc.record({ dogs: fc.nat(2), children: fc.array(fc.nat(17), { maxLength: 3 }), adults: fc.nat(6) }),
    ),
    from: few('2027-07-12', '2027-07-13'),
    amps: fc.option(fc.constantFrom(0, 6, 10, 16)),
    phone: fc.option(letters),
  })
  .map(({ ref, ...rest }) => aBooking(ref, rest));

function threadId(name: string, at: string): string {
  return threadFor(aMessage('', { channel: name, address: at }))().id;
}

export const step: fc.Arbitrary<Step> = fc.oneof(
  fc.tuple(channel, key, address, text).map(
    ([name, k, at, words]): Step => ({
      name: `receive ${name} ${k} ${at}`,
      run: ({ store }) => {
        const message = aMessage(k, { channel: name, address: at, text: words });
        return store.receive(message, threadFor(message));
      },
    }),
  ),
  fc.tuple(most, busy, fc.integer({ min: 0, max: 2 }), fc.array(text, { maxLength: 2 })).map(
    ([n, held, behind, words]): Step => ({
      name: `answer ${n} messages, with threads ${behind} versions behind`,
      run: async ({ store }) => {
        const waiting = await store.nextMessages(n, new Set(held));
        const results = await Promise.all(
          waiting.map(async ({ seq, threadId: id, message }) => {
            const thread = (await store.thread(id)) as Thread;
            const old = { ...thread, version: Math.max(1, thread.version - behind), booking: words[0] ?? null };
            const replies = words.map((each) => aReply(each, { from: message.from }));
            return { seq, thread: old, replies, events: [aGap(message.text)], atMs: message.atMs };
          }),
        );
        return [waiting, await store.saveTurns([...results, ...results.slice(0, 1)])];
      },
    }),
  ),
  fc.tuple(channel, address, fc.boolean(), instant).map(
    ([name, at, takes, atMs]): Step => ({
      name: `${takes ? 'take' : 'give back'} ${name} ${at}`,
      run: async ({ store }) => {
        const thread =
          (await store.threadAt({ channel: name, address: at })) ??
          threadFor(aMessage('', { channel: name, address: at }))();
        const changed = { ...thread, keeper: takes ? ('staff' as const) : ('bot' as const), sinceMs: atMs };
        const event = { kind: takes ? ('taken' as const) : ('given-back' as const), by: 'Nessa' };
        return store.saveTurn({ seq: null, thread: changed, replies: [aReply(at)], events: [event], atMs });
      },
    }),
  ),
  fc.tuple(channel, address, text).map(
    ([name, at, words]): Step => ({
      name: `post ${name} ${at}`,
      run: ({ store }) => store.post(threadId(name, at), aReply(words), NOW).catch((error: Error) => error.message),
    }),
  ),
  fc.tuple(channel, instant, most, busy, receipt, fc.boolean()).map(
    ([name, nowMs, n, held, ending, marks]): Step => ({
      name: `send ${n} on ${name}: ${ending.kind}`,
      run: async ({ store }) => {
        const rows = await store.nextToSend(name, nowMs, n, new Set(held));
        if (marks) await store.markSending(rows.map((row) => row.id));
        for (const row of rows.slice(0, 2)) await store.settle(row.id, ending, nowMs);
        return rows;
      },
    }),
  ),
  fc.array(booking, { maxLength: 3 }).map(
    (bookings): Step => ({
      name: `import ${bookings.map((each) => each.ref).join(', ')}`,
      run: ({ store }) => store.putBookings(bookings),
    }),
  ),
  fc.tuple(few('h1', 'h2'), tokenUse, instant, few('put', 'find', 'list', 'spend', 'drop')).map(
    ([hash, use, atMs, what]): Step => ({
      name: `${what} token ${hash}`,
      run: ({ store }) => {
        if (what === 'put') return store.putToken({ hash, use, subject: 's', data: { role: what }, expiresMs: atMs });
        if (what === 'find') return store.token(hash, use, atMs);
        if (what === 'list') return store.tokens(use, atMs);
        return what === 'spend' ? store.spendToken(hash, use, atMs) : store.dropToken(hash);
      },
    }),
  ),
  fc
    .tuple(
      fc.string({ unit: fc.constantFrom('a', 'B', '%', '_', '🚐', 'é', '\uffee'), maxLength: 3 }),
      letters,
      fc.boolean(),
    )
    .map(
      ([name, value, puts]): Step => ({
        name: `note ${name}`,
        run: ({ store }) => (puts ? store.putNote(name, value) : store.notes(name)),
      }),
    ),
  fc.tuple(few('j1', 'j2', 'j3'), instant, few('put', 'drop', 'drop as it was', 'due')).map(
    ([name, atMs, what]): Step => ({
      name: `${what} job ${name}`,
      run: ({ jobs }) => {
        if (what === 'put') return jobs.put({ key: name, dueMs: atMs, data: { name } });
        if (what === 'due') return Promise.all([jobs.due(atMs), jobs.nextDueMs()]);
        return what === 'drop' ? jobs.drop(name) : jobs.drop(name, atMs);
      },
    }),
  ),
);

/** Everything that can be seen of a store. */
export async function everything({ store, jobs }: Kept): Promise<unknown> {
  const threads = await store.threads({});
  const never = NOW + 1_000_000;
  return {
    threads,
    byChannel: await store.threads({ channel: 'web', keeper: ['bot'] }),
    lines: await Promise.all(threads.map((thread) => store.lines(thread.id))),
    events: [await store.events({}), await store.events({ kinds: ['gap', 'taken'], after: 3 })],
    waiting: await store.nextMessages(100, new Set()),
    outbox: [
      await store.nextToSend('telegram', never, 100, new Set()),
      await store.nextToSend('web', never, 100, new Set()),
    ],
    bookings: await store.bookings(),
    notes: await store.notes(''),
    jobs: [await jobs.due(never), await jobs.nextDueMs()],
  };
}
