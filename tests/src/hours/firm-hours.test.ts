import { describe, expect, it } from 'vitest';
import { peopleToTell, staffedAt, whenText } from '../../../src/hours/firm-hours.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const { firm } = smallKnowledge();
const at = (iso: string): number => Date.parse(iso);

describe('who answers', () => {
  it.each([
    ['2027-07-15T07:29:00Z', 'closed', '2027-07-15T07:30:00Z'],
    ['2027-07-15T07:30:00Z', 'open', '2027-07-15T07:30:00Z'],
    ['2027-07-15T16:29:00Z', 'open', '2027-07-15T16:29:00Z'],
    ['2027-07-15T16:30:00Z', 'on-call', '2027-07-16T07:30:00Z'],
    ['2027-07-15T21:00:00Z', 'closed', '2027-07-16T07:30:00Z'],
    ['2027-12-24T23:00:00Z', 'closed', '2027-12-27T08:30:00Z'],
    // The nights of the clock changes: the yard opens by the clock on its wall.
    ['2027-03-27T23:30:00Z', 'closed', '2027-03-28T07:30:00Z'],
    ['2027-10-30T22:30:00Z', 'closed', '2027-10-31T08:30:00Z'],
  ])('at %s: %s, next open %s', (now, kind, opens) => {
    expect(staffedAt(firm, at(now))).toMatchObject({ kind, opensMs: at(opens) });
  });

  it('tells the person on call in the evening, and nobody at night', () => {
    expect(peopleToTell(firm, at('2027-07-15T18:00:00Z'), 'workshop').map((person) => person.firstName)).toEqual([
      'Gethin',
    ]);
    expect(peopleToTell(firm, at('2027-07-16T18:00:00Z'), 'workshop').map((person) => person.firstName)).toEqual([
      'Dilys',
    ]);
    expect(peopleToTell(firm, at('2027-07-15T23:00:00Z'), 'workshop')).toEqual([]);
  });

  it('puts the office first for money and the workshop first for kit', () => {
    expect(peopleToTell(firm, at('2027-07-15T10:00:00Z'), 'office')[0]?.firstName).toBe('Nessa');
    expect(peopleToTell(firm, at('2027-07-15T10:00:00Z'), 'workshop')[0]?.firstName).toBe('Gethin');
  });

  it('says when as people do', () => {
    const now = at('2027-07-15T18:00:00Z');
    expect(whenText(at('2027-07-15T19:15:00Z'), now, firm.timeZone)).toBe('20:15');
    expect(whenText(at('2027-07-16T07:30:00Z'), now, firm.timeZone)).toBe('tomorrow at 08:30');
    expect(whenText(at('2027-07-18T07:30:00Z'), now, firm.timeZone)).toBe('Sun at 08:30');
  });
});
