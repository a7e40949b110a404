import type { Booking } from '../../src/index.ts';

/** A booking of which nothing is known but the van and its days. */
export function vanBooking(known: Pick<Booking, 'ref' | 'hirer' | 'van' | 'from' | 'to'>): Booking {
  return {
    ...known,
    firstName: '',
    people: null,
    site: null,
    pitch: null,
    amps: null,
    phone: null,
    note: '',
  };
}
