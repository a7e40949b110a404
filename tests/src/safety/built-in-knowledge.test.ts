import { describe, expect, it } from 'vitest';
import { converse } from '../../../adapters/console/ask-lines.ts';
import { createMatcher, createSafetyReader, type Served } from '../../../src/index.ts';
import { builtInKnowledge } from '../../../src/safety/built-in-knowledge.ts';
import { HAZARDS } from '../../../src/safety/hazards.ts';
import { booking } from '../../helpers/a-booking.ts';
import { realKnowledge } from '../../helpers/real-graph.ts';

const knowledge = builtInKnowledge(realKnowledge().firm);
const served: Served = {
  knowledge,
  matcher: createMatcher(knowledge, null),
  readDanger: createSafetyReader(knowledge.safety, null),
};
const NOON = Date.parse('2027-07-15T11:00:00Z');

describe.each([
  ['a booked hirer', booking],
  ['somebody without a booking', null],
])('with nothing but what is built in, %s', (_, who) => {
  it.each(Object.keys(HAZARDS))('is shown the notice of %s', (hazard) => {
    const words = knowledge.safety.reading.tongues['en']?.groups[hazard];
    const [answer] = converse([`Please help, ${String(words).split(',')[0]} here`], who, NOON, served);
    expect(answer).toMatchObject({ outcome: 'safety', hazard });
    expect(answer?.reply).toContain('999 or 112');
  });
});

it('passes what a booked hirer asks, since no van is known', () => {
  const [answer] = converse(['how do I light the hob'], booking, NOON, served);
  expect(answer).toMatchObject({ outcome: 'pass' });
});
