import { never } from '../basics/never.ts';
import { MINUTE_MS } from '../basics/time.ts';
import { choiceId } from '../dialogue/choices.ts';
import { NONE_LABEL } from '../dialogue/menu.ts';
import type { Move } from '../dialogue/moves.ts';
import { answerBlocks } from './answer.ts';
import { fill } from './answer-context.ts';
import { calculationReply } from './calculation.ts';
import { lackText } from './lacks.ts';
import { dangerAsksReply, dangerNotedReply, noticeReply } from './notice.ts';
import { passLines, waitingLine } from './pass-words.ts';
import type { Block, Choice, Reply } from './reply.ts';
import { laterReply, offerWalkReply, recapReply, recordReply, stepReply, walkFixedReply } from './step.ts';
import { ASK_FOR_CODE, contextOf, lineReply, type Told, topicChoice, whileWaiting } from './told.ts';
import { welcomeReply } from './welcome.ts';

/** Puts one move into words. Null: nothing is said. */
export function say(move: Move, told: Told): Reply | null {
  switch (move.kind) {
    case 'notice':
      return noticeReply(move, told);
    case 'danger-asks':
      return dangerAsksReply(move.hazard, move.asks, told);
    case 'danger-noted':
      return dangerNotedReply(move.over, told);
    case 'welcome':
      return welcomeReply(told.booking, told.served);
    case 'moved-van':
      return lineReply(
        'chat',
        `Your booking is now for ${told.scope?.name ?? 'another van'}, no longer ${move.from}. From here on I answer for ${told.scope?.name ?? 'it'}. What would you like to know?`,
      );
    case 'ask-code':
      return lineReply('chat', ASK_FOR_CODE);
    case 'wrong-code':
      return lineReply('chat', wrongCode(move.waitMs));
    case 'answer':
      return answer(move, told);
    case 'choose':
      return choose(move, told);
    case 'lacks':
      return told.scope === null
        ? null
        : marked(lineReply('lacks', lackText(move.part, told.scope, told.served.knowledge), move.topic), told);
    case 'step':
      return stepReply(move, told);
    case 'walk-fixed':
      return walkFixedReply(move.walk, told);
    case 'offer-walk':
      return offerWalkReply(move.walk, told);
    case 'recap':
      return recapReply(move.walk, told);
    case 'calculation':
      return calculationReply(move, told);
    case 'pass':
      return pass(move, told);
    case 'unreadable':
      return lineReply(
        'chat',
        'I cannot hear or see this. If anyone may be in danger, get out and call 999 or 112; otherwise type it.',
      );
    case 'chat':
      return lineReply('chat', chatLine(move.chat, told));
    case 'helped':
      return lineReply('chat', 'Good. I am here if anything else comes up.');
    case 'old-button':
      return lineReply(
        'chat',
        'That button belongs to an earlier question. Tell me in your own words what you need now.',
      );
    case 'nothing-open':
      return lineReply(
        'chat',
        'I have no question open with you just now. Tell me in a few words what you need, or say "person".',
      );
    case 'later':
      return laterReply(move.walk, told);
    case 'record':
      return recordReply(move.lines);
    case 'withdrawn':
      return lineReply(
        'chat',
        'All right, I have told the yard that it is no longer needed. I am here if anything else comes up.',
      );
    case 'waiting':
      return lineReply('chat', waitingLine(told.served.knowledge.firm, told.nowMs));
    default:
      return never(move);
  }
}

function marked(reply: Reply, told: Told): Reply {
  return { ...reply, blocks: whileWaiting(reply.blocks, told) };
}

function answer(move: Extract<Move, { kind: 'answer' }>, told: Told): Reply | null {
  const context = contextOf(told);
  if (context === null) return null;
  const choices: Choice[] = move.asksHelped
    ? [
        { id: choiceId({ kind: 'helped', topic: move.topic, yes: true }), label: 'That worked', tone: 'quiet' },
        { id: choiceId({ kind: 'helped', topic: move.topic, yes: false }), label: 'Still stuck', tone: 'quiet' },
      ]
    : [];
  return {
    kind: 'answer',
    from: null,
    topic: move.topic,
    blocks: whileWaiting(answerBlocks(move.topic, context), told),
    choices,
  };
}

function choose(move: Extract<Move, { kind: 'choose' }>, told: Told): Reply {
  const { topics } = told.served.knowledge;
  const opening = {
    close: 'Is it one of these?',
    apart: 'Which of these is it? Then I know where to look first.',
    stuck: 'Then perhaps one of these fits better?',
    'last-try': 'I am not sure what you mean. Is it one of these?',
    again: 'I did not get which of these you mean. Please press one, or type its number.',
  }[move.why];
  return {
    kind: 'choose',
    from: null,
    topic: null,
    blocks: whileWaiting([{ kind: 'line', text: opening }], told),
    choices: [
      ...move.topics.map(({ topic }) => topicChoice(topic, topics.get(topic)?.title ?? topic)),
      { id: choiceId({ kind: 'none-of-these' }), label: NONE_LABEL, tone: 'quiet' },
    ],
  };
}

function pass(move: Extract<Move, { kind: 'pass' }>, told: Told): Reply {
  const { firm, talk } = told.served.knowledge;
  const foreign = move.language === null ? undefined : talk.languages[move.language];
  const lines = passLines(move.reason, firm, told.nowMs);
  const meanwhile = move.meanwhile === undefined ? [] : [`Until then: ${move.meanwhile}`];
  const opening = foreign === undefined ? [] : [foreign.willRead];
  const blocks = [...opening, ...lines, ...meanwhile].map((text): Block => ({ kind: 'line', text }));
  return { kind: 'pass', from: null, topic: null, blocks, choices: [] };
}

function chatLine(kind: string, told: Told): string {
  const { knowledge } = told.served;
  const reply = knowledge.talk.chat[kind]?.reply ?? 'What can I do for you?';
  const context = contextOf(told);
  return context === null
    ? reply.replaceAll('{van.name}', 'your van').replaceAll('{firm.name}', knowledge.firm.name)
    : fill(reply, context);
}

function wrongCode(waitMs: number | null): string {
  if (waitMs === null)
    return 'I do not know that code. It stands on the front of the document wallet, like K7QM-4T2X. Please look once more.';
  return `That is one wrong code too many. Please wait ${Math.ceil(waitMs / MINUTE_MS)} minutes, or open the link from your booking. You can always say "person".`;
}
