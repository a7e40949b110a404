import type { PartId, TopicId, VanId } from '../basics/ids.ts';

export type Ranked = { readonly topic: TopicId; readonly probability: number };

/** Small talk and asking for a person are classes of their own, trained like topics. */
export type ChatKind =
  | 'greeting'
  | 'thanks'
  | 'bye'
  | 'ok'
  | 'how-are-you'
  | 'who-are-you'
  | 'praise'
  | 'sorry'
  | 'chat';

export type Decision =
  | { readonly kind: 'answer'; readonly topic: TopicId; readonly probability: number }
  | { readonly kind: 'choose'; readonly topics: readonly Ranked[] }
  /** The message is about kit this van has not. */
  | { readonly kind: 'lacks'; readonly topic: TopicId; readonly part: PartId; readonly probability: number }
  | { readonly kind: 'chat'; readonly chat: ChatKind }
  | { readonly kind: 'person' }
  /** An ordinary question in another language: BCP 47 code. */
  | { readonly kind: 'language'; readonly language: string }
  | { readonly kind: 'pass'; readonly why: 'no-such-topic' | 'too-close' | 'word-not-known' };

/** One question of a message, understood. A message may hold two. */
export type Understood = {
  readonly text: string;
  readonly decision: Decision;
  /** Best first; empty for small talk. */
  readonly ranked: readonly Ranked[];
  /** How the decision came about, for `ask --why` and the operator. */
  readonly why: Why;
};

export type Why = {
  readonly tokens: readonly { readonly said: string; readonly read: string }[];
  readonly linked: readonly PartId[];
  readonly features: readonly { readonly topic: TopicId; readonly feature: string; readonly weight: number }[];
  readonly costs: readonly { readonly decision: string; readonly minutes: number }[];
};

export type UnderstandContext = {
  readonly van: VanId;
  /** The topic just talked about: favoured when the message refers back. */
  readonly lastTopic: TopicId | null;
  readonly lastText: string;
};

/** Reads a message and decides. Pure; the same text and context give the same result. */
export type Matcher = {
  /** In the order asked; at least one. */
  readonly understand: (text: string, context: UnderstandContext) => readonly Understood[];
  /** The topics of the van's scope nearest to the text when nothing was sure enough: for 'Is it one of these?'. */
  readonly nearest: (text: string, context: UnderstandContext, most: number) => readonly Ranked[];
};
