import type { Booking } from '../../src/index.ts';

/** Somebody who is on pitch in Wren in the middle of July 2027. */
export const booking: Booking = {
  ref: 'BR-1',
  hirer: 'The Testers',
  firstName: 'Tess',
  people: { adults: 2, children: [], dogs: 0 },
  van: 'wren',
  site: 'gullstone-sands',
  pitch: '7',
  amps: 10,
  from: '2027-07-10',
  to: '2027-07-20',
  phone: null,
  note: '',
};

/** A booking of which no more is known than the van and the first day. */
export function barelyKnown(van: string): Booking {
  return { ...booking, van, people: null, site: null, pitch: null, amps: null, to: null };
}
