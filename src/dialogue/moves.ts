import type { PartId, TopicId } from '../basics/ids.ts';
import type { Outcome } from '../calculators/types.ts';
import type { Step, Walk } from '../faults/types.ts';
import type { ChatKind, Ranked, Understood } from '../match/types.ts';
import type { Booking } from '../message/message.ts';
import type { Danger } from '../safety/types.ts';
import type { DangerAsk, Reason } from '../thread/thread.ts';

/**
 * One thing the bot does next, as data: the reply room puts it into words. A turn makes none (silence) or several,
 * in the order in which they are said; a notice always stands first.
 */
export type Move =
  | { readonly kind: 'notice'; readonly danger: Danger; readonly asks: DangerAsk | null }
  | { readonly kind: 'danger-asks'; readonly hazard: TopicId; readonly asks: DangerAsk }
  | { readonly kind: 'danger-noted'; readonly over: boolean }
  | { readonly kind: 'welcome'; readonly booking: Booking }
  | { readonly kind: 'moved-van'; readonly from: string }
  | { readonly kind: 'ask-code' }
  | { readonly kind: 'wrong-code'; readonly waitMs: number | null }
  | {
      readonly kind: 'answer';
      readonly topic: TopicId;
      readonly probability: number;
      readonly understood: Understood | null;
      readonly asksHelped: boolean;
    }
  | {
      readonly kind: 'choose';
      readonly topics: readonly Ranked[];
      readonly understood: Understood | null;
      readonly why: 'close' | 'apart' | 'stuck' | 'last-try' | 'again';
    }
  | {
      readonly kind: 'lacks';
      readonly topic: TopicId;
      readonly part: PartId;
      readonly probability: number;
      readonly understood: Understood;
    }
  | {
      readonly kind: 'step';
      readonly walk: Walk;
      readonly step: Step;
      readonly opening: boolean;
      readonly probability: number;
      readonly understood: Understood | null;
      readonly note: StepNote | null;
    }
  | { readonly kind: 'walk-fixed'; readonly walk: Walk }
  | { readonly kind: 'offer-walk'; readonly walk: Walk }
  | { readonly kind: 'recap'; readonly walk: Walk }
  | {
      readonly kind: 'calculation';
      readonly topic: TopicId;
      readonly outcome: Outcome;
      readonly probability: number;
      readonly understood: Understood | null;
    }
  | {
      readonly kind: 'pass';
      /** What the hirer can do until somebody comes, in the firm's words. */
      readonly meanwhile?: string;
      readonly reason: Reason;
      readonly understood: Understood | null;
      readonly language: string | null;
    }
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'chat'; readonly chat: ChatKind }
  | { readonly kind: 'helped' }
  | { readonly kind: 'old-button' }
  /** A word that answers something, with no question of the bot's own open. */
  | { readonly kind: 'nothing-open' }
  | { readonly kind: 'later'; readonly walk: Walk }
  /** What was tried in this thread, when no walk is on. */
  | { readonly kind: 'record'; readonly lines: readonly string[] }
  | { readonly kind: 'withdrawn' }
  | { readonly kind: 'waiting' };

/** What is said before a step beyond the step itself. */
export type StepNote = 'how' | 'again' | 'tried' | 'back' | 'unknown' | 'unclear' | 'done';
