import { describe, expect, it } from 'vitest';
import { gateWords } from '../../../adapters/yard/words.ts';
import { aBooking, VANS } from '../../helpers/pages-world.ts';

describe('who stands at the gate', () => {
  const said = (today: string) => gateWords(aBooking(), { today, vans: new Map(Object.entries(VANS)) });

  it('is said with the hire they belong to, before it and after it', () => {
    expect(said('2027-07-22')).toBe('Dunlin, goes out Saturday 24 July');
    expect(said('2027-07-31')).toBe('Dunlin, home today');
    expect(said('2027-08-01')).toBe('Dunlin, home since yesterday');
    expect(said('2027-08-03')).toBe('Dunlin, home since Saturday 31 July');
  });

  it('is somebody without a booking only where there is none', () => {
    expect(gateWords(null, { today: '2027-07-22', vans: new Map() })).toBe('no booking yet');
  });
});
