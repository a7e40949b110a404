import { describe, expect, it } from 'vitest';
import { messageOf } from '../../../adapters/console/ask-lines.ts';
import { type Event, newThread, turn } from '../../../src/index.ts';
import { booking } from '../../helpers/a-booking.ts';
import { realServed } from '../../helpers/real-graph.ts';

const NOW = Date.parse('2027-07-15T11:00:00Z');

/** What a hirer's messages, one after another, bring about for staff. */
function eventsOf(...texts: readonly string[]): readonly Event[] {
  let thread = newThread({ id: 't', channel: 'test', address: 'a', booking: booking.ref, van: booking.van }, NOW);
  return texts.flatMap((text, i) => {
    const atMs = NOW + i * 60_000;
    const turned = turn(thread, messageOf(text, i, atMs, null), realServed(), { booking, code: 'none' }, atMs);
    thread = turned.thread;
    return turned.events;
  });
}

const briefsOf = (...texts: readonly string[]) =>
  eventsOf(...texts).flatMap((event) => (event.kind === 'passed' ? [event.brief] : []));

describe('what staff get with a pass', () => {
  it('names only what the bot may have understood', () => {
    const [asked] = briefsOf('can I get a person please');
    expect(asked?.understood).toEqual([]);
    const [dates] = briefsOf('can we stay one more night?');
    expect(dates?.understood.map((one) => one.topic)).toEqual(['hire-extend']);
  });

  it('offers no answer that the hirer is reading already', () => {
    const [dates] = briefsOf('can we stay one more night?');
    expect(dates?.reason).toBe('staff-only');
    expect(dates?.suggested).toBeNull();
  });

  it('says whose business it is, and of a danger that it is everyone’s', () => {
    const [dates] = briefsOf('can we stay one more night?');
    expect(dates?.tell).toBe('Nessa');
    expect(briefsOf('we can smell gas')[0]?.tell).toBeNull();
  });

  it('brings the words of a danger once, and in a thread that people await as its next line too', () => {
    const kinds = (...texts: readonly string[]) => eventsOf(...texts).map((event) => event.kind);
    expect(kinds('we can smell gas')).not.toContain('to-staff');
    expect(kinds('can I get a person please', 'we can smell gas')).toContain('to-staff');
  });
});
