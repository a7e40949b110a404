import { describe, expect, it } from 'vitest';
import { aimMinutes, dutyOf, endShift, newThread, type Standing, type Thread } from '../../../src/index.ts';
import { smallKnowledge } from '../../helpers/small-graph.ts';

const { firm } = smallKnowledge();
const at = (iso: string) => Date.parse(iso);
const MINUTE = 60_000;
const NOON = at('2027-07-15T11:00:00Z');

function aWait(more: Partial<Thread>, standing: Partial<Standing> = {}): Standing {
  const thread: Thread = { ...newThread({ id: 't', channel: 'test', address: 'a' }, NOON), keeper: 'waiting', ...more };
  return { thread, urgency: 'usual', lastHirerMs: NOON, lastStaffMs: 0, reminded: null, ...standing };
}

describe('what is due about a thread', () => {
  it('is nothing before the interval of its urgency, and a reminder after it', () => {
    expect(dutyOf(aWait({}), firm, NOON + 29 * MINUTE)).toBeNull();
    expect(dutyOf(aWait({}), firm, NOON + 30 * MINUTE)).toMatchObject({ kind: 'remind', to: 'Gethin', urgent: false });
    expect(dutyOf(aWait({}, { urgency: 'danger' }), firm, NOON + 2 * MINUTE)).toMatchObject({
      kind: 'remind',
      urgent: true,
    });
  });

  it('goes to the next person, then to everyone', () => {
    let reminded: Standing['reminded'] = null;
    const told: (string | null)[] = [];
    for (let i = 1; i <= 3; i++) {
      const duty = dutyOf(aWait({}, { urgency: 'danger', reminded }), firm, NOON + 2 * i * MINUTE);
      if (duty?.kind !== 'remind') throw new Error('no reminder');
      told.push(duty.to);
      ({ reminded } = duty);
    }
    expect(told).toEqual(['Gethin', 'Nessa', null]);
  });

  it('leaves people in peace at night, but for danger', () => {
    const night = at('2027-07-15T22:00:00Z');
    expect(dutyOf(aWait({ sinceMs: night }), firm, night + 60 * MINUTE)).toBeNull();
    expect(dutyOf(aWait({ sinceMs: night }, { urgency: 'danger' }), firm, night + 2 * MINUTE)).toMatchObject({
      kind: 'remind',
      to: null,
    });
  });

  it('reminds the keeper of a message that is 20 minutes old, then a colleague', () => {
    const kept = (reminded: Standing['reminded']) =>
      aWait({ keeper: 'staff', keeperName: 'Gethin', sinceMs: NOON }, { lastHirerMs: NOON + MINUTE, reminded });
    const first = dutyOf(kept(null), firm, NOON + 21 * MINUTE);
    expect(first).toMatchObject({ to: 'Gethin' });
    const second = first?.kind === 'remind' ? dutyOf(kept(first.reminded), firm, NOON + 41 * MINUTE) : null;
    expect(second).toMatchObject({ kind: 'remind', to: 'Nessa' });
  });

  it('goes first to whose business it is: money and dates to the office, kit to the workshop', () => {
    const first = (reason: Thread['reason']) => dutyOf(aWait({ reason }), firm, NOON + 30 * MINUTE);
    for (const reason of ['staff-only', 'asked', 'language'] as const)
      expect(first(reason), reason).toMatchObject({ to: 'Nessa' });
    for (const reason of ['unsure', 'not-fixed'] as const)
      expect(first(reason), reason).toMatchObject({ to: 'Gethin' });
  });

  it('troubles nobody on call with what only the office can settle, until the office opens', () => {
    const evening = at('2027-07-15T17:00:00Z');
    const dates = aWait({ sinceMs: evening, reason: 'staff-only' });
    expect(dutyOf(dates, firm, evening + 120 * MINUTE)).toBeNull();
    expect(dutyOf(dates, firm, at('2027-07-16T07:29:55Z'))).toBeNull();
    expect(dutyOf(dates, firm, at('2027-07-16T07:30:00Z'))).toMatchObject({ kind: 'remind', to: 'Nessa' });
    const kit = aWait({ sinceMs: evening, reason: 'not-fixed' });
    expect(dutyOf(kit, firm, evening + 30 * MINUTE)).toMatchObject({ to: 'Gethin' });
  });

  it('measures a wait against the aim of the hour, and against none where nobody is to see to it', () => {
    const evening = at('2027-07-15T17:00:00Z');
    expect(aimMinutes('staff-only', firm, NOON)).toBe(30);
    expect(aimMinutes('not-fixed', firm, evening)).toBe(20);
    expect(aimMinutes('staff-only', firm, evening)).toBeNull();
    expect(aimMinutes('safety', firm, at('2027-07-15T23:00:00Z'))).toBeNull();
  });

  it('is nothing once the keeper has answered', () => {
    expect(
      dutyOf(
        aWait({ keeper: 'staff', keeperName: 'Gethin' }, { lastHirerMs: NOON + 1, lastStaffMs: NOON + 2 }),
        firm,
        NOON + 50 * MINUTE,
      ),
    ).toBeNull();
  });

  it('ends the hold of a keeper who has gone off duty with the hirer unanswered, and says when the yard opens', () => {
    const evening = at('2027-07-15T16:40:00Z');
    const standing = aWait({ keeper: 'staff', keeperName: 'Nessa', sinceMs: NOON }, { lastHirerMs: NOON + 1 });
    expect(dutyOf(standing, firm, evening)).toEqual({ kind: 'shift-over' });
    const ended = endShift(standing.thread, firm, evening);
    if (ended.kind !== 'done') throw new Error(ended.kind);
    expect(ended.thread.keeper).toBe('waiting');
    expect(JSON.stringify(ended.replies)).toContain('08:30 tomorrow');
  });
});
