import type { TopicId } from '../basics/ids.ts';
import type { TopicData } from '../knowledge/schema.ts';
import type { Level } from './types.ts';

/** What no edit of the graph may fall below: the level of a hazard's notice, and whether its topic goes to people. */
export type HazardFloor = { readonly level: Exclude<Level, 'ask'>; readonly pass: TopicData['pass'] };

/**
 * The hazards whose text is a notice (design.md, section 7), most urgent first: of two read in one message the first
 * counts when nothing else tells them apart. The graph may add hazards and may not lose one.
 */
export const HAZARDS: Readonly<Record<TopicId, HazardFloor>> = {
  'safety-fire': { level: 'danger', pass: 'always' },
  'safety-electric-shock': { level: 'danger', pass: 'always' },
  'safety-co-alarm': { level: 'danger', pass: 'always' },
  'safety-gas-alarm': { level: 'danger', pass: 'always' },
  'safety-smoke-alarm': { level: 'danger', pass: 'if-not-fixed' },
  'safety-co-symptoms': { level: 'danger', pass: 'always' },
  'gas-hiss-on-connecting': { level: 'danger', pass: 'always' },
  'safety-gas-smell': { level: 'danger', pass: 'always' },
  'safety-battery-hot': { level: 'danger', pass: 'always' },
  'safety-water-electrics': { level: 'danger', pass: 'always' },
  'safety-sparks': { level: 'danger', pass: 'always' },
  'safety-burning-smell': { level: 'danger', pass: 'always' },
  'hire-barbecue': { level: 'danger', pass: 'never' },
  'hire-accident': { level: 'danger', pass: 'always' },
  'safety-child-locked-in': { level: 'danger', pass: 'always' },
  'safety-burn-injury': { level: 'danger', pass: 'always' },
  'towing-snaking': { level: 'urgent', pass: 'always' },
  'towing-puncture': { level: 'urgent', pass: 'always' },
  'safety-storm': { level: 'urgent', pass: 'if-not-fixed' },
  'cooking-yellow-flame': { level: 'urgent', pass: 'if-not-fixed' },
};

/**
 * Hazards whose topic's wordings ask whether one may. Asking is no danger and has an ordinary answer; that it is happening,
 * only graph/safety-examples.yaml says.
 */
export const ONLY_ASKED: ReadonlySet<TopicId> = new Set(['hire-barbecue']);
