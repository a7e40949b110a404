import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { plainText, type Store, type TurnResult } from '../../src/index.ts';
import {
  aBooking,
  aGap,
  aMessage,
  answer,
  aReply,
  IDLE,
  type Keeper,
  NOW,
  receive,
  threadFor,
  threadNow,
} from './store-fixtures.ts';

/** What every store keeps to, whatever it is made of. */
export function storeContract(keeper: Keeper): void {
  describe(`store contract: ${keeper.name}`, () => {
    let store: Store;
    let end: () => Promise<void>;
    beforeEach(async () => {
      ({ store, end } = await keeper.open());
    });
    afterEach(() => end());

    const keysWaiting = async (busy = IDLE, most = 100): Promise<string[]> =>
      (await store.nextMessages(most, busy)).map((each) => each.message.key);
    const textsToSend = async (nowMs = NOW, channel = 'telegram', busy = IDLE, most = 100): Promise<string[]> =>
      (await store.nextToSend(channel, nowMs, most, busy)).map((row) => plainText(row.reply));
    const turnOf = async (threadId: string, given: Partial<TurnResult> = {}): Promise<TurnResult> => ({
      seq: null,
      thread: await threadNow(store, threadId),
      replies: [],
      events: [],
      atMs: NOW,
      ...given,
    });

    describe('receiving', () => {
      test('adds the thread of an address with its first message and finds it with the second', async () => {
        const first = await store.receive(aMessage('1'), threadFor(aMessage('1')));
        const second = await store.receive(aMessage('2'), () => {
          throw new Error('a second thread is made for one address');
        });
        expect(first).toEqual({ kind: 'stored', threadId: 'thread of telegram chat-1' });
        expect(second).toEqual(first);
        expect(await store.threadAt({ channel: 'telegram', address: 'chat-1' })).toEqual({
          ...threadFor(aMessage('1'))(),
          version: 1,
        });
      });

      test('stores a message once, however often it arrives', async () => {
        await receive(store, aMessage('1'));
        const again = await store.receive(aMessage('1', { text: 'changed on the way' }), threadFor(aMessage('1')));
        expect(again).toEqual({ kind: 'repeated', threadId: 'thread of telegram chat-1' });
        expect((await store.lines('thread of telegram chat-1')).map((line) => line.text)).toEqual(['text of 1']);
      });

      test('stores one of many that arrive in the same instant', async () => {
        const message = aMessage('1');
        const outcomes = await Promise.all(
          Array.from({ length: 20 }, () => store.receive(message, threadFor(message))),
        );
        expect(outcomes.filter((each) => each.kind === 'stored')).toHaveLength(1);
        expect(await keysWaiting()).toEqual(['1']);
      });

      test('knows a repeated message after it was answered', async () => {
        const threadId = await receive(store, aMessage('1'));
        await answer(store, threadId, 'An answer');
        expect((await store.receive(aMessage('1'), threadFor(aMessage('1')))).kind).toBe('repeated');
        expect(await keysWaiting()).toEqual([]);
      });

      test('takes the same key on another channel for another message', async () => {
        await receive(store, aMessage('1'));
        await receive(store, aMessage('1', { channel: 'web' }));
        expect(await store.nextMessages(10, IDLE)).toHaveLength(2);
      });

      test('gives back a message exactly as it came', async () => {
        const message = aMessage('1', {
          text: `zero width \u200b, right to left \u202e, nul \u0000, half a pair \ud83d, a whole one 🚐`,
          choice: 'topic:hob-lighting',
          attachments: [
            { kind: 'photo', file: 'AgAC', name: 'panel.jpg' },
            { kind: 'location', latitude: 54.5, longitude: -3.25 },
          ],
          edit: true,
          from: null,
          startToken: 'abc',
        });
        await receive(store, message);
        expect((await store.nextMessages(1, IDLE))[0]?.message).toEqual(message);
      });

      test('refuses a new thread that lives elsewhere, and stores nothing', async () => {
        const elsewhere = threadFor(aMessage('1', { address: 'chat-2' }));
        await expect(store.receive(aMessage('1'), elsewhere)).rejects.toThrow('cannot be added');
        expect(await store.threads({})).toEqual([]);
        expect(await keysWaiting()).toEqual([]);
      });

      test('does not let a failing neighbour spoil what arrives in the same instant', async () => {
        const good = aMessage('1');
        const bad = aMessage('2', { address: 'chat-2' });
        const outcomes = await Promise.allSettled([
          store.receive(good, threadFor(good)),
          store.receive(bad, () => {
            throw new Error('no thread today');
          }),
          store.receive(aMessage('3'), threadFor(good)),
        ]);
        expect(outcomes.map((each) => each.status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
        expect((await store.lines('thread of telegram chat-1')).map((line) => line.message?.key)).toEqual(['1', '3']);
      });
    });

    describe('the order of messages', () => {
      test('gives the oldest unhandled message of each thread, in the order received', async () => {
        for (const [key, address] of [
          ['1', 'b'],
          ['2', 'a'],
          ['3', 'b'],
          ['4', 'c'],
          ['5', 'a'],
        ] as const) {
          await receive(store, aMessage(key, { address }));
        }
        expect(await keysWaiting()).toEqual(['1', '2', '4']);
        await answer(store, 'thread of telegram b', 'done');
        expect(await keysWaiting()).toEqual(['2', '3', '4']);
      });

      test('leaves busy threads out and still gives as many as asked', async () => {
        for (const address of ['a', 'b', 'c', 'd']) await receive(store, aMessage(address, { address }));
        const busy = new Set(['thread of telegram a', 'thread of telegram c', 'a thread that has nothing']);
        expect(await keysWaiting(busy, 2)).toEqual(['b', 'd']);
        expect(await keysWaiting(IDLE, 2)).toEqual(['a', 'b']);
      });

      test('gives a message again until its turn is saved', async () => {
        const threadId = await receive(store, aMessage('1'));
        expect(await keysWaiting()).toEqual(['1']);
        expect(await keysWaiting()).toEqual(['1']);
        await answer(store, threadId);
        expect(await keysWaiting()).toEqual([]);
      });
    });

    describe('saving a turn', () => {
      test('writes thread, replies, events and handled together', async () => {
        const threadId = await receive(store, aMessage('1'));
        const [next] = await store.nextMessages(1, IDLE);
        const loaded = await threadNow(store, threadId);
        const thread = { ...loaded, keeper: 'waiting', reason: 'asked', booking: 'BR-2701', van: 'wren' } as const;
        const replies = [aReply('First'), aReply('Second', { from: 'Nessa' })];
        const events = [aGap('tv'), { kind: 'taken', by: 'Nessa' } as const];
        const saved = await store.saveTurn({ seq: next?.seq ?? null, thread, replies, events, atMs: NOW + 5 });

        expect(saved).toBe('saved');
        expect(await store.thread(threadId)).toEqual({ ...thread, version: loaded.version + 1 });
        expect(await keysWaiting()).toEqual([]);
        expect(await textsToSend()).toEqual(['First']);
        expect((await store.events({ threadId })).map((each) => [each.event, each.atMs])).toEqual(
          events.map((event) => [event, NOW + 5]),
        );
        expect((await store.lines(threadId)).map(({ who, text, atMs, sent }) => [who, text, atMs, sent])).toEqual([
          ['hirer', 'text of 1', NOW, null],
          ['bot', 'First', NOW + 5, 'waiting'],
          ['Nessa', 'Second', NOW + 5, 'waiting'],
        ]);
      });

      test('refuses a thread that changed meanwhile and writes nothing of the turn', async () => {
        const threadId = await receive(store, aMessage('1'));
        const [next] = await store.nextMessages(1, IDLE);
        const stale = await turnOf(threadId, {
          seq: next?.seq ?? null,
          replies: [aReply('Late')],
          events: [aGap('x')],
        });
        await store.saveTurn(await turnOf(threadId, { thread: { ...stale.thread, keeper: 'staff' } }));

        expect(await store.saveTurn(stale)).toBe('changed-meanwhile');
        expect((await threadNow(store, threadId)).keeper).toBe('staff');
        expect(await keysWaiting()).toEqual(['1']);
        expect(await textsToSend()).toEqual([]);
        expect(await store.events({})).toEqual([]);
        expect(await store.lines(threadId)).toHaveLength(1);
      });

      test('refuses a second turn on a handled message, though the thread was loaded afresh', async () => {
        const threadId = await receive(store, aMessage('1'));
        const [next] = await store.nextMessages(1, IDLE);
        const seq = next?.seq ?? null;
        await store.saveTurn(await turnOf(threadId, { seq, replies: [aReply('Once')] }));
        expect(await store.saveTurn(await turnOf(threadId, { seq, replies: [aReply('Twice')] }))).toBe(
          'changed-meanwhile',
        );
        expect((await store.lines(threadId)).map((line) => line.text)).toEqual(['text of 1', 'Once']);
      });

      test("refuses another thread's message", async () => {
        await receive(store, aMessage('1', { address: 'a' }));
        const other = await receive(store, aMessage('2', { address: 'b' }));
        const [next] = await store.nextMessages(1, IDLE);
        expect(await store.saveTurn(await turnOf(other, { seq: next?.seq ?? null }))).toBe('changed-meanwhile');
        expect(await keysWaiting()).toEqual(['1', '2']);
      });

      test('lets one of two win that save the same thread in the same instant', async () => {
        const threadId = await receive(store, aMessage('1'));
        const turns = [
          await turnOf(threadId, { replies: [aReply('A')] }),
          await turnOf(threadId, { replies: [aReply('B')] }),
        ];
        const outcomes = await Promise.all(turns.map((each) => store.saveTurn(each)));
        expect(outcomes).toEqual(['saved', 'changed-meanwhile']);
        expect(await textsToSend()).toEqual(['A']);
      });

      test('saves many turns at once, and one that changed meanwhile does not hold up the others', async () => {
        const ids = await Promise.all(['a', 'b', 'c'].map((address) => receive(store, aMessage(address, { address }))));
        const turns = await Promise.all(ids.map((id) => turnOf(id, { replies: [aReply(id)] })));
        await store.saveTurn(await turnOf(ids[1] ?? ''));
        expect(await store.saveTurns(turns)).toEqual(['saved', 'changed-meanwhile', 'saved']);
        expect(await textsToSend()).toEqual([ids[0], ids[2]]);
      });

      test('adds a thread nobody has written in, unless its id or address is taken', async () => {
        const thread = threadFor(aMessage('1'))();
        const turn = { seq: null, thread, replies: [aReply('Welcome')], events: [], atMs: NOW };
        expect(await store.saveTurn(turn)).toBe('saved');
        expect(await store.saveTurn(turn)).toBe('changed-meanwhile');
        expect(await store.saveTurn({ ...turn, thread: { ...thread, id: 'another' } })).toBe('changed-meanwhile');
        expect(await store.saveTurn({ ...turn, thread: { ...thread, address: 'chat-9' } })).toBe('changed-meanwhile');
        expect((await threadNow(store, thread.id)).version).toBe(1);
        expect(await textsToSend()).toEqual(['Welcome']);
      });

      test('says changed-meanwhile of a saved thread it does not have', async () => {
        const thread = { ...threadFor(aMessage('1'))(), version: 3 };
        expect(await store.saveTurn({ seq: null, thread, replies: [], events: [], atMs: NOW })).toBe(
          'changed-meanwhile',
        );
        expect(await store.threads({})).toEqual([]);
      });
    });

    describe('reading threads', () => {
      test('filters by keeper, booking and channel, the longest waiting first', async () => {
        const add = async (id: string, sinceMs: number, given: object): Promise<void> => {
          const made = threadFor(aMessage('1', { address: id, channel: id.startsWith('w') ? 'web' : 'telegram' }))();
          const thread = { ...made, id, sinceMs, ...given };
          await store.saveTurn({ seq: null, thread, replies: [], events: [], atMs: NOW });
        };
        await add('t1', 30, { keeper: 'waiting', booking: 'BR-1' });
        await add('t2', 20, { keeper: 'staff', booking: 'BR-2' });
        await add('w1', 10, { keeper: 'waiting', booking: 'BR-1' });
        await add('w2', 10, {});
        const ids = async (filter: Parameters<Store['threads']>[0]): Promise<string[]> =>
          (await store.threads(filter)).map((thread) => thread.id);
        expect(await ids({})).toEqual(['w1', 'w2', 't2', 't1']);
        expect(await ids({ keeper: ['waiting', 'staff'] })).toEqual(['w1', 't2', 't1']);
        expect(await ids({ keeper: [] })).toEqual([]);
        expect(await ids({ booking: 'BR-1' })).toEqual(['w1', 't1']);
        expect(await ids({ booking: 'BR-1', channel: 'telegram' })).toEqual(['t1']);
      });

      test('has no thread where there is none', async () => {
        expect(await store.thread('nobody')).toBeNull();
        expect(await store.threadAt({ channel: 'telegram', address: 'nobody' })).toBeNull();
        expect(await store.lines('nobody')).toEqual([]);
      });

      test('gives the lines after the last one seen', async () => {
        const threadId = await receive(store, aMessage('1'));
        await answer(store, threadId, 'An answer');
        const [first] = await store.lines(threadId);
        await receive(store, aMessage('2', { address: 'elsewhere' }));
        const after = await store.lines(threadId, first?.id);
        expect(after.map((line) => line.text)).toEqual(['An answer']);
        expect(after[0]?.reply).toEqual(aReply('An answer'));
        expect(after[0]?.message).toBeNull();
        expect(first?.message).toEqual(aMessage('1'));
      });

      test('gives events by thread, by kind and after the last one seen', async () => {
        const a = await receive(store, aMessage('1', { address: 'a' }));
        const b = await receive(store, aMessage('2', { address: 'b' }));
        await store.saveTurn(await turnOf(a, { events: [aGap('1'), { kind: 'taken', by: 'Nessa' }] }));
        await store.saveTurn(await turnOf(b, { events: [aGap('2')] }));
        const all = await store.events({});
        expect(all.map((each) => each.threadId)).toEqual([a, a, b]);
        expect(await store.events({ threadId: b })).toEqual([all[2]]);
        expect(await store.events({ kinds: ['gap'] })).toEqual([all[0], all[2]]);
        expect(await store.events({ kinds: ['gap'], after: all[0]?.id ?? 0 })).toEqual([all[2]]);
        expect(await store.events({ kinds: [] })).toEqual([]);
      });
    });

    describe('the outbox', () => {
      test('gives the first row of each address of the channel, in order', async () => {
        const a = await receive(store, aMessage('1', { address: 'a' }));
        const b = await receive(store, aMessage('2', { address: 'b' }));
        const web = await receive(store, aMessage('3', { channel: 'web' }));
        await store.post(b, aReply('b1'), NOW);
        await store.post(a, aReply('a1'), NOW);
        await store.post(b, aReply('b2'), NOW);
        await store.post(web, aReply('w1'), NOW);
        expect(await textsToSend()).toEqual(['b1', 'a1']);
        expect(await textsToSend(NOW, 'web')).toEqual(['w1']);
        expect(await textsToSend(NOW, 'telegram', new Set(['b']))).toEqual(['a1']);
        expect(await textsToSend(NOW, 'telegram', new Set(['b', 'x']), 1)).toEqual(['a1']);
        expect(await textsToSend(NOW, 'telegram', IDLE, 1)).toEqual(['b1']);
      });

      test.each(['delivered', 'unknown', 'gone'] as const)(
        'ends a row that is %s and gives the next of its address',
        async (kind) => {
          const threadId = await receive(store, aMessage('1'));
          await store.post(threadId, aReply('one'), NOW);
          await store.post(threadId, aReply('two'), NOW);
          const [row] = await store.nextToSend('telegram', NOW, 1, IDLE);
          await store.settle(row?.id ?? 0, kind === 'delivered' ? { kind, id: '77' } : { kind, why: 'so' }, NOW);
          expect(await textsToSend()).toEqual(['two']);
          expect((await store.lines(threadId)).map((line) => line.sent)).toEqual([null, kind, 'waiting']);
        },
      );

      test('keeps a row that is to be sent later, counts the try and holds back what follows it', async () => {
        const threadId = await receive(store, aMessage('1'));
        const other = await receive(store, aMessage('2', { address: 'chat-2' }));
        await store.post(threadId, aReply('one'), NOW);
        await store.post(threadId, aReply('two'), NOW);
        await store.post(other, aReply('three'), NOW);
        const [row] = await store.nextToSend('telegram', NOW, 1, IDLE);
        await store.settle(row?.id ?? 0, { kind: 'later', afterMs: 3_000, why: 'too many' }, NOW);
        expect(await textsToSend(NOW + 2_999)).toEqual(['three']);
        expect(await textsToSend(NOW + 3_000)).toEqual(['one', 'three']);
        const [again] = await store.nextToSend('telegram', NOW + 3_000, 1, IDLE);
        expect(again).toEqual({ ...row, tries: 1, notBeforeMs: NOW + 3_000 });
      });

      test('does nothing to a row that has ended', async () => {
        const threadId = await receive(store, aMessage('1'));
        await store.post(threadId, aReply('one'), NOW);
        const [row] = await store.nextToSend('telegram', NOW, 1, IDLE);
        const id = row?.id ?? 0;
        await store.settle(id, { kind: 'delivered', id: '77' }, NOW);
        await store.settle(id, { kind: 'later', afterMs: 0, why: 'a late echo' }, NOW);
        await store.settle(id, { kind: 'gone', why: 'a late echo' }, NOW);
        await store.markSending([id]);
        expect(await textsToSend()).toEqual([]);
        expect((await store.lines(threadId))[1]?.sent).toBe('delivered');
      });

      test('gives with what puts a line right the newest of it that has arrived', async () => {
        const threadId = await receive(store, aMessage('1'));
        const next = async () => (await store.nextToSend('telegram', NOW, 1, IDLE))[0];
        await store.post(threadId, aReply('red'), NOW);
        const first = await next();
        expect(first?.arrived).toBeNull();
        await store.settle(first?.id ?? 0, { kind: 'delivered', id: '77' }, NOW);
        await store.post(threadId, aReply('something else'), NOW);
        await store.settle((await next())?.id ?? 0, { kind: 'delivered', id: '78' }, NOW);
        const right = { putsRight: first?.id ?? 0 };
        await store.post(threadId, aReply('blue', right), NOW);
        const second = await next();
        expect(second?.arrived).toEqual({ id: '77', reply: aReply('red') });
        await store.settle(second?.id ?? 0, { kind: 'delivered', id: '79' }, NOW);
        await store.post(threadId, aReply('green', right), NOW);
        const third = await next();
        expect(third?.arrived).toEqual({ id: '79', reply: aReply('blue', right) });
        await store.settle(third?.id ?? 0, { kind: 'unknown', why: 'so' }, NOW);
        await store.post(threadId, aReply('white', right), NOW);
        expect((await next())?.arrived).toEqual({ id: '79', reply: aReply('blue', right) });
      });

      test('remembers that a row was on its way until it is settled', async () => {
        const threadId = await receive(store, aMessage('1'));
        await store.post(threadId, aReply('one'), NOW);
        const [row] = await store.nextToSend('telegram', NOW, 1, IDLE);
        expect(row?.maybeSent).toBe(false);
        await store.markSending([row?.id ?? 0]);
        expect((await store.nextToSend('telegram', NOW, 1, IDLE))[0]?.maybeSent).toBe(true);
        await store.settle(row?.id ?? 0, { kind: 'later', afterMs: 0, why: 'refused' }, NOW);
        expect((await store.nextToSend('telegram', NOW, 1, IDLE))[0]?.maybeSent).toBe(false);
      });

      test('posts into a thread without changing its version', async () => {
        const threadId = await receive(store, aMessage('1'));
        const { version } = await threadNow(store, threadId);
        await store.post(threadId, aReply('On our way', { from: 'Gethin' }), NOW + 9);
        expect((await threadNow(store, threadId)).version).toBe(version);
        const [, line] = await store.lines(threadId);
        expect(line).toMatchObject({ who: 'Gethin', text: 'On our way', atMs: NOW + 9, sent: 'waiting' });
        await expect(store.post('nobody', aReply('x'), NOW)).rejects.toThrow('nobody');
      });
    });

    describe('bookings', () => {
      test('adds, changes and leaves alone, and never doubles', async () => {
        const one = aBooking('BR-2701');
        const two = aBooking('BR-2702', { people: null, site: null, pitch: null, amps: null, to: null, phone: null });
        expect(await store.putBookings([one, two])).toEqual({ added: 2, changed: 0, same: 0 });
        expect(await store.putBookings([{ ...one, van: 'dunlin' }, two])).toEqual({ added: 0, changed: 1, same: 1 });
        expect(await store.booking('BR-2701')).toEqual({ ...one, van: 'dunlin' });
        expect(await store.booking('BR-2702')).toEqual(two);
        expect(await store.bookings()).toHaveLength(2);
        expect(await store.booking('BR-9999')).toBeNull();
      });

      test('notices every field that changes', async () => {
        const booking = aBooking('BR-2701');
        await store.putBookings([booking]);
        const changes = [
          { hirer: 'x' },
          { firstName: 'x' },
          { people: { adults: 1, children: [9, 12], dogs: 1 } },
          { people: null },
          { people: { adults: 2, children: [9], dogs: 1 } },
          { people: { adults: 2, children: [9, 12], dogs: 0 } },
          { van: 'x' },
          { site: null },
          { pitch: null },
          { amps: 0 },
          { from: '2027-07-13' },
          { to: null },
          { phone: null },
          { note: '' },
        ];
        for (const change of changes) {
          expect(await store.putBookings([{ ...booking, ...change }]), JSON.stringify(change)).toMatchObject({
            changed: 1,
          });
          await store.putBookings([booking]);
        }
      });

      test('lists them by first day, then ref', async () => {
        await store.putBookings([
          aBooking('BR-3', { from: '2027-08-01' }),
          aBooking('BR-2', { from: '2027-05-28' }),
          aBooking('BR-1', { from: '2027-08-01' }),
        ]);
        expect((await store.bookings()).map((booking) => booking.ref)).toEqual(['BR-2', 'BR-1', 'BR-3']);
      });
    });

    describe('tokens', () => {
      const token = {
        hash: 'h1',
        use: 'sign-in',
        subject: 'Nessa',
        data: { role: 'operator' },
        expiresMs: NOW + 1_000,
      } as const;

      test('finds a token for its own use until it expires', async () => {
        await store.putToken(token);
        expect(await store.token('h1', 'sign-in', NOW + 999)).toEqual(token);
        expect(await store.token('h1', 'sign-in', NOW + 1_000)).toBeNull();
        expect(await store.token('h1', 'session', NOW)).toBeNull();
        expect(await store.token('h2', 'sign-in', NOW)).toBeNull();
      });

      test('gives a token to one of two who spend it in the same instant', async () => {
        await store.putToken(token);
        const spent = await Promise.all([
          store.spendToken('h1', 'sign-in', NOW),
          store.spendToken('h1', 'sign-in', NOW),
        ]);
        expect(spent).toEqual([token, null]);
        expect(await store.token('h1', 'sign-in', NOW)).toBeNull();
      });

      test('lists the tokens of one use that have not expired, of one subject or of everybody', async () => {
        await store.putToken({ ...token, hash: 'h3', subject: 'gethin' });
        await store.putToken({ ...token, hash: 'h2' });
        await store.putToken(token);
        await store.putToken({ ...token, hash: 'h4', use: 'session' });
        await store.putToken({ ...token, hash: 'h5', expiresMs: NOW });
        const hashes = async (subject?: string) =>
          (await store.tokens('sign-in', NOW, subject)).map((each) => each.hash);
        expect(await hashes('Nessa')).toEqual(['h1', 'h2']);
        expect(await hashes()).toEqual(['h1', 'h2', 'h3']);
        expect(await hashes('nessa')).toEqual([]);
        expect((await store.tokens('sign-in', NOW, 'Nessa'))[0]).toEqual(token);
      });

      test('does not spend a token for another use or after it expired', async () => {
        await store.putToken(token);
        expect(await store.spendToken('h1', 'chat', NOW)).toBeNull();
        expect(await store.spendToken('h1', 'sign-in', NOW + 1_000)).toBeNull();
        expect(await store.token('h1', 'sign-in', NOW)).toEqual(token);
      });

      test('replaces and drops', async () => {
        await store.putToken(token);
        await store.putToken({ ...token, expiresMs: NOW + 9_000 });
        expect((await store.token('h1', 'sign-in', NOW + 5_000))?.subject).toBe('Nessa');
        await store.dropToken('h1');
        await store.dropToken('h1');
        expect(await store.token('h1', 'sign-in', NOW)).toBeNull();
      });
    });

    describe('notes', () => {
      test('keeps the last value of a name', async () => {
        expect(await store.note('telegram.offset')).toBeNull();
        await store.putNote('telegram.offset', '1');
        await store.putNoteSoon('telegram.offset', '2');
        expect(await store.note('telegram.offset')).toBe('2');
        await store.putNote('telegram.offset', '');
        expect(await store.note('telegram.offset')).toBe('');
      });

      test('lists by prefix, sorted, taking no letter for a wildcard', async () => {
        for (const name of ['forum:B', 'forum:a', 'forum:%', 'Forum:c', 'for', 'forumX'])
          await store.putNote(name, name);
        const names = async (prefix: string): Promise<string[]> => (await store.notes(prefix)).map((each) => each.name);
        expect(await names('forum:')).toEqual(['forum:%', 'forum:B', 'forum:a']);
        expect(await names('forum:%')).toEqual(['forum:%']);
        expect(await names('for_m')).toEqual([]);
        expect(await names('')).toEqual(['Forum:c', 'for', 'forum:%', 'forum:B', 'forum:a', 'forumX']);
      });
    });
  });
}
