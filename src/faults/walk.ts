import type { CauseId } from '../basics/ids.ts';
import type { Done, Observation, Step, Walk } from './types.ts';

/** What came back about the step that is with the hirer. `stop` keeps the hirer's words. */
export type Told =
  | { readonly kind: 'observed'; readonly answer: Observation }
  | { readonly kind: 'tried'; readonly worked: boolean }
  /** Leave this step out: 'cannot tell' for a check, not tried for a fix. */
  | { readonly kind: 'skip' }
  /** It works, whatever did it. */
  | { readonly kind: 'works' }
  | { readonly kind: 'stop'; readonly said: string };

/** Puts a step to the hirer. */
export function put(walk: Walk, now: Step): Walk {
  return { ...walk, now };
}

/**
 * What the hirer told about the step that is out. Without one the walk stays as it is.
 *
 * @param told `observed` belongs to a check and `tried` to a fix; told of the other they are read as a skip.
 */
export function tell(walk: Walk, told: Told): Walk {
  const { now } = walk;
  if (now === null) return walk;
  return { ...walk, done: [...walk.done, doneBy(now, told)], now: null };
}

/** Takes back the last thing told and puts that step again. A walk's first step stays where it is. */
export function goBack(walk: Walk): Walk {
  const at = walk.done.findLastIndex((done) => !(done.kind === 'check' && done.earlier === true));
  const last = walk.done[at];
  if (last === undefined) return walk;
  const now: Step = { kind: last.kind === 'check' ? 'check' : 'fix', cause: last.cause };
  return { ...walk, done: walk.done.filter((_, i) => i !== at), now };
}

function doneBy(step: { readonly kind: 'check' | 'fix'; readonly cause: CauseId }, told: Told): Done {
  const { kind, cause } = step;
  switch (told.kind) {
    case 'stop':
      return { kind: 'stop', cause, said: told.said };
    case 'works':
      return kind === 'fix' ? { kind, cause, worked: true } : { kind: 'fix', cause, worked: true, byItself: true };
    case 'observed':
      return kind === 'check' ? { kind, cause, answer: told.answer } : { kind, cause, worked: null };
    case 'tried':
      return kind === 'fix' ? { kind, cause, worked: told.worked } : { kind, cause, answer: 'cannot-tell' };
    case 'skip':
      return kind === 'check' ? { kind, cause, answer: 'cannot-tell' } : { kind, cause, worked: null };
  }
}
