import { type GapGroup, type GapWhy, type GrowthDecision, type Knowledge, never } from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { dayAt } from '../pages/when.ts';

/** Why the bot could not answer, as one says it across the yard. */
export const GAP_WHY: Readonly<Record<GapWhy, string>> = {
  'no-such-topic': 'nothing written about it',
  'too-close': 'two answers looked alike',
  'word-not-known': 'a word it did not know',
  'van-has-none': 'the van has none',
  'did-not-help': 'the answer did not help',
  'nothing-picked': 'none of the choices was it',
  'staff-answered': 'one of us answered',
};

export function decisionWords(decision: GrowthDecision, { topics, parts, vans }: Knowledge): string {
  const title = (id: string): string => topics.get(id)?.title ?? id;
  switch (decision.kind) {
    case 'add-wordings':
      return `${counted(decision.wordings.length, 'way')} of asking, for: ${title(decision.topic)}`;
    case 'teach-word':
      return `The word ‘${decision.says}’: ${decision.means}`;
    case 'new-topic':
      return `A new answer: ${decision.topic.title}`;
    case 'improve-answer':
      return `A better answer: ${title(decision.topic)}`;
    case 'note-lack':
      return `${vans.get(decision.van)?.name ?? decision.van} has no ${parts.get(decision.part)?.name ?? decision.part}`;
    case 'set-aside':
      return `Not ours: ${counted(decision.wordings.length, 'way')} of asking`;
    default:
      return never(decision);
  }
}

/** Why, in which vans, and when last. */
export function aboutGroup(group: GapGroup, { vans }: Knowledge, zone: string): string {
  const names = group.vans.map((van) => vans.get(van)?.name ?? van);
  return [GAP_WHY[group.why], names.join(', '), `last on ${dayAt(group.lastMs, zone)}`]
    .filter((each) => each !== '')
    .join('; ');
}
