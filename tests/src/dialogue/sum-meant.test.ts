import { describe, expect, it } from 'vitest';
import { messageOf } from '../../../adapters/console/ask-lines.ts';
import { type Matcher, newThread, type Served, turn } from '../../../src/index.ts';
import { barelyKnown } from '../../helpers/a-booking.ts';
import { realServed } from '../../helpers/real-graph.ts';

const real = realServed();
const NOW = Date.parse('2027-07-15T11:00:00Z');
const booking = barelyKnown('dunlin');

type Decision = ReturnType<Matcher['understand']>[number]['decision'];

/** What the bot does with a text for which the matcher decides so. */
function done(text: string, decision: Decision, ranked: readonly (readonly [string, number])[]) {
  const understood = {
    text,
    decision,
    ranked: ranked.map(([topic, probability]) => ({ topic, probability })),
    why: { tokens: [], linked: [], features: [], costs: [] },
  };
  const served: Served = { ...real, matcher: { understand: () => [understood], nearest: () => understood.ranked } };
  const thread = newThread({ id: 't', channel: 'console', address: 't', booking: booking.ref, van: booking.van }, NOW);
  const { moves } = turn(thread, messageOf(text, 0, NOW), served, { booking, code: 'none' }, NOW);
  return moves[0];
}

const offered = (text: string, ...ranked: readonly (readonly [string, number])[]) =>
  done(
    text,
    { kind: 'choose', topics: ranked.slice(0, 3).map(([topic, probability]) => ({ topic, probability })) },
    ranked,
  );

describe('the sum that is meant', () => {
  it('is the one whose subject is asked for, when the matcher took it for another sum', () => {
    const answer: Decision = { kind: 'answer', topic: 'dc-battery-days', probability: 0.8 };
    expect(done('how long will the gas last, no hook up', answer, [['dc-battery-days', 0.8]])).toMatchObject({
      kind: 'calculation',
      topic: 'gas-how-long',
    });
    expect(done('how long will it last, no hook up', answer, [['dc-battery-days', 0.8]])).toMatchObject({
      topic: 'dc-battery-days',
    });
  });

  it('is done when it was only offered and the words ask for its subject', () => {
    expect(offered('gas, how many days off grid', ['dc-battery-days', 0.5], ['gas-how-long', 0.2])).toMatchObject({
      kind: 'calculation',
      topic: 'gas-how-long',
    });
  });

  it('is done when it was only offered and the words give what it works from', () => {
    expect(offered('bubble is two rings off', ['setup-level-van', 0.5], ['setup-chock-height', 0.3])).toMatchObject({
      kind: 'calculation',
      topic: 'setup-chock-height',
    });
    expect(offered('bubble is off', ['setup-level-van', 0.5], ['setup-chock-height', 0.3])).toMatchObject({
      kind: 'choose',
    });
  });

  it('is left among the choices when a symptom is as likely', () => {
    expect(
      offered(
        'kettle and toaster on 10 amps and it is all off',
        ['mains-can-i-run-together', 0.4],
        ['mains-site-post-trips', 0.3],
      ),
    ).toMatchObject({ kind: 'choose' });
  });

  it('is left among the choices when a warning is likelier', () => {
    const hazards = [...real.knowledge.topics].flatMap(([id, { kind, notice }]) =>
      kind === 'hazard' && !notice ? [id] : [],
    );
    const warning = hazards[0] ?? '';
    expect(offered('how long will the gas last, no hook up', [warning, 0.4], ['gas-how-long', 0.2])).toMatchObject({
      kind: 'choose',
    });
    expect(offered('kettle and toaster on 10 amps', ['mains-can-i-run-together', 0.4], [warning, 0.3])).toMatchObject({
      kind: 'choose',
    });
  });

  it('is none where the question is what it costs: people answer that', () => {
    const answer: Decision = { kind: 'answer', topic: 'gas-how-long', probability: 0.8 };
    expect(done('what does a bottle of gas cost for a week', answer, [['gas-how-long', 0.8]])).toMatchObject({
      kind: 'pass',
    });
  });

  it('is never done in place of another answer', () => {
    const answer: Decision = { kind: 'answer', topic: 'gas-change-cylinder', probability: 0.8 };
    expect(
      done('how long does it take to change the gas bottle', answer, [['gas-change-cylinder', 0.8]]),
    ).toMatchObject({ kind: 'answer', topic: 'gas-change-cylinder' });
  });

  it('is done whatever the matcher made of the words, where they ask for it plainly', () => {
    const sum = { kind: 'calculation', topic: 'mains-can-i-run-together' };
    const text = 'Lovely site, thanks! Kettle and toaster at the same time, does that work?';
    expect(done(text, { kind: 'chat', chat: 'thanks' }, [])).toMatchObject(sum);
    expect(done(text, { kind: 'pass', why: 'too-close' }, [['load-bikes', 0.2]])).toMatchObject(sum);
    expect(done(text, { kind: 'answer', topic: 'hire-bedding', probability: 0.9 }, [])).toMatchObject(sum);
    expect(offered(text, ['load-bikes', 0.3], ['hire-bedding', 0.2])).toMatchObject(sum);
  });

  it('is never done for a wish for a person, nor for trouble that the words tell of', () => {
    expect(done('kettle and toaster on 10 amps? get me a person', { kind: 'person' }, [])).toMatchObject({
      kind: 'pass',
    });
    const trips: Decision = { kind: 'answer', topic: 'mains-site-post-trips', probability: 0.7 };
    const told = 'kettle and toaster on 10 amps tripped the post, what now?';
    expect(done(told, trips, [['mains-site-post-trips', 0.7]])).not.toMatchObject({ kind: 'calculation' });
  });
});
