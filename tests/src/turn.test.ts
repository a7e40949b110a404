import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { messageOf } from '../../adapters/console/ask-lines.ts';
import { type Booking, newThread, type Thread, takeThread, turn } from '../../src/index.ts';
import { booking } from '../helpers/a-booking.ts';
import { realServed } from '../helpers/real-graph.ts';

const served = realServed();
const NOW = Date.parse('2027-07-15T11:00:00Z');

/** What people and machines send: words of the trade, signs of every script, control and zero-width characters, long runs. */
const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.constantFrom(
    '',
    ' ',
    '\u0000',
    '\u202eno gas',
    '\u200bfire\u200b',
    'yes',
    'no',
    '2',
    'the second one',
    'a'.repeat(9000),
    'fridge '.repeat(1500),
    'K7QM-4T2X',
    '/start',
    '🔥🔥',
    '))))',
    'how do i light the hob and where is the tap',
  ),
  fc.constantFrom(
    'smell gas',
    'no water',
    'heating wont start',
    'can i run the kettle on 10 amps',
    'talk to a person',
    'hello',
    'still stuck',
    'that worked',
    'never mind',
    'cannot tell',
    'go back',
    'skip',
    'what have we tried',
    'and on 16 amps',
  ),
);
const choice = fc.option(
  fc.oneof(
    fc.string({ maxLength: 64 }),
    fc.constantFrom(
      't:water-none',
      't:nowhere',
      's:yes:water-none',
      's:worked:water-none',
      'ok:water-none',
      'i:10 A',
      'd:no',
      'none',
      'person',
      'resume',
      'never-mind',
    ),
  ),
  { freq: 4 },
);
const message = fc.record({
  text,
  choice,
  edit: fc.boolean(),
  voice: fc.boolean(),
  booked: fc.boolean(),
  waitMs: fc.integer({ min: 0, max: 90_000_000 }),
});

type Said = { text: string; choice: string | null; edit: boolean; voice: boolean; waitMs: number };

function say(thread: Thread, said: Said, i: number, nowMs: number, booked: Booking | null) {
  const attachments = said.voice ? [{ kind: 'voice' as const, file: 'v' }] : [];
  const incoming = { ...messageOf(said.text, i, nowMs, said.choice), edit: said.edit, attachments };
  return turn(thread, incoming, served, { booking: booked, code: 'none' }, nowMs);
}

function play(
  said: readonly Said[],
  booked: Booking | null,
  each: (turned: ReturnType<typeof turn>, before: Thread) => void,
): void {
  let thread = newThread(
    { id: 't', channel: 'test', address: 'a', booking: booked?.ref ?? null, van: booked?.van ?? null },
    NOW,
  );
  let nowMs = NOW;
  said.forEach((one, i) => {
    nowMs += one.waitMs;
    const turned = say(thread, one, i, nowMs, booked);
    each(turned, thread);
    thread = turned.thread;
  });
}

describe('turn', () => {
  it('answers anything at all without throwing, the same way each time, in words that can be stored', () => {
    fc.assert(
      fc.property(fc.array(message, { maxLength: 8 }), fc.boolean(), (said, booked) => {
        play(said, booked ? booking : null, (turned, before) => {
          expect(JSON.parse(JSON.stringify(turned.thread))).toEqual(turned.thread);
          for (const reply of turned.replies) {
            for (const one of reply.choices) expect(new TextEncoder().encode(one.id).length).toBeLessThanOrEqual(64);
          }
          expect(turned.thread.id).toBe(before.id);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('says nothing but notices while staff have the thread', () => {
    fc.assert(
      fc.property(fc.array(message, { minLength: 1, maxLength: 5 }), (said) => {
        const taken = takeThread(
          newThread({ id: 't', channel: 'test', address: 'a', booking: 'BR-1', van: 'wren' }, NOW),
          'Gethin',
          NOW,
        );
        if (taken.kind !== 'done') throw new Error('nobody else had it');
        let { thread } = taken;
        said.forEach((one, i) => {
          const turned = say(thread, one, i, NOW + i, booking);
          expect(turned.replies.every((reply) => reply.kind === 'notice')).toBe(true);
          expect(turned.thread.keeper).toBe('staff');
          thread = turned.thread;
        });
      }),
      { numRuns: 150 },
    );
  });

  it('says a notice before anything else, and only with the thread passed', () => {
    fc.assert(
      fc.property(fc.array(message, { maxLength: 6 }), fc.boolean(), (said, booked) => {
        play(said, booked ? booking : null, ({ replies, thread }) => {
          const at = replies.findIndex((reply) => reply.kind === 'notice');
          if (at < 0) return;
          expect(at).toBe(0);
          expect(thread.keeper).not.toBe('bot');
        });
      }),
      { numRuns: 150 },
    );
  });

  it('never answers with a topic outside the van', () => {
    const scope = served.knowledge.vans.get('wren');
    fc.assert(
      fc.property(fc.array(message, { maxLength: 4 }), (said) => {
        play(said, booking, ({ moves }) => {
          for (const move of moves)
            if (move.kind === 'answer' || move.kind === 'calculation') expect(scope?.topics.has(move.topic)).toBe(true);
        });
      }),
      { numRuns: 100 },
    );
  });
});
