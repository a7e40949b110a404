import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { openAt, readOpening } from '../../../src/hours/opening.ts';
import { isPublicHoliday } from '../../../src/hours/public-holidays.ts';
import type { PlacesData } from '../../../src/knowledge/schema.ts';

const LONDON = 'Europe/London';
const at = (iso: string) => Date.parse(iso);

describe('hours as they stand on a door', () => {
  it.each([
    ['09:00-17:00 daily', '2027-07-15T15:59:00Z', { open: true, until: '17:00', next: null, holiday: null }],
    ['09:00-17:00 daily', '2027-07-15T16:00:00Z', { open: false, until: null, next: 'tomorrow 09:00', holiday: null }],
    [
      '09:00-18:00 Mon-Fri; 09:00-13:00 Sat',
      '2027-07-17T13:00:00Z',
      { open: false, until: null, next: 'Mon 09:00', holiday: null },
    ],
    [
      '12:00-14:30 and 17:30-20:30 Wed-Sun',
      '2027-07-15T14:00:00Z',
      { open: false, until: null, next: '17:30', holiday: null },
    ],
    ['10:00-17:00 daily Apr-Sep', '2027-12-15T12:00:00Z', { open: false, until: null, next: null, holiday: null }],
    ['09:00-16:00 Thu-Mon', '2027-07-20T12:00:00Z', { open: false, until: null, next: 'Thu 09:00', holiday: null }],
    ['09:00-17:00 Mon-Fri', '2027-08-30T10:00:00Z', { open: true, until: '17:00', next: null, holiday: 'today' }],
    ['09:00-17:00 Mon-Fri', '2027-08-28T10:00:00Z', { open: false, until: null, next: 'Mon 09:00', holiday: 'next' }],
    // Midnight in London has passed, in UTC it has not.
    ['09:00-17:00 Mon-Fri', '2027-08-29T23:30:00Z', { open: false, until: null, next: '09:00', holiday: 'today' }],
    ['always open', '2027-07-15T03:00:00Z', { open: true, until: null, next: null, holiday: null }],
  ])('%s at %s', (hours, now, expected) => {
    expect(openAt(readOpening(hours), at(now), LONDON, isPublicHoliday)).toEqual(expected);
  });

  it('are kept as words when they are not times', () => {
    expect(openAt(readOpening('by arrangement'), at('2027-07-15T12:00:00Z'), LONDON, isPublicHoliday)).toBeNull();
  });

  it('are understood for every place of the firm that names times', () => {
    const { sites } = parse(readFileSync('graph/places.yaml', 'utf8')) as PlacesData;
    const words = Object.values(sites).flatMap((site) =>
      site.places.filter((place) => readOpening(place.hours).kind === 'words').map((place) => place.hours),
    );
    expect(words.filter((hours) => /^\d\d:\d\d-\d\d:\d\d/.test(hours))).toEqual([]);
  });
});
