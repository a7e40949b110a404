import type { CauseId, TopicId } from '../basics/ids.ts';

export type Observation = 'yes' | 'no' | 'cannot-tell';

/** A check or a fix that was put to the hirer, and what came of it. */
export type Done =
  | { readonly kind: 'check'; readonly cause: CauseId; readonly answer: Observation }
  | { readonly kind: 'fix'; readonly cause: CauseId; readonly worked: boolean | null };

export type Step =
  | { readonly kind: 'check'; readonly cause: CauseId }
  | { readonly kind: 'fix'; readonly cause: CauseId }
  /** Symptoms that fit several entries: which of these is it? */
  | { readonly kind: 'which'; readonly symptoms: readonly TopicId[] };

/** Guided fault finding on one symptom: small and plain, because it is saved with the thread. */
export type Walk = {
  readonly symptom: TopicId;
  readonly done: readonly Done[];
  /** The step that is with the hirer now. */
  readonly now: Step | null;
  readonly sinceMs: number;
};
