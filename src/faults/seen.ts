import { firstThatHolds, type Holder } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';
import type { Done, Observation, Walk } from './types.ts';

/** Observations of a thread by what was asked, for its later walks. */
export type Seen = Readonly<Record<string, Observation>>;

/**
 * The same for two checks, of whatever symptoms, that ask the same: their words' stems in order. Null without a check.
 *
 * @example checkKey(cause, dunlin) // 'ar-the-socket-dead'
 */
export function checkKey(cause: ScopedCause, van: Holder): string | null {
  const ask = firstThatHolds(cause.check?.ask, van);
  return ask === null
    ? null
    : tokens(ask)
        .map((token) => stem(token.text))
        .join('-');
}

/** The thread's observations with those of this walk; a later answer stands, 'cannot tell' replaces nothing. */
export function withSeen(seen: Seen, walk: Walk, causes: readonly ScopedCause[], van: Holder): Seen {
  const all: Record<string, Observation> = { ...seen };
  for (const done of walk.done) {
    if (done.kind !== 'check' || done.answer === 'cannot-tell') continue;
    const cause = causes.find((each) => each.id === done.cause);
    const key = cause === undefined ? null : checkKey(cause, van);
    if (key !== null) all[key] = done.answer;
  }
  return all;
}

/** The checks of these causes that the thread has answered already. */
export function seenBefore(seen: Seen, causes: readonly ScopedCause[], van: Holder): Done[] {
  return causes.flatMap((cause): Done[] => {
    const key = checkKey(cause, van);
    const answer = key === null ? undefined : seen[key];
    if (answer === undefined || answer === 'cannot-tell') return [];
    return [{ kind: 'check', cause: cause.id, answer, earlier: true }];
  });
}
