import { choiceId, type StepPress, stepPresses } from '../dialogue/choices.ts';
import type { Move } from '../dialogue/moves.ts';
import { triedLines } from '../dialogue/walk-record.ts';
import { leavesOver } from '../faults/left-over.ts';
import type { Walk } from '../faults/types.ts';
import { holds } from '../knowledge/holds.ts';
import type { ScopedCause } from '../knowledge/knowledge.ts';
import { answerBlocks, pictureOf, say } from './answer.ts';
import type { AnswerContext } from './answer-context.ts';
import type { Block, Choice, Reply } from './reply.ts';
import { contextOf, lineReply, PERSON_CHOICE, type Told, whileWaiting } from './told.ts';

type StepMove = Extract<Move, { kind: 'step' }>;

const LABELS: Record<StepPress, string> = {
  yes: 'Yes',
  no: 'No',
  unsure: 'Cannot tell',
  worked: 'That worked',
  still: 'Still stuck',
  skip: 'Skip this',
  back: 'Go back',
  how: 'Show me how',
  tried: 'What have we tried',
};

/** One step of a walk: one thing to look at or to do, and what can be said to it. */
export function stepReply(move: StepMove, told: Told): Reply | null {
  const context = contextOf(told);
  const { step, walk } = move;
  const cause = context?.scope.causes(walk.symptom).find((each) => each.id === step.cause);
  if (context === null || cause === undefined) return null;
  const opening = move.opening ? openingBlocks(walk.symptom, context) : noteBlocks(move, cause, context, told);
  const blocks = [
    ...opening,
    ...(step.kind === 'check' ? checkBlocks(cause, context, move.note === 'how') : fixBlocks(cause, context)),
  ];
  return {
    kind: 'check',
    from: null,
    topic: walk.symptom,
    blocks: whileWaiting(blocks, told),
    choices: choicesFor(step.kind, cause, walk.symptom),
  };
}

/** The symptom's own first line and caution, said once at the start. */
function openingBlocks(symptom: string, context: AnswerContext): Block[] {
  const blocks = answerBlocks(symptom, context);
  const first = blocks.findIndex((block) => block.kind === 'line');
  return blocks.filter((block, i) => i <= first || block.kind === 'caution');
}

function noteBlocks(move: StepMove, cause: ScopedCause, context: AnswerContext, told: Told): Block[] {
  const line = (text: string): Block[] => [{ kind: 'line', text }];
  switch (move.note) {
    case 'how': {
      const look = say(cause.check?.look, context);
      return line(look ?? 'Take your time: look at it as closely as you can without opening or taking anything off.');
    }
    case 'tried': {
      const lines = triedLines(move.walk, context.scope, told);
      return lines.length === 0
        ? line('Nothing yet: this is the first step.')
        : [...line('So far:'), { kind: 'facts', items: lines }];
    }
    case 'back':
      return line('Back one step:');
    case 'again':
      return line('This is the first step:');
    case 'unknown':
      return line('I did not understand that. We are at this step; you can also say "skip" or "person".');
    case 'unclear':
      return line(move.step.kind === 'check' ? 'Just to be sure: is that a yes or a no?' : 'Just to be sure:');
    case 'done':
      return line('Thank you. Take your time, and tell me how it is then.');
    case null:
      return [];
  }
}

function checkBlocks(cause: ScopedCause, context: AnswerContext, shown: boolean): Block[] {
  const ask = say(cause.check?.ask, context) ?? '';
  const pictures = (cause.check?.pictures ?? []).filter((use) => holds(use.when, context.scope));
  const look = shown ? null : say(cause.check?.look, context);
  return [
    { kind: 'line', text: ask },
    ...(look === null ? [] : [{ kind: 'line', text: look } as const]),
    ...pictures.map((use): Block => ({ kind: 'picture', use: pictureOf(use, context) })),
  ];
}

function fixBlocks(cause: ScopedCause, context: AnswerContext): Block[] {
  const what = say(cause.fix.do, context) ?? '';
  const pictures = cause.fix.pictures.filter((use) => holds(use.when, context.scope));
  return [
    { kind: 'line', text: what },
    ...pictures.map((use): Block => ({ kind: 'picture', use: pictureOf(use, context) })),
    ...(cause.stop === undefined ? [] : [{ kind: 'caution', text: `Stop and tell me if: ${cause.stop}` } as const]),
    { kind: 'line', text: 'Did that do it?' },
  ];
}

function choicesFor(kind: 'check' | 'fix', cause: ScopedCause, symptom: string): Choice[] {
  const press = (answer: StepPress, tone: Choice['tone']): Choice => ({
    id: choiceId({ kind: 'step', symptom, answer }),
    label: LABELS[answer],
    tone,
  });
  const quiet: readonly StepPress[] = ['unsure', 'how', 'skip'];
  const presses = stepPresses(kind, cause.check?.look !== undefined);
  return [...presses.map((each) => press(each, quiet.includes(each) ? 'quiet' : 'next')), PERSON_CHOICE];
}

/** Said once, with what it leaves for the yard: nothing is promised that is not on the van's list. */
export function walkFixedReply(walk: Walk, told: Told): Reply {
  const title = told.served.knowledge.topics.get(walk.symptom)?.title ?? '';
  const cured = walk.done.find((done) => done.kind === 'fix' && done.worked === true);
  const cause = told.scope?.causes(walk.symptom).find((each) => each.id === cured?.cause);
  const noted = cause !== undefined && cured?.kind === 'fix' && cured.byItself !== true && leavesOver(cause);
  const text = noted
    ? `Good, that is mended. I have noted it for the van's next check (${title.toLowerCase()}).`
    : 'Good, that is mended. I am here if anything else comes up.';
  return { kind: 'chat', from: null, topic: walk.symptom, blocks: [{ kind: 'line', text }], choices: [] };
}

export function offerWalkReply(walk: Walk, told: Told): Reply {
  const title = told.served.knowledge.topics.get(walk.symptom)?.title ?? '';
  return {
    kind: 'chat',
    from: null,
    topic: null,
    blocks: [{ kind: 'line', text: `We were still looking at: ${title}. Shall we carry on?` }],
    choices: [{ id: choiceId({ kind: 'resume' }), label: 'Carry on', tone: 'next' }, PERSON_CHOICE],
  };
}

export function recordReply(lines: readonly string[]): Reply {
  const blocks: readonly Block[] =
    lines.length === 0
      ? [{ kind: 'line', text: 'Nothing yet.' }]
      : [
          { kind: 'line', text: 'So far:' },
          { kind: 'facts', items: lines },
        ];
  return { kind: 'chat', from: null, topic: null, blocks, choices: [] };
}

/** The walk stays laid aside. */
export function laterReply(walk: Walk, told: Told): Reply {
  const title = told.served.knowledge.topics.get(walk.symptom)?.title ?? '';
  return lineReply('chat', `All right. Say "carry on" when you want to go on with: ${title}.`);
}

/** Where a walk stood, in one line. */
export function recapReply(walk: Walk, told: Told): Reply | null {
  const context = contextOf(told);
  if (context === null) return null;
  const title = told.served.knowledge.topics.get(walk.symptom)?.title ?? '';
  const lines = triedLines(walk, context.scope, told);
  const last = lines[lines.length - 1];
  const text = last === undefined ? `We were looking at: ${title}.` : `We were looking at: ${title}. Last: ${last}.`;
  return { kind: 'chat', from: null, topic: null, blocks: [{ kind: 'line', text }], choices: [] };
}
