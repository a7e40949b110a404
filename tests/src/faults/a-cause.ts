import type { Holder } from '../../../src/knowledge/holds.ts';
import type { ScopedCause } from '../../../src/knowledge/knowledge.ts';

export const A_VAN: Holder = { id: 'dunlin', parts: new Set(['water-pump', 'fridge']) };

/** A cause with a one-minute check and a five-minute fix that always cures; change what matters. */
export function aCause(
  id: string,
  prior: number,
  change: {
    readonly check?: Partial<NonNullable<ScopedCause['check']>> | null;
    readonly fix?: Partial<ScopedCause['fix']>;
    readonly say?: string;
    readonly stop?: string;
  } = {},
): ScopedCause {
  const cause: ScopedCause = {
    id,
    say: change.say ?? id,
    prior,
    fix: {
      do: `mend ${id}`,
      minutes: 5,
      who: 'hirer',
      success: 1,
      reset: false,
      fuse: false,
      trick: false,
      pictures: [],
      ...change.fix,
    },
    ...(change.stop === undefined ? {} : { stop: change.stop }),
  };
  if (change.check === null) return cause;
  return {
    ...cause,
    check: { ask: `Is it ${id}?`, minutes: 1, also: [], reset: false, pictures: [], ...change.check },
  };
}
