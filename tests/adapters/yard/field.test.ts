import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FieldFacts, fieldAt } from '../../../adapters/yard/field.ts';
import { newThread, type Thread } from '../../../src/index.ts';
import { aBooking, NOW_MS, SITES, VANS } from '../../helpers/pages-world.ts';

const MINUTE = 60_000;

function aThread(change: Partial<Thread> = {}): Thread {
  const id = change.id ?? 't1';
  return { ...newThread({ id, channel: 'web', address: id }, NOW_MS), keeper: 'waiting', reason: 'asked', ...change };
}

function facts(change: Partial<FieldFacts> = {}): FieldFacts {
  return {
    bookings: [aBooking()],
    threads: [],
    vans: new Map(Object.entries(VANS)),
    sites: new Map(Object.entries(SITES)),
    aimMinutes: () => 30,
    timeZone: 'Europe/London',
    ...change,
  };
}

describe('the field', () => {
  it('stands each van on the strip of its site, with the nights it has left', () => {
    const field = fieldAt(facts(), NOW_MS);
    const strip = field.strips.find((one) => one.id === 'gullstone-sands');
    expect(strip?.parked.map(({ id, nightsLeft, watched }) => ({ id, nightsLeft, watched }))).toEqual([
      { id: 'dunlin', nightsLeft: 4, watched: null },
    ]);
    expect(field.strips.at(-1)).toMatchObject({
      kind: 'home',
      parked: [{ id: 'wren' }, { id: 'curlew' }, { id: 'plover' }, { id: 'godwit' }],
    });
  });

  it('puts a van without a site on the road', () => {
    const field = fieldAt(facts({ bookings: [aBooking({ van: 'plover', site: null })] }), NOW_MS);
    expect(field.strips.find((one) => one.kind === 'road')?.parked.map((one) => one.id)).toEqual(['plover']);
  });

  it('measures the wait against the aim', () => {
    const [one] = fieldAt(
      facts({ threads: [aThread({ booking: 'BR-2702', sinceMs: NOW_MS - 15 * MINUTE })] }),
      NOW_MS,
    ).watched;
    expect(one).toMatchObject({ waitedMs: 15 * MINUTE, share: 0.5, danger: false });
  });

  it('gives no share when nobody is on duty', () => {
    expect(fieldAt(facts({ threads: [aThread()], aimMinutes: () => null }), NOW_MS).watched[0]?.share).toBeNull();
  });

  it('puts danger that nobody has before everything, and what staff have last', () => {
    const threads = [
      aThread({ id: 'kept', keeper: 'staff', keeperName: 'Gethin', sinceMs: NOW_MS - 90 * MINUTE }),
      aThread({ id: 'late', sinceMs: NOW_MS - 60 * MINUTE }),
      aThread({ id: 'fresh', sinceMs: NOW_MS - 1 * MINUTE }),
      aThread({ id: 'danger', reason: 'safety', sinceMs: NOW_MS }),
      aThread({ id: 'danger-kept', reason: 'safety', keeper: 'staff', keeperName: 'Dilys' }),
    ];
    expect(fieldAt(facts({ threads }), NOW_MS).watched.map((one) => one.thread.id)).toEqual([
      'danger',
      'danger-kept',
      'late',
      'fresh',
      'kept',
    ]);
  });

  it('marks the strip of a van in danger and puts it first', () => {
    const bookings = [
      aBooking({ ref: 'A', van: 'wren', site: 'fernbeck-meadow' }),
      aBooking({ ref: 'B', van: 'curlew', site: 'hawmire-field' }),
    ];
    const field = fieldAt(facts({ bookings, threads: [aThread({ booking: 'B', reason: 'safety' })] }), NOW_MS);
    expect(field.strips[0]).toMatchObject({ id: 'hawmire-field', danger: true });
    expect(field.strips.filter((strip) => strip.danger)).toHaveLength(1);
  });

  it('stands those without a van at the gate', () => {
    const field = fieldAt(facts({ threads: [aThread()] }), NOW_MS);
    expect(field.unknown.map((one) => one.thread.id)).toEqual(['t1']);
  });

  it('hands a van over at noon on the day two hires meet', () => {
    const bookings = [
      aBooking({ ref: 'OLD', to: '2027-07-27' }),
      aBooking({ ref: 'NEW', from: '2027-07-27', to: '2027-08-03' }),
    ];
    const at = (clock: string) =>
      fieldAt(facts({ bookings }), Date.parse(`2027-07-27T${clock}:00+01:00`))
        .strips.flatMap((strip) => strip.parked)
        .find((one) => one.id === 'dunlin');
    expect(at('11:59')).toMatchObject({ booking: { ref: 'OLD' }, today: 'leaves' });
    expect(at('12:00')).toMatchObject({ booking: { ref: 'NEW' }, today: 'arrives' });
  });

  it('lists at the gate who goes out and who comes home today', () => {
    const bookings = [
      aBooking({ ref: 'IN', to: '2027-07-27' }),
      aBooking({ ref: 'OUT', van: 'wren', from: '2027-07-27' }),
    ];
    const { gate } = fieldAt(facts({ bookings }), NOW_MS);
    expect([gate.out.map((one) => one.ref), gate.back.map((one) => one.ref)]).toEqual([['OUT'], ['IN']]);
  });

  it('shows every van once and every watched thread once, whatever the day brings', () => {
    const day = fc.integer({ min: 1, max: 31 }).map((n) => `2027-07-${String(n).padStart(2, '0')}`);
    const booking = fc
      .record({
        van: fc.constantFrom(...Object.keys(VANS)),
        site: fc.constantFrom(...Object.keys(SITES), null),
        from: day,
        to: fc.option(day),
      })
      .map((change) => aBooking(change));
    const thread = fc.record({
      keeper: fc.constantFrom('bot' as const, 'waiting' as const, 'staff' as const),
      booking: fc.constantFrom('R0', 'R1', 'R2', 'gone', null),
      reason: fc.constantFrom('asked' as const, 'safety' as const),
      sinceMs: fc.integer({ min: NOW_MS - 1e8, max: NOW_MS + 1e6 }),
    });
    fc.assert(
      fc.property(fc.array(booking, { maxLength: 6 }), fc.array(thread, { maxLength: 6 }), (bookings, threads) => {
        const numbered = bookings.map((one, i) => ({ ...one, ref: `R${i}` }));
        const named = threads.map((one, i) => aThread({ ...one, id: `t${i}` }));
        const field = fieldAt(facts({ bookings: numbered, threads: named }), NOW_MS);
        const vans = field.strips.flatMap((strip) => strip.parked.map((one) => one.id));
        expect([...vans].sort()).toEqual(Object.keys(VANS).sort());
        const awaited = named.filter((one) => one.keeper !== 'bot').map((one) => one.id);
        expect(field.watched.map((one) => one.thread.id).sort()).toEqual(awaited.sort());
        const seen = [
          ...field.unknown,
          ...field.strips.flatMap((strip) => strip.parked.flatMap((one) => one.watched ?? [])),
        ];
        expect(new Set(seen.map((one) => one.thread.id)).size).toBe(seen.length);
        // A hire with two threads shows the one that matters more; the other is a press away.
        for (const one of field.watched)
          expect(seen.some((shown) => shown === one || shown.booking?.ref === one.booking?.ref)).toBe(true);
      }),
    );
  });
});
