import {
  type ChangeRecord,
  dayOf,
  type FileEdit,
  type GapGroup,
  type GapWhy,
  type GrowthDecision,
  lineDiff,
  never,
  type Thin,
  type TrialSummary,
} from '../../src/index.ts';
import type { Published } from '../files/publish.ts';
import { counted } from '../pages/counted.ts';
import type { Tried } from './growth-types.ts';

const WHY: Readonly<Record<GapWhy, string>> = {
  'no-such-topic': 'no such topic',
  'too-close': 'two topics too close',
  'word-not-known': 'word not known',
  'van-has-none': 'van has none',
  'did-not-help': 'answer did not help',
  'nothing-picked': 'none of the choices was picked',
  'staff-answered': 'staff answered',
};

export function groupLine(group: GapGroup, zone: string): string {
  const vans = group.vans.length === 0 ? 'no van' : group.vans.join(', ');
  return `${String(group.id).padStart(5)}  ${String(group.gaps.length).padStart(3)}x  ${dayOf(group.lastMs, zone)}  ${WHY[group.why]}; ${vans}\n              '${group.words}'`;
}

export function groupText(group: GapGroup, zone: string): string {
  return [
    groupLine(group, zone),
    `nearest: ${group.nearest.length === 0 ? 'none' : group.nearest.join(', ')}`,
    ...group.gaps.map(
      (gap) => `  '${gap.text}' (${gap.van ?? 'no van'}, ${dayOf(gap.atMs, zone)}, ${WHY[gap.why]}, ${gap.ended})`,
    ),
    ...(group.staffSaid === null ? [] : [`staff wrote: ${group.staffSaid}`]),
  ].join('\n');
}

export function decisionText(decision: GrowthDecision): string {
  switch (decision.kind) {
    case 'add-wordings':
      return `${counted(decision.wordings.length, 'wording')} to ${decision.topic}`;
    case 'teach-word':
      return `'${decision.says}' means ${decision.means}`;
    case 'new-topic':
      return `new topic ${decision.topic.id}`;
    case 'improve-answer':
      return `${decision.place} of ${decision.topic}`;
    case 'note-lack':
      return `${decision.van} has no ${decision.part}`;
    case 'set-aside':
      return `set aside: ${counted(decision.wordings.length, 'wording')}`;
    default:
      return never(decision);
  }
}

function numbers({ questions, right, offered, passed, wrong, safetyMissed }: TrialSummary): string {
  return `${counted(questions, 'question')}: right ${right}, offered ${offered}, passed ${passed}, wrong ${wrong}; dangers missed ${safetyMissed}`;
}

export function triedText({ figures, words, lost, draft }: Tried): string {
  const list = (title: string, changes: Tried['words']) =>
    changes.length === 0
      ? []
      : [
          `${title}:`,
          ...changes.map((each) => `  '${each.text}' (${each.van ?? 'no van'}): ${each.before} -> ${each.after}`),
        ];
  return [
    `before  ${numbers(figures.before)}`,
    `after   ${numbers(figures.after)}`,
    ...list('The words of the group', words),
    ...list('Better', figures.better),
    ...list('Worse', figures.worse),
    ...(lost.length === 0 ? [] : ['Notices lost:', ...lost.map((text) => `  '${text}'`)]),
    ...list('Changed, neither better nor worse', figures.changed),
    ...draft.edits.map(lineDiff),
  ].join('\n');
}

export function changeLine({ id, atMs, by, why, decision, undone, figures }: ChangeRecord, zone: string): string {
  const moved = `better ${figures.better.length}, worse ${figures.worse.length}`;
  const ended = undone === null ? '' : `; undone by ${undone.by}`;
  return `${String(id).padStart(4)}  ${dayOf(atMs, zone)}  ${by}: ${decisionText(decision)} (${moved})${why === '' ? '' : `: ${why}`}${ended}`;
}

/** What stood in the way of writing. */
export function unwrittenText(published: Exclude<Published, { kind: 'written' }>): string {
  if (published.kind === 'failed') return `nothing was changed: ${published.why}`;
  const { ours, theirs } = published;
  return [
    `graph/${ours.path} has been changed meanwhile; nothing was written.`,
    'This change:',
    lineDiff(ours as FileEdit),
    'The other:',
    lineDiff(theirs as FileEdit),
  ].join('\n');
}

export function thinText(thin: Thin): string {
  switch (thin.kind) {
    case 'few-wordings':
      return `${thin.system}: ${thin.id} has ${counted(thin.count, 'wording')}`;
    case 'no-causes':
      return `${thin.system}: ${thin.id} has no causes`;
    case 'not-described':
      return `${thin.system}: no topic is about ${thin.id} (${thin.name})`;
    default:
      return never(thin);
  }
}
