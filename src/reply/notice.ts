import { choiceId } from '../dialogue/choices.ts';
import type { Move } from '../dialogue/moves.ts';
import { staffedAt, whenText } from '../hours/firm-hours.ts';
import { followUpText } from '../safety/follow-up.ts';
import { type Notice, type NoticeOptions, noticeOf } from '../safety/notice.ts';
import type { DangerAsk } from '../thread/thread.ts';
import type { Block, Choice, Reply } from './reply.ts';
import type { Told } from './told.ts';

type NoticeMove = Extract<Move, { kind: 'notice' }>;

/**
 * A notice, whole: the action in the first line, whether anybody of the firm answers, the steps, the numbers to call,
 * whose word counts, and the one question that changes the action.
 */
export function noticeReply(move: NoticeMove, told: Told): Reply {
  const { hazard, language } = move.danger;
  const notice = noticeOf(hazard, optionsFor(language, told));
  const asked: Block[] =
    move.asks === null
      ? []
      : [{ kind: 'line', text: followUpText(move.asks, hazard, language, told.served.knowledge.safety) }];
  return {
    kind: 'notice',
    from: null,
    topic: hazard,
    blocks: [...(notice === null ? [] : noticeBlocks(notice)), ...asked],
    choices: move.asks === null || move.asks === 'where' ? [] : yesNo(),
  };
}

function noticeBlocks(notice: Notice): Block[] {
  const line = (text: string): Block => ({ kind: 'line', text });
  return [
    line(notice.first),
    ...(notice.closed === null ? [] : [line(notice.closed)]),
    { kind: 'steps', items: notice.steps },
    ...notice.calls.map((call): Block => ({ kind: 'call', ...call })),
    { kind: 'caution', text: notice.after },
    line(notice.local),
    ...(notice.english === null
      ? []
      : [
          line(notice.english.heading),
          line(notice.english.first),
          { kind: 'steps', items: notice.english.steps } as const,
          { kind: 'caution', text: notice.english.after } as const,
        ]),
  ];
}

function optionsFor(language: string, { served, site, scope, nowMs }: Told): NoticeOptions {
  const { safety, firm } = served.knowledge;
  const staffed = staffedAt(firm, nowMs);
  return {
    safety,
    firm,
    language,
    country: site?.country ?? firm.country,
    vanName: scope?.name ?? null,
    answers:
      staffed.kind === 'open'
        ? { kind: 'office' }
        : staffed.kind === 'on-call'
          ? { kind: 'on-call' }
          : { kind: 'closed', opens: whenText(staffed.opensMs, nowMs, firm.timeZone) },
  };
}

function yesNo(): Choice[] {
  return (['yes', 'no'] as const).map((answer) => ({
    id: choiceId({ kind: 'danger', answer }),
    label: answer === 'yes' ? 'Yes' : 'No',
    tone: 'next',
  }));
}

/** The next of the questions that change the action. */
export function dangerAsksReply(hazard: string, asks: DangerAsk, told: Told): Reply {
  const text = followUpText(asks, hazard, told.thread.memory.language, told.served.knowledge.safety);
  return {
    kind: 'chat',
    from: null,
    topic: null,
    blocks: [{ kind: 'line', text }],
    choices: asks === 'where' ? [] : yesNo(),
  };
}

/** What is said when the last of them is answered, or when it was not that danger after all. */
export function dangerNotedReply(over: boolean, told: Told): Reply {
  const { firm } = told.served.knowledge;
  const staffed = staffedAt(firm, told.nowMs);
  const text = over
    ? 'Good that it is not that. If anything changes, get out first and tell me after. What is it you need?'
    : staffed.kind === 'closed'
      ? 'I have added that for the yard. Nobody of the firm answers at this hour, so stay away from it and call 999 or 112 if it gets worse.'
      : 'I have added that for our people and told them at once. Stay away from it, and call 999 or 112 if it gets worse.';
  return { kind: 'chat', from: null, topic: null, blocks: [{ kind: 'line', text }], choices: [] };
}
