import { describe, expect, it } from 'vitest';
import type { ThreadEvent } from '../../../src/review/gaps.ts';
import { figuresCsv, growthFigures, summedBy } from '../../../src/review/growth-figures.ts';
import { thinIn } from '../../../src/review/thin.ts';
import type { Event } from '../../../src/thread/thread.ts';
import { aBrief } from '../../helpers/pages-world.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const MINUTE = 60_000;

function figures(events: readonly (readonly [number, string, Event])[]) {
  return growthFigures({
    events: events.map(([atMs, threadId, event], i): ThreadEvent => ({ id: i + 1, atMs, threadId, event })),
    vanOf: (threadId) => (threadId === 'wren' ? 'wren' : null),
    systemOf: (topic) => topic.split('-')[0] ?? null,
    weekOf: () => '2027-07-12',
  });
}
const answered = (topic: string): Event => ({ kind: 'answered', topic, probability: 1 });
const passed: Event = { kind: 'passed', reason: 'asked', urgency: 'usual', brief: aBrief() };

describe('the figures', () => {
  it('count how questions ended, by week, van and system', () => {
    const rows = figures([
      [0, 'wren', answered('water-none')],
      [1, 'wren', { kind: 'helped', topic: 'water-none', yes: true }],
      [2, 'wren', answered('gas-turn-on')],
      [3, 'other', answered('water-none')],
      [4, 'other', { kind: 'helped', topic: 'water-none', yes: false }],
    ]);
    expect(
      rows.map(({ van, system, answered, helped, stillStuck }) => [van, system, answered, helped, stillStuck]),
    ).toEqual([
      ['', 'water', 1, 0, 1],
      ['wren', 'gas', 1, 0, 0],
      ['wren', 'water', 1, 1, 0],
    ]);
    expect(summedBy(rows, 'van').map(({ van, answered }) => [van, answered])).toEqual([
      ['', 1],
      ['wren', 2],
    ]);
  });

  it('tell how long people waited for a person, from the first pass to the first word', () => {
    const [row] = figures([
      [0, 'wren', passed],
      [5 * MINUTE, 'wren', passed],
      [12 * MINUTE, 'wren', { kind: 'taken', by: 'Nessa' }],
      [13 * MINUTE, 'wren', { kind: 'staff-said', by: 'Nessa', text: 'On my way.' }],
    ]);
    expect(row).toMatchObject({ passed: 2, takenUp: 1, waitMinutes: 12 });
  });

  it('tell an answer at once from one that was picked of several', () => {
    const rows = figures([
      [0, 'wren', { kind: 'offered', topics: ['water-none', 'water-taste'] }],
      [1, 'wren', answered('water-taste')],
      [2, 'wren', answered('water-taste')],
      [3, 'other', { kind: 'offered', topics: ['water-none'] }],
      [4, 'other', answered('water-taste')],
    ]);
    expect(rows.map(({ van, answered, offered, chosen }) => [van, answered, offered, chosen])).toEqual([
      ['', 1, 1, 0],
      ['wren', 1, 1, 1],
    ]);
  });

  it('count a question once that was asked back about in vain', () => {
    const unsure: Event = { kind: 'gap', text: 'eskie', why: 'too-close', van: null, topics: ['water-none'] };
    expect(
      figures([
        [0, 'wren', unsure],
        [1, 'wren', { ...unsure, why: 'nothing-picked' }],
      ])[0]?.gaps,
    ).toBe(1);
  });

  it('are a file of counts', () => {
    expect(figuresCsv(figures([[0, 'wren', answered('water-none')]]))).toBe(
      'week,van,system,answered,offered,chosen,passed,helped,stillStuck,gaps,takenUp,waitMinutes\r\n2027-07-12,wren,water,1,0,0,0,0,0,0,0,0\r\n',
    );
  });
});

describe('what is thin', () => {
  it('is a topic with few wordings, a symptom without causes, a part that nothing is about', () => {
    const thin = thinIn(smallKnowledge());
    expect(thin.filter(({ kind }) => kind === 'few-wordings').map(({ id }) => id)).toContain('oven-use');
    expect(thin.filter(({ kind }) => kind === 'no-causes')).toEqual([]);
    const lonely = smallKnowledge({
      'systems/attic.yaml': 'system: attic\ntitle: Attic\nparts:\n  trunk: { name: old trunk }\n',
    });
    expect(thinIn(lonely)).toContainEqual({ kind: 'not-described', id: 'trunk', name: 'old trunk', system: 'attic' });
  });
});
