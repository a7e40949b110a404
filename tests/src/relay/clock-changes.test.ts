import { describe, expect, it } from 'vitest';
import { dutyOf, newThread, peopleToTell, type Standing, staffedAt, type Thread } from '../../../src/index.ts';
import { passLines } from '../../../src/reply/pass-words.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

/*
 * The two nights on which the clocks change, by the Summer Time Order 2002: the last Sundays of March and October, at
 * 01:00 UTC. What the wall shows is asked of Intl here, in another way than the program's own.
 */
const { firm } = realKnowledge();
const MINUTE = 60_000;
const onWall = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/London', hour: '2-digit', minute: '2-digit' });
const wall = (atMs: number): string => onWall.format(atMs);
const at = (iso: string): number => Date.parse(iso);

const NIGHTS = [
  // The office closes, the office opens, hours that nobody answers in between.
  {
    night: 'in March',
    closes: '2027-03-27T17:30Z',
    quiet: '2027-03-27T22:00Z',
    opens: '2027-03-28T07:30Z',
    hours: 9.5,
  },
  {
    night: 'in October',
    closes: '2027-10-30T16:30Z',
    quiet: '2027-10-30T21:00Z',
    opens: '2027-10-31T08:30Z',
    hours: 11.5,
  },
] as const;

function aWait(sinceMs: number, urgency: Standing['urgency'], reminded: Standing['reminded'] = null): Standing {
  const thread: Thread = {
    ...newThread({ id: 't', channel: 'test', address: 'a' }, sinceMs),
    keeper: 'waiting',
    reason: urgency === 'danger' ? 'safety' : 'not-fixed',
  };
  return { thread, urgency, lastHirerMs: sinceMs, lastStaffMs: 0, reminded };
}

/** Every reminder from `fromMs` to `toMs`, looked for every five seconds as the duty rounds do. */
function remindersOf(
  urgency: Standing['urgency'],
  sinceMs: number,
  toMs: number,
): { atMs: number; to: string | null }[] {
  const given: { atMs: number; to: string | null }[] = [];
  let reminded: Standing['reminded'] = null;
  for (let nowMs = sinceMs; nowMs <= toMs; nowMs += 5_000) {
    const duty = dutyOf(aWait(sinceMs, urgency, reminded), firm, nowMs);
    if (duty?.kind !== 'remind') continue;
    ({ reminded } = duty);
    given.push({ atMs: nowMs, to: duty.to });
  }
  return given;
}

describe.each(NIGHTS)('the night the clocks change $night', ({ closes, quiet, opens, hours }) => {
  it('is staffed by the clock on the wall, at every quarter of an hour of both days', () => {
    for (let nowMs = at(closes) - 9 * 60 * MINUTE; nowMs < at(opens) + 15 * 60 * MINUTE; nowMs += 15 * MINUTE) {
      const shows = wall(nowMs);
      const expected =
        shows >= '08:30' && shows < '17:30' ? 'open' : shows >= '17:30' && shows < '22:00' ? 'on-call' : 'closed';
      const staffed = staffedAt(firm, nowMs);
      expect(staffed.kind, new Date(nowMs).toISOString()).toBe(expected);
      expect(wall(staffed.untilMs)).toBe({ open: '17:30', 'on-call': '22:00', closed: '08:30' }[expected]);
      if (expected !== 'open') expect(wall(staffed.opensMs)).toBe('08:30');
    }
    expect((at(opens) - at(quiet)) / (60 * MINUTE)).toBe(hours);
    expect(staffedAt(firm, at(quiet))).toMatchObject({ kind: 'closed', untilMs: at(opens), opensMs: at(opens) });
    expect(staffedAt(firm, at(closes))).toMatchObject({ kind: 'on-call', untilMs: at(quiet), opensMs: at(opens) });
  });

  it('promises what the wall will show', () => {
    const said = (atMs: number) => passLines('asked', firm, atMs).join(' ');
    // Rounded up to the next five minutes; the last that can be kept, and the first that cannot.
    expect(said(at(closes) - 30 * MINUTE)).toContain('answer here by 17:30.');
    expect(said(at(closes) - 29 * MINUTE)).toContain('The office closes at 17:30.');
    expect(said(at(closes))).toContain('The office opens at 08:30 tomorrow.');
    expect(said(at(closes))).toMatch(/ring on-call on [\d ]+ until 22:00/);
    expect(said(at(quiet))).toContain('The yard opens at 08:30 tomorrow');
    expect(said(at(opens) - MINUTE)).toContain('The yard opens at 08:30 and');
    expect(said(at(opens))).toContain('answer here by 09:00.');
  });

  it('has the evening’s person on call to the end of the evening, and the next day’s from the morning', () => {
    const names = (atMs: number) => peopleToTell(firm, atMs, 'office').map(({ firstName }) => firstName);
    expect(names(at(closes))).toEqual(['Gethin']);
    expect(names(at(quiet) - MINUTE)).toEqual(['Gethin']);
    expect(names(at(quiet))).toEqual([]);
    expect(names(at(opens) - MINUTE)).toEqual([]);
    expect(names(at(opens))).toEqual(['Dilys']);
    expect(names(at(opens) + 9 * 60 * MINUTE)).toEqual(['Dilys']);
  });

  it('brings a danger to mind every two minutes through the change, none left out and none twice', () => {
    const change = at(`${opens.slice(0, 10)}T01:00Z`);
    const given = remindersOf('danger', change - 61 * MINUTE, change + 61 * MINUTE).map(({ atMs }) => atMs);
    expect(given).toEqual(Array.from({ length: 61 }, (_, i) => change - 61 * MINUTE + (i + 1) * 2 * MINUTE));
  });

  it('leaves what can wait until the very minute the office opens, to whoever is there then', () => {
    const given = remindersOf('usual', at(quiet) - 10 * MINUTE, at(opens) + MINUTE);
    expect(given).toEqual([{ atMs: at(opens), to: 'Dilys' }]);
  });
});
