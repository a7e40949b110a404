import { describe, expect, it } from 'vitest';
import { messageOf } from '../../../adapters/console/ask-lines.ts';
import { type Booking, type Matcher, newThread, plainText, type Served, turn } from '../../../src/index.ts';
import { barelyKnown } from '../../helpers/a-booking.ts';
import { realServed } from '../../helpers/real-graph.ts';

const real = realServed();
const NOW = Date.parse('2027-07-15T11:00:00Z');
const booking = barelyKnown('wren');

/** The firm's bot with a safety reader that finds nothing and a matcher that answers one topic. */
function blind(topic: string, setAside = false): Served {
  const understood: ReturnType<Matcher['understand']>[number] = {
    text: 'oh dear',
    decision: { kind: 'answer', topic, probability: 0.7 },
    ranked: [{ topic, probability: 0.7 }],
    why: { tokens: [], linked: [], features: [], costs: [] },
  };
  return {
    ...real,
    matcher: { understand: () => [understood], nearest: () => understood.ranked },
    readDanger: () => ({ danger: null, why: [], chance: 0, setAside }),
  };
}

const say = (served: Served, booked: Booking | null = booking) => {
  const thread = newThread(
    { id: 't', channel: 'console', address: 't', booking: booked?.ref ?? null, van: booked?.van ?? null },
    NOW,
  );
  return turn(thread, messageOf('oh dear', 0, NOW), served, { booking: booked, code: 'none' }, NOW);
};

describe('a danger that only the matcher sees', () => {
  it('shows its notice alone, asks whether it is so, and goes to people', () => {
    const { moves, thread, events } = say(blind('safety-gas-smell'));
    expect(moves).toEqual([
      expect.objectContaining({
        kind: 'notice',
        asks: 'is-it',
        danger: expect.objectContaining({ hazard: 'safety-gas-smell', level: 'ask' }),
      }),
    ]);
    expect(thread).toMatchObject({ keeper: 'waiting', reason: 'safety', open: { kind: 'danger' } });
    expect(events).toContainEqual(expect.objectContaining({ kind: 'passed', reason: 'safety', urgency: 'danger' }));
  });

  it('shows its notice without a booking as well', () => {
    expect(say(blind('safety-fire'), null).moves[0]).toMatchObject({ kind: 'notice' });
  });

  it('never answers with nothing a topic whose text is a notice', () => {
    for (const { id, notice } of real.knowledge.topics.values()) {
      if (!notice || real.knowledge.vans.get('wren')?.topics.has(id) !== true) continue;
      const said = say(blind(id)).replies.map(plainText).join('\n');
      expect([id, said.length > 80]).toEqual([id, true]);
    }
  });

  it('is offered, not shown, where the reader saw its words and set them aside', () => {
    const { moves, thread } = say(blind('safety-gas-smell', true));
    expect(moves[0]).toMatchObject({ kind: 'choose' });
    expect(thread.keeper).toBe('bot');
  });

  it('answers whether one may barbecue without a notice', () => {
    const { moves, replies, thread } = say(blind('hire-barbecue'));
    expect(moves[0]).toMatchObject({ kind: 'answer', topic: 'hire-barbecue' });
    expect(replies.map(plainText).join()).toMatch(/3 m clear .* carbon monoxide/s);
    expect(thread.keeper).toBe('bot');
  });
});

describe('words that fit several symptoms', () => {
  /** A matcher that cannot choose between two faults of the fridge. */
  function between(gas: number, mains: number): Served {
    const topics = [
      { topic: 'fridge-gas-not-cooling', probability: gas },
      { topic: 'fridge-mains-not-cooling', probability: mains },
    ];
    const served = blind('fridge-gas-not-cooling');
    const understood: ReturnType<Matcher['understand']>[number] = {
      text: 'oh dear',
      decision: { kind: 'choose', topics },
      ranked: topics,
      why: { tokens: [], linked: [], features: [], costs: [] },
    };
    return { ...served, matcher: { understand: () => [understood], nearest: () => topics } };
  }

  it('ask which it is', () => {
    const { moves, thread } = say(between(0.4, 0.35));
    expect(moves).toEqual([expect.objectContaining({ kind: 'choose', why: 'apart' })]);
    expect(thread.open).toMatchObject({
      kind: 'choice',
      topics: ['fridge-gas-not-cooling', 'fridge-mains-not-cooling'],
    });
  });

  it('begin at once on the likeliest where asking would cost more than a wrong start', () => {
    const { moves, thread } = say(between(0.5, 0.001));
    expect(moves).toEqual([expect.objectContaining({ kind: 'step', opening: true })]);
    expect(thread.open).toMatchObject({ kind: 'step', walk: { symptom: 'fridge-gas-not-cooling' } });
  });
});
