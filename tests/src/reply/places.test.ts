import { expect, it } from 'vitest';
import { placeLines } from '../../../src/reply/places.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const knowledge = realKnowledge();

/** What is said at Fernbeck Meadow in Wren about the nearest of a kind. */
function nearest(kind: string, now: string): string | undefined {
  const scope = knowledge.vans.get('wren');
  const site = knowledge.places.sites['fernbeck-meadow'];
  if (scope === undefined || site === undefined) throw new Error('the firm has lost a van or a site');
  return placeLines({ kinds: [kind], most: 1 }, { knowledge, scope, site, nowMs: Date.parse(now) })[0];
}

it('says until when a place is open, and when it opens next', () => {
  expect(nearest('pharmacy', '2027-07-15T12:00:00Z')).toContain('Open now until 18:00');
  expect(nearest('pharmacy', '2027-07-17T14:00:00Z')).toContain('Closed now, opens Mon 09:00 (');
});

it('begins each line with a capital', () => {
  expect(nearest('emptying', '2027-07-15T12:00:00Z')).toMatch(/^Behind the wash block, 130 m/);
});

it('promises no place open on a public holiday', () => {
  expect(nearest('pharmacy', '2027-08-28T14:00:00Z')).toContain(
    'opens Mon 09:00, a public holiday, so it may stay closed',
  );
  expect(nearest('pharmacy', '2027-08-30T10:00:00Z')).toContain('today is a public holiday, so it may be closed');
  expect(nearest('hospital', '2027-08-30T10:00:00Z')).toContain('Always open');
});
