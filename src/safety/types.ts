import type { TopicId } from '../basics/ids.ts';

/**
 * `danger`: life; people are alerted at once. `urgent`: harm possible; passed.
 * `ask`: could be either: the notice whole, then one question whose answer decides, danger until answered.
 */
export type Level = 'danger' | 'urgent' | 'ask';

export type Danger = {
  readonly hazard: TopicId;
  readonly level: Level;
  /** BCP 47 of the words that gave it away: the notice is shown in this language. */
  readonly language: string;
  /** Which rule fired on which words, for `ask --why`. */
  readonly why: readonly string[];
};

/** Null: nothing dangerous was read. `why` then lists what was seen and set aside (negated, a question, elsewhere). */
export type SafetyReading = {
  readonly danger: Danger | null;
  readonly why: readonly string[];
  /** How likely any danger is by the second net alone, 0..1; 0 without a net. */
  readonly chance: number;
  /** Whether words of a danger were there and set aside: negated, asked about, long ago, somewhere else. */
  readonly setAside: boolean;
};

/**
 * Reads one text. `before` is what the same person wrote within the last minute, so that a danger split over two
 * messages is not lost. `van` narrows nothing but the hazards of kit that only some vans have.
 */
export type SafetyReader = (
  text: string,
  context: { readonly before: string; readonly vanHas: (part: string) => boolean },
) => SafetyReading;
