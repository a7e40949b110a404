import type { Knowledge, ScopedCause } from '../../../src/knowledge/knowledge.ts';
import type { WalkEnded } from '../../../src/review/fault-counts.ts';
import { aCause } from '../faults/a-cause.ts';

/** As much of a graph as counting needs: one symptom with these causes, the same in both vans. */
export function aFleet(causes: readonly ScopedCause[]): Knowledge {
  const van = (id: string) => [
    id,
    { id, name: id, causes: (symptom: string) => (symptom === 'water-none' ? causes : []) },
  ];
  const part = {
    topics: new Map([['water-none', { id: 'water-none', title: 'No water comes out of the taps', kind: 'symptom' }]]),
    vans: new Map([van('dunlin'), van('wren')] as [string, unknown][]),
  };
  return part as unknown as Knowledge;
}

export const CAUSES: readonly ScopedCause[] = [
  aCause('empty', 0.5, { say: 'Barrel empty' }),
  aCause('hose', 0.3, { say: 'Hose not home', fix: { trick: true } }),
  aCause('pump', 0.2, { say: 'Pump failed', fix: { who: 'staff' } }),
];

export function anEnd(end: WalkEnded['end'], cause: string | null, van = 'dunlin'): WalkEnded {
  return {
    kind: 'walk-ended',
    symptom: 'water-none',
    van,
    end,
    cause,
    tried: [{ did: 'Is the barrel low?', answered: 'no' }],
  };
}

export function times<T>(count: number, item: T): T[] {
  return Array.from({ length: count }, () => item);
}
