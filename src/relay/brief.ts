import type { Situation } from '../dialogue/draft.ts';
import type { Move } from '../dialogue/moves.ts';
import { nightsLeft } from '../hours/nights.ts';
import type { Understood } from '../match/types.ts';
import { answerBlocks } from '../reply/answer.ts';
import { plainText } from '../reply/reply.ts';
import { contextOf } from '../reply/told.ts';
import type { Brief, Reason, Thread } from '../thread/thread.ts';
import { peopleFor } from './on-duty.ts';

/** Below this the best topic is no more than a guess, and suggesting its answer would only mislead. */
const SUGGEST_FROM = 0.15;

/** A topic less likely than this tells nobody what was meant. */
const UNDERSTOOD_FROM = 0.05;

/** Gathers what a person needs to take the thread over in five seconds. */
export function briefOf(thread: Thread, reason: Reason, moves: readonly Move[], situation: Situation): Brief {
  const { booking, scope, site, served, message, nowMs } = situation;
  const understood = understoodIn(moves);
  const notice = moves.find((move) => move.kind === 'notice');
  const text = message.text.trim() === '' ? thread.memory.lastText : message.text;
  return {
    threadId: thread.id,
    booking: booking?.ref ?? null,
    firstName: booking?.firstName ?? null,
    van: scope?.name ?? null,
    site: site?.name ?? null,
    pitch: booking?.pitch ?? null,
    nightsLeft: nightsLeft(booking?.to ?? null, nowMs, served.knowledge.firm.timeZone),
    amps: booking?.amps ?? null,
    phone: booking?.phone ?? null,
    reason,
    question: text,
    understood: (understood?.ranked ?? [])
      .slice(0, 3)
      .filter(({ probability }) => probability >= UNDERSTOOD_FROM)
      .map(({ topic, probability }) => ({
        topic,
        title: served.knowledge.topics.get(topic)?.title ?? topic,
        probability,
      })),
    tried: thread.memory.tried,
    attachments: message.attachments,
    hazard: notice?.kind === 'notice' ? notice.danger.hazard : null,
    language: thread.memory.language,
    suggested: notice === undefined ? suggestion(understood, moves, { ...situation, thread }) : null,
    tell: reason === 'safety' ? null : (peopleFor(reason, served.knowledge.firm, nowMs)[0]?.firstName ?? null),
    atMs: nowMs,
  };
}

function understoodIn(moves: readonly Move[]): Understood | null {
  for (const move of moves) if ('understood' in move && move.understood !== null) return move.understood;
  return null;
}

/** The best topic's answer as the hirer would read it; null when they are reading it already. */
function suggestion(
  understood: Understood | null,
  moves: readonly Move[],
  told: Situation & { readonly thread: Thread },
): string | null {
  const best = understood?.ranked[0];
  const context = contextOf(told);
  if (best === undefined || best.probability < SUGGEST_FROM || context === null) return null;
  if (moves.some((move) => move.kind === 'answer' && move.topic === best.topic)) return null;
  const text = plainText({ blocks: answerBlocks(best.topic, context), choices: [] });
  return text === '' ? null : text;
}
