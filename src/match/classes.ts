import type { TopicId } from '../basics/ids.ts';
import type { ChatKind } from './types.ts';

/** What a text may be taken for. */
export type MatchClass =
  | { readonly kind: 'topic'; readonly topic: TopicId }
  | { readonly kind: 'chat'; readonly chat: ChatKind }
  | { readonly kind: 'person' }
  /** Nothing of ours: the weather, another trade, half a sentence. */
  | { readonly kind: 'background' };

/** The class as text, the same in training and use: 'topic/water-none', 'chat/thanks', 'person', 'background'. */
export function classKey(one: MatchClass): string {
  switch (one.kind) {
    case 'topic':
      return `topic/${one.topic}`;
    case 'chat':
      return `chat/${one.chat}`;
    default:
      return one.kind;
  }
}
