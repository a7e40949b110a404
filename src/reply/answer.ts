import type { TopicId } from '../basics/ids.ts';
import { dayOf } from '../basics/time.ts';
import { allThatHold, firstThatHolds, holds } from '../knowledge/holds.ts';
import type { PictureUseData, Says } from '../knowledge/schema.ts';
import { plays } from '../knowledge/slots.ts';
import { type AnswerContext, fill, holderOf } from './answer-context.ts';
import { placeLines } from './places.ts';
import type { Block, PictureUse } from './reply.ts';

/** The first clause that holds, filled; null when none does. */
export function say(says: Says | undefined, context: AnswerContext): string | null {
  const text = firstThatHolds(says, holderOf(context));
  return text === null ? null : fill(text, context);
}

/**
 * A topic's answer for the booked van: first line, steps or facts, caution, what to do if it does not work.
 * Empty when the topic has no answer of its own (notices).
 */
export function answerBlocks(topicId: TopicId, context: AnswerContext): Block[] {
  const topic = context.knowledge.topics.get(topicId);
  const answer = topic?.answer;
  if (answer === undefined) return [];
  const holder = holderOf(context);
  const blocks: Block[] = [...outOfUse(topicId, context)];
  const first = say(answer.first, context);
  if (first !== null) blocks.push({ kind: 'line', text: first });
  if (answer.places !== undefined) {
    blocks.push({ kind: 'facts', items: placeLines(answer.places, context) });
  }
  const steps = allThatHold(answer.steps, holder).map((text) => fill(text, context));
  if (steps.length > 0) blocks.push({ kind: 'steps', items: steps });
  const facts = allThatHold(answer.facts, holder).map((text) => fill(text, context));
  if (facts.length > 0) blocks.push({ kind: 'facts', items: facts });
  for (const use of answer.pictures) {
    if (holds(use.when, holder)) blocks.push({ kind: 'picture', use: pictureOf(use, context) });
  }
  const caution = say(answer.caution, context);
  if (caution !== null) blocks.push({ kind: 'caution', text: caution });
  const otherwise = say(answer.otherwise, context);
  if (otherwise !== null) blocks.push({ kind: 'line', text: otherwise });
  return blocks;
}

export function pictureOf(use: PictureUseData, context: AnswerContext): PictureUse {
  return { picture: use.picture, touch: use.touch ?? null, alt: fill(use.alt, context) };
}

/** Kit out of use is said before any answer about it. */
function outOfUse(topicId: TopicId, context: AnswerContext): Block[] {
  const about = context.knowledge.topics.get(topicId)?.about ?? [];
  return outSentences(about, context).map((text) => ({ kind: 'line', text }));
}

function outSentences(about: readonly string[], { knowledge, scope, nowMs }: AnswerContext): string[] {
  const today = dayOf(nowMs, knowledge.firm.timeZone);
  return scope.data.out
    .filter((out) => out.from <= today && (out.until === null || today <= out.until))
    .filter((out) =>
      about.some((part) => plays(out.part, part, knowledge.parts) || plays(part, out.part, knowledge.parts)),
    )
    .map((out) => out.say);
}
