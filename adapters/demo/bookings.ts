import { addDays, type Booking } from '../../src/index.ts';

/**
 * The sample bookings of the catalogue, with days counted from today. On any day four vans are in the middle of a hire;
 * Plover is returned by one hirer in the morning and collected by the next in the afternoon; one hire is over and one is
 * to come. Each lasts as many nights as in the catalogue.
 */
type Sample = Omit<Booking, 'from' | 'to'> & {
  /** Days from today to the first day; negative when it has passed. */
  readonly starts: number;
  readonly nights: number;
};

const SAMPLES: readonly Sample[] = [
  {
    ref: 'BR-2701',
    hirer: 'Pat and Sol Amberley',
    firstName: 'Pat',
    people: { adults: 2, children: [], dogs: 1 },
    van: 'wren',
    site: 'fernbeck-meadow',
    pitch: '14',
    amps: 16,
    phone: '07700 900271',
    note: 'First time in a caravan',
    starts: -2,
    nights: 7,
  },
  {
    ref: 'BR-2702',
    hirer: 'The Okonkwo-Hale family',
    firstName: 'Ngozi',
    people: { adults: 2, children: [9, 12], dogs: 0 },
    van: 'dunlin',
    site: 'gullstone-sands',
    pitch: 'C6',
    amps: 10,
    phone: '07700 900272',
    note: 'Bring a hair dryer and two laptops',
    starts: -3,
    nights: 7,
  },
  {
    ref: 'BR-2703',
    hirer: 'The Lindqvist family',
    firstName: 'Maja',
    people: { adults: 2, children: [5, 7, 10, 13], dogs: 0 },
    van: 'curlew',
    site: 'hawmire-field',
    pitch: 'by the hedge',
    amps: 0,
    phone: '07700 900273',
    note: 'Off grid all week; the five-year-old is not to go on an upper bunk',
    starts: -1,
    nights: 7,
  },
  {
    ref: 'BR-2704',
    hirer: 'Tomasz Wierzba, Ana Ruiz',
    firstName: 'Tomasz',
    people: { adults: 2, children: [], dogs: 0 },
    van: 'plover',
    site: null,
    pitch: null,
    amps: null,
    phone: '07700 900274',
    note: 'Touring, moving most days; named drivers: both',
    starts: 0,
    nights: 7,
  },
  {
    ref: 'BR-2705',
    hirer: 'The Bewlay family',
    firstName: 'Hattie',
    people: { adults: 2, children: [8, 10], dogs: 2 },
    van: 'godwit',
    site: 'thorngill-tarn-farm',
    pitch: '3',
    amps: 6,
    phone: '07700 900275',
    note: 'Butane on board, frost likely',
    starts: -4,
    nights: 7,
  },
  {
    ref: 'BR-2706',
    hirer: 'Joan and Keith Farrant',
    firstName: 'Joan',
    people: { adults: 2, children: [], dogs: 0 },
    van: 'dunlin',
    site: 'thorngill-tarn-farm',
    pitch: null,
    amps: 6,
    phone: '07700 900276',
    note: 'One sleeps with a breathing machine (CPAP)',
    starts: 11,
    nights: 3,
  },
  {
    ref: 'BR-2707',
    hirer: 'Grandparents Idowu',
    firstName: 'Folake',
    people: { adults: 2, children: [6, 8, 11], dogs: 0 },
    van: 'curlew',
    site: 'fernbeck-meadow',
    pitch: '9',
    amps: 16,
    phone: '07700 900277',
    note: 'Using the mover, have not used one before',
    starts: -9,
    nights: 7,
  },
  {
    ref: 'BR-2708',
    hirer: 'Mirren Calder',
    firstName: 'Mirren',
    people: { adults: 1, children: [], dogs: 0 },
    van: 'plover',
    site: 'gullstone-sands',
    pitch: 'A2',
    amps: 10,
    phone: '07700 900278',
    note: 'Winter trip, insulin in the fridge',
    starts: -4,
    nights: 4,
  },
];

/** @param today The day at the firm, as 2027-07-15. */
export function demoBookings(today: string): readonly Booking[] {
  return SAMPLES.map(({ starts, nights, ...booking }) => ({
    ...booking,
    from: addDays(today, starts),
    to: addDays(today, starts + nights),
  }));
}
