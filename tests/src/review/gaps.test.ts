import { describe, expect, it } from 'vitest';
import { groupOf } from '../../../src/review/gap-groups.ts';
import { gapsOf, type ThreadEvent } from '../../../src/review/gaps.ts';
import type { Event } from '../../../src/thread/thread.ts';
import { aBrief } from '../../helpers/pages-world.ts';

const HOUR = 3_600_000;
const personal = () => ({ names: ['Ngozi'], isOrdinary: () => false });

function read(events: readonly Event[], options: { nowMs?: number; said?: string } = {}) {
  const stored = events.map((event, i): ThreadEvent => ({ id: i + 1, threadId: 't', atMs: i * 1000, event }));
  return gapsOf({ events: stored, nowMs: options.nowMs ?? 0, personal, said: () => options.said ?? null });
}
const aGap = (text: string): Event => ({
  kind: 'gap',
  text,
  why: 'no-such-topic',
  van: 'wren',
  topics: ['water-none'],
});
const passed = (reason: 'asked' | 'safety', question: string): Event => ({
  kind: 'passed',
  reason,
  urgency: 'usual',
  brief: aBrief({ reason, question }),
});

describe('gaps', () => {
  it('are what the bot noted, without names', () => {
    expect(read([aGap('where is the kettle, Ngozi')])).toMatchObject([
      {
        text: 'where is the kettle, [name]',
        why: 'no-such-topic',
        van: 'wren',
        nearest: ['water-none'],
        ended: 'open',
      },
    ]);
  });

  it('are one when the bot was unsure, asked back, and nothing was picked', () => {
    const unsure: Event = { kind: 'gap', text: 'eskie warm', why: 'too-close', van: 'wren', topics: ['a', 'b'] };
    const none: Event = { ...unsure, why: 'nothing-picked', topics: ['b'] };
    expect(read([unsure, none])).toMatchObject([{ id: 1, why: 'nothing-picked', nearest: ['b', 'a'] }]);
    expect(read([unsure, { ...none, text: 'another thing' }])).toHaveLength(2);
  });

  it('keep what staff wrote back', () => {
    const [gap] = read([aGap('kettle?'), { kind: 'staff-said', by: 'Nessa', text: 'In the locker.' }]);
    expect(gap).toMatchObject({ staffSaid: 'In the locker.', ended: 'staff' });
  });

  it('are also what staff answered though the bot was not unsure', () => {
    const said: Event = { kind: 'staff-said', by: 'Nessa', text: 'Yes, until ten.' };
    expect(read([passed('asked', 'may we come late'), said])).toMatchObject([
      { text: 'may we come late', why: 'staff-answered', staffSaid: 'Yes, until ten.' },
    ]);
  });

  it('are never made of a danger', () => {
    expect(read([passed('safety', 'gas smell'), { kind: 'staff-said', by: 'Nessa', text: 'Are you out?' }])).toEqual(
      [],
    );
  });

  it('are choices that nobody picked from, after an hour', () => {
    const offered: Event = { kind: 'offered', topics: ['a', 'b'] };
    expect(read([offered], { said: 'the thing', nowMs: HOUR - 1 })).toEqual([]);
    expect(read([offered], { said: 'the thing', nowMs: HOUR })).toMatchObject([
      { text: 'the thing', why: 'nothing-picked', nearest: ['a', 'b'] },
    ]);
    expect(
      read([offered, { kind: 'answered', topic: 'a', probability: 1 }], { said: 'the thing', nowMs: HOUR }),
    ).toEqual([]);
  });

  it('end as helped when the hirer says so', () => {
    expect(read([aGap('kettle?'), { kind: 'helped', topic: 'kit-what', yes: true }])).toMatchObject([
      { ended: 'helped' },
    ]);
  });
});

describe('a group', () => {
  it('says its count, vans, commonest reason, nearest topics and words most like the others', () => {
    const events = ['where is the kettle', 'kettle where is it kept', 'toaster'].map(aGap);
    const gaps = new Map(read(events).map((gap) => [gap.id, gap]));
    expect(groupOf([1, 2, 3], gaps)).toMatchObject({
      id: 1,
      words: 'where is the kettle',
      vans: ['wren'],
      why: 'no-such-topic',
      nearest: ['water-none'],
      lastMs: 2000,
    });
  });
});
