import type { BookingRef, PartId, TopicId, VanId } from '../basics/ids.ts';
import type { Inputs } from '../calculators/types.ts';
import type { Walk } from '../faults/types.ts';
import type { Address, Attachment } from '../message/message.ts';

/** Who holds the thread. `waiting`: passed to people, nobody has it yet. */
export type Keeper = 'bot' | 'waiting' | 'staff';

/** Why a thread goes to people. */
export type Reason = 'unsure' | 'asked' | 'safety' | 'not-fixed' | 'staff-only' | 'language';

/** A question of the bot's own that the next message may answer. Exactly one can be open. */
export type Open =
  /** `again`: put once more, since what was said chose nothing. */
  | { readonly kind: 'choice'; readonly text: string; readonly topics: readonly TopicId[]; readonly again?: true }
  | { readonly kind: 'helped'; readonly topic: TopicId; readonly text: string; readonly next: readonly TopicId[] }
  | { readonly kind: 'step'; readonly walk: Walk }
  /** Whether to go on with the walk laid aside. */
  | { readonly kind: 'carry-on' }
  | {
      readonly kind: 'input';
      readonly topic: TopicId;
      readonly asks: string;
      readonly inputs: Inputs;
      readonly text: string;
    }
  | { readonly kind: 'danger'; readonly hazard: TopicId; readonly asks: DangerAsk }
  | { readonly kind: 'code' }
  /** Asked once, when `by` has given the thread back. */
  | { readonly kind: 'all-well'; readonly by: string };

export type DangerAsk = 'is-it' | 'everyone-out' | 'anyone-ill' | 'where';

/** What the thread has told us that later turns may use. Small on purpose: it is saved with every message. */
export type Memory = {
  readonly lastTopic: TopicId | null;
  readonly lastText: string;
  readonly lastInputs: Inputs | null;
  readonly lastAtMs: number;
  /** The last text of all, whatever became of it: a danger may be told in two. Left out before the first. */
  readonly heard?: { readonly text: string; readonly atMs: number };
  /** Observations made on walks in this thread, by check id: they inform the next walk. */
  readonly seen: Readonly<Record<string, 'yes' | 'no' | 'cannot-tell'>>;
  /** What was tried, in words, for the brief. */
  readonly tried: readonly string[];
  /** A walk laid aside by a change of subject. */
  readonly aside: Walk | null;
  /** Dangers shown in this thread: no fault finding on gas, mains or alarms afterwards. */
  readonly dangers: readonly TopicId[];
  readonly wrongCodesAtMs: readonly number[];
  readonly language: string;
};

/**
 * One person's conversation on one channel, bound to at most one booking.
 * Law: while `keeper` is `staff` the bot says nothing but notices.
 */
export type Thread = Address & {
  readonly id: string;
  readonly booking: BookingRef | null;
  /** The van the thread was last about: when the booking moves to another van, open questions end and we say so. */
  readonly van: VanId | null;
  readonly keeper: Keeper;
  readonly keeperName: string | null;
  readonly reason: Reason | null;
  readonly sinceMs: number;
  readonly open: Open | null;
  readonly memory: Memory;
  /** Grows by one with each save; a save against an older version is refused. */
  readonly version: number;
};

/** One line of what staff see: 'Is the pump switch on?' - 'yes'. */
export type Tried = { readonly did: string; readonly answered: string };

/** What staff get with a pass. */
export type Brief = {
  readonly threadId: string;
  readonly booking: BookingRef | null;
  readonly firstName: string | null;
  readonly van: string | null;
  readonly site: string | null;
  readonly pitch: string | null;
  readonly nightsLeft: number | null;
  readonly amps: number | null;
  readonly phone: string | null;
  readonly reason: Reason;
  readonly question: string;
  readonly understood: readonly { readonly topic: TopicId; readonly title: string; readonly probability: number }[];
  readonly tried: readonly string[];
  readonly attachments: readonly Attachment[];
  readonly hazard: TopicId | null;
  readonly language: string;
  /** The graph's best answer as the hirer would read it, for staff to send as it is or edited. */
  readonly suggested: string | null;
  /** Whose business it was when it came, by rota name; null or left out: everyone's, or nobody is there at that hour. */
  readonly tell?: string | null;
  readonly atMs: number;
};

/** Facts a turn brings about. The shell acts on them and stores them. */
export type Event =
  | {
      readonly kind: 'passed';
      readonly reason: Reason;
      readonly brief: Brief;
      readonly urgency: 'danger' | 'urgent' | 'usual';
    }
  | { readonly kind: 'taken'; readonly by: string }
  | { readonly kind: 'given-back'; readonly by: string }
  /** `attachments` is left out when nothing was sent along. */
  | {
      readonly kind: 'staff-said';
      readonly by: string;
      readonly text: string;
      readonly attachments?: readonly Attachment[];
    }
  /** Staff changed what they had said in the thread's line `line`. */
  | { readonly kind: 'staff-put-right'; readonly by: string; readonly text: string; readonly line: number }
  /** The keeper went off duty with the hirer unanswered. */
  | { readonly kind: 'shift-ended'; readonly by: string }
  /** Stays with staff. */
  | { readonly kind: 'staff-noted'; readonly by: string; readonly text: string }
  | { readonly kind: 'bound'; readonly booking: BookingRef }
  | { readonly kind: 'answered'; readonly topic: TopicId; readonly probability: number }
  | { readonly kind: 'offered'; readonly topics: readonly TopicId[] }
  | { readonly kind: 'notice'; readonly hazard: TopicId; readonly level: 'danger' | 'urgent' | 'ask' }
  | { readonly kind: 'helped'; readonly topic: TopicId; readonly yes: boolean }
  | {
      readonly kind: 'gap';
      readonly text: string;
      readonly why: GapReason;
      readonly van: VanId | null;
      readonly topics: readonly TopicId[];
    }
  | {
      readonly kind: 'walk-ended';
      readonly symptom: TopicId;
      readonly van: VanId;
      readonly end: 'fixed' | 'passed' | 'left';
      readonly cause: string | null;
      readonly tried: readonly Tried[];
    }
  | {
      readonly kind: 'to-staff';
      readonly text: string;
      readonly attachments: readonly Attachment[];
      readonly edit: boolean;
    }
  /** Told later what was a gap when it was asked; `gap` is the id of that gap's event. */
  | { readonly kind: 'followed-up'; readonly gap: number; readonly topic: TopicId }
  | { readonly kind: 'lacks'; readonly topic: TopicId; readonly part: PartId };

export type GapReason =
  | 'no-such-topic'
  | 'too-close'
  | 'word-not-known'
  | 'van-has-none'
  | 'did-not-help'
  | 'nothing-picked';
