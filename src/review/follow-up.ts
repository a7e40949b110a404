import type { TopicId } from '../basics/ids.ts';
import { dayOf, daysBetween, localTime, MINUTE_MS } from '../basics/time.ts';
import { choiceId } from '../dialogue/choices.ts';
import type { Binding, Served } from '../dialogue/draft.ts';
import type { Booking, Message } from '../message/message.ts';
import type { Reply } from '../reply/reply.ts';
import type { Event, Thread } from '../thread/thread.ts';
import type { GrowthDecision } from './decisions.ts';
import type { Gap } from './gaps.ts';
import { withoutBrackets } from './strip.ts';

/** A gap whose hirer may be told what was taught since. */
export type AskedThen = Pick<Gap, 'id' | 'threadId' | 'text' | 'atMs'> & { readonly topic: TopicId };

export type FollowedUp =
  | {
      readonly kind: 'told';
      readonly thread: Thread;
      readonly replies: readonly Reply[];
      readonly events: readonly Event[];
    }
  /** In the middle of something, or asleep: try again. */
  | { readonly kind: 'later' }
  /** Not now and not ever: gone home, with people, in danger, told before, or the van has none of it. */
  | { readonly kind: 'never' };

/** The whole turn, given by the caller. */
export type Turn = (
  thread: Thread,
  message: Message,
  served: Served,
  binding: Binding,
  nowMs: number,
) => { readonly thread: Thread; readonly replies: readonly Reply[]; readonly events: readonly Event[] };

export type FollowUpParts = {
  readonly asked: AskedThen;
  readonly thread: Thread;
  readonly booking: Booking | null;
  /** What came about in this thread, of the kind 'followed-up'. */
  readonly told: readonly Event[];
  readonly served: Served;
  readonly turn: Turn;
  readonly nowMs: number;
};

/** While a hirer is in the middle of something the bot does not break in. */
const TALKING_MS = 30 * MINUTE_MS;
/** Nobody's telephone is made to sound at night for something that can wait. */
const AWAKE = { fromHour: 8, untilHour: 21 };

/** The topic that a decision taught an answer to; null when it taught none that could be told. */
export function topicTaught(decision: GrowthDecision): TopicId | null {
  switch (decision.kind) {
    case 'add-wordings':
    case 'improve-answer':
      return decision.topic;
    case 'new-topic':
      return decision.topic.id;
    default:
      return null;
  }
}

/**
 * Of gaps that a change settles, those whose hirer may be told: nobody has answered them since. One that is asked twice
 * in a thread is told once.
 */
export function toTell(gaps: readonly Gap[], decision: GrowthDecision): readonly AskedThen[] {
  const topic = topicTaught(decision);
  if (topic === null) return [];
  const only = decision.kind === 'improve-answer' ? decision.van : null;
  const open = gaps.filter((gap) => gap.ended === 'open' && (only === null || gap.van === only));
  const latest = new Map(open.map(({ id, threadId, text, atMs }) => [threadId, { id, threadId, text, atMs, topic }]));
  return [...latest.values()];
}

/** Whether a booking's hirer is out with the van today. */
export function isOnHire({ from, to }: Booking, nowMs: number, zone: string): boolean {
  const today = dayOf(nowMs, zone);
  return from <= today && (to === null || today <= to);
}

/**
 * Tells a hirer what could not be answered when they asked: their own van's answer, as a turn gives it. Nothing is said
 * in a thread that people hold, or in which there was a danger.
 */
export function followUp({ asked, thread, booking, told, served, turn, nowMs }: FollowUpParts): FollowedUp {
  const { knowledge } = served;
  const { timeZone } = knowledge.firm;
  const scope = booking === null ? undefined : knowledge.vans.get(booking.van);
  const isTold = told.some((event) => event.kind === 'followed-up' && event.gap === asked.id);
  const isWithPeople = thread.keeper === 'staff' || thread.reason === 'safety' || thread.memory.dangers.length > 0;
  if (booking === null || scope === undefined || isTold || isWithPeople || thread.open?.kind === 'danger')
    return { kind: 'never' };
  if (!isOnHire(booking, nowMs, timeZone) || knowledge.topics.get(asked.topic)?.notice === true)
    return { kind: 'never' };
  // A graph that is being served from before the change: it will be there after the next reload.
  if (!knowledge.topics.has(asked.topic)) return { kind: 'later' };
  if (!scope.topics.has(asked.topic)) return { kind: 'never' };
  const { hour } = localTime(nowMs, timeZone);
  const isTalking = thread.open !== null && nowMs - thread.memory.lastAtMs < TALKING_MS;
  if (hour < AWAKE.fromHour || hour >= AWAKE.untilHour || isTalking) return { kind: 'later' };
  const { channel, address } = thread;
  const pressed: Message = {
    channel,
    address,
    key: `followed-up:${asked.id}`,
    atMs: nowMs,
    text: '',
    choice: choiceId({ kind: 'topic', topic: asked.topic }),
    attachments: [],
    edit: false,
    from: null,
    startToken: null,
  };
  const turned = turn(thread, pressed, served, { booking, code: 'none' }, nowMs);
  const [first, ...rest] = turned.replies;
  if (first === undefined) return { kind: 'never' };
  const lead = `You asked ${dayWords(asked.atMs, nowMs, timeZone)}: ‘${withoutBrackets(asked.text)}’. Here is the answer.`;
  return {
    kind: 'told',
    thread: turned.thread,
    replies: [{ ...first, blocks: [{ kind: 'line', text: lead }, ...first.blocks] }, ...rest],
    events: [...turned.events, { kind: 'followed-up', gap: asked.id, topic: asked.topic }],
  };
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

function dayWords(atMs: number, nowMs: number, zone: string): string {
  const days = daysBetween(dayOf(atMs, zone), dayOf(nowMs, zone));
  if (days === 0) return 'earlier today';
  return days < 7 ? `on ${WEEKDAYS[localTime(atMs, zone).weekday]}` : 'a while ago';
}
