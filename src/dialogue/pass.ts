import type { Understood } from '../match/types.ts';
import { type Draft, does, opens, passes, type Situation } from './draft.ts';

/** Fetches a person; a thread that is passed already is only told that it waits. */
export function toPerson(
  draft: Draft,
  reason: 'asked' | 'not-fixed' | 'staff-only' | 'unsure',
  understood: Understood | null,
  situation: Situation,
  meanwhile: string | null = null,
): Draft {
  if (draft.thread.keeper === 'waiting') return does(draft, { kind: 'waiting' });
  return opens(
    passes(
      does(draft, { kind: 'pass', reason, understood, language: null, ...(meanwhile === null ? {} : { meanwhile }) }),
      reason,
      situation.nowMs,
    ),
    null,
  );
}
