import type { Brief } from '../../src/index.ts';

/** What a brief does not know of somebody without a booking. */
export const NOBODY = {
  booking: null,
  firstName: null,
  van: null,
  site: null,
  pitch: null,
  nightsLeft: null,
  amps: null,
  phone: null,
} as const;

/** A brief with a question alone. */
export const BARE = {
  understood: [],
  tried: [],
  attachments: [],
  hazard: null,
  language: 'en',
  suggested: null,
} as const;

/** Ada in Dunlin, whose fridge clicks. */
export const adasBrief = (more: Partial<Brief> = {}): Brief => ({
  ...BARE,
  threadId: '',
  booking: 'BR-2702',
  firstName: 'Ada',
  van: 'Dunlin',
  site: 'Sandwick Head',
  pitch: '14',
  nightsLeft: 3,
  amps: 10,
  phone: '01632 960111',
  reason: 'unsure',
  question: 'the fridge clicks & goes <out>',
  atMs: 0,
  ...more,
});
