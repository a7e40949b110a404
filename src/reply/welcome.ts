import type { Served } from '../dialogue/draft.ts';
import type { Booking } from '../message/message.ts';
import type { Reply } from './reply.ts';
import { ASK_FOR_CODE, lineReply, topicChoice } from './told.ts';

/** The greeting on start: the van's name and three things people ask first; without a booking, how to name the van. */
export function welcomeReply(booking: Booking | null, { knowledge }: Pick<Served, 'knowledge'>): Reply {
  const van = booking === null ? undefined : knowledge.vans.get(booking.van);
  if (booking === null || van === undefined) return lineReply('welcome', ASK_FOR_CODE);
  const name = booking.firstName === '' ? '' : ` ${booking.firstName}`;
  return {
    kind: 'welcome',
    from: null,
    topic: null,
    blocks: [
      {
        kind: 'line',
        text: `Hello${name}. I know ${van.name}, the van you hired. Ask me anything about it in your own words, at any hour.`,
      },
      { kind: 'line', text: 'People often ask first:' },
    ],
    choices: van.data.asked.map((topic) => topicChoice(topic, knowledge.topics.get(topic)?.title ?? topic)),
  };
}
