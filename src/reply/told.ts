import { choiceId } from '../dialogue/choices.ts';
import type { Situation } from '../dialogue/draft.ts';
import type { Thread } from '../thread/thread.ts';
import type { AnswerContext } from './answer-context.ts';
import type { Block, Choice, Reply, ReplyKind } from './reply.ts';

/** The situation, and the thread as it is after the turn. */
export type Told = Situation & { readonly thread: Thread };

/** The context in which the booked van's answers are given; null while no van is known. */
export function contextOf({ scope, site, nowMs, served }: Situation): AnswerContext | null {
  return scope === null ? null : { knowledge: served.knowledge, scope, site, nowMs };
}

/** A reply of one line. */
export function lineReply(
  kind: ReplyKind,
  text: string,
  topic: string | null = null,
  choices: readonly Choice[] = [],
): Reply {
  return { kind, from: null, topic, blocks: [{ kind: 'line', text }], choices };
}

export function topicChoice(topic: string, title: string): Choice {
  return { id: choiceId({ kind: 'topic', topic }), label: title, tone: 'next' };
}

export const PERSON_CHOICE: Choice = { id: choiceId({ kind: 'person' }), label: 'Get a person', tone: 'quiet' };

/** While people are awaited the bot still answers what it is sure of, marked as its own. */
export function whileWaiting(blocks: readonly Block[], { thread, nowMs }: Told): readonly Block[] {
  if (thread.keeper !== 'waiting' || thread.sinceMs === nowMs) return blocks;
  return [{ kind: 'line', text: 'While you wait, this is from the bot:' }, ...blocks];
}

export const ASK_FOR_CODE =
  'I answer for the very van you hired, so I need to know which it is. Open the link from your booking, or type the code on the document wallet (like K7QM-4T2X). You can also say "person" to reach the yard.';
