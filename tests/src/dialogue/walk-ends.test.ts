import { describe, expect, it } from 'vitest';
import { messageOf } from '../../../adapters/console/ask-lines.ts';
import { type Event, newThread, type Thread, turn } from '../../../src/index.ts';
import { barelyKnown } from '../../helpers/a-booking.ts';
import { realServed } from '../../helpers/real-graph.ts';

const served = realServed();
const NOW = Date.parse('2027-07-15T11:00:00Z');
const booking = barelyKnown('wren');

/** What the talk leaves of walks: each end that was recorded, in order. */
function endsOf(...said: readonly string[]) {
  let thread: Thread = newThread({ id: 't', channel: 'console', address: 't', booking: 'BR-1', van: 'wren' }, NOW);
  const events: Event[] = [];
  said.forEach((text, i) => {
    const nowMs = NOW + i * 60_000;
    const turned = turn(thread, messageOf(text, i, nowMs), served, { booking, code: 'none' }, nowMs);
    thread = turned.thread;
    events.push(...turned.events);
  });
  return events.flatMap((event) => (event.kind === 'walk-ended' ? [[event.end, event.tried.length]] : []));
}

describe('the end of a walk', () => {
  it.each([
    ['the number of a person', ['no water comes out of any tap', 'no', '5'], ['passed', 1]],
    ['asking for a person', ['no water comes out of any tap', 'no', 'get me a person please'], ['passed', 1]],
    ['never mind', ['no water comes out of any tap', 'no', 'never mind'], ['left', 1]],
    ['a danger', ['no water comes out of any tap', 'no', 'I can smell gas'], ['passed', 1]],
    [
      'never mind while it is laid aside',
      ['no water comes out of any tap', 'no', 'where is the corkscrew', 'never mind'],
      ['left', 1],
    ],
  ] as const)('is recorded once at %s, with what was done', (_, said, end) => {
    expect(endsOf(...said)).toEqual([end]);
  });

  it('is not recorded while it is laid aside', () => {
    expect(endsOf('no water comes out of any tap', 'no', 'where is the corkscrew')).toEqual([]);
  });
});
