import type { CauseId, TopicId } from '../basics/ids.ts';

/** What a statement answers to a yes-or-no question. */
export type Verdict = 'yes' | 'no';
/**
 * A verdict, and the words of the reply that it rests on: the others were not understood. `half`: it answers only one part
 * of a question that asks for several at once.
 */
export type Finding = { readonly verdict: Verdict; readonly rests: ReadonlySet<string>; readonly half?: true };
export type Observation = Verdict | 'cannot-tell';

/**
 * A check or a fix that was put to the hirer, and what came of it.
 * `earlier`: observed before this walk, in the same thread, and not put again.
 * `worked` is null when the fix was skipped; `byItself`: it works again though nothing was put but a check. `stop`: the hirer said a stop condition, in the words kept.
 */
export type Done =
  | { readonly kind: 'check'; readonly cause: CauseId; readonly answer: Observation; readonly earlier?: true }
  | { readonly kind: 'fix'; readonly cause: CauseId; readonly worked: boolean | null; readonly byItself?: true }
  | { readonly kind: 'stop'; readonly cause: CauseId; readonly said: string };

export type Step =
  | { readonly kind: 'check'; readonly cause: CauseId }
  | { readonly kind: 'fix'; readonly cause: CauseId };

/** Guided fault finding on one symptom: small and plain, because it is saved with the thread. */
export type Walk = {
  readonly symptom: TopicId;
  /** How many times as likely as its prior each cause is made by the opening words; 1 for causes left out. */
  readonly leaning: Readonly<Record<CauseId, number>>;
  readonly done: readonly Done[];
  /** The step that is with the hirer now. */
  readonly now: Step | null;
  readonly sinceMs: number;
};

/**
 * What comes next. `pass`: people take over, because that costs fewer minutes (`cheaper`), because nothing is left to
 * do (`nothing-left`), or because a stop condition holds (`stopped`); `likely` is the cause believed in most, null when
 * none is believed in more than the rest together. `fixed`: by the fix of `cause`; null when it works again whatever did it.
 */
export type Next =
  | { readonly kind: 'check'; readonly cause: CauseId }
  | { readonly kind: 'fix'; readonly cause: CauseId }
  | { readonly kind: 'pass'; readonly why: 'cheaper' | 'nothing-left' | 'stopped'; readonly likely: CauseId | null }
  | { readonly kind: 'fixed'; readonly cause: CauseId | null };
