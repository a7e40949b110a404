import type { TopicId } from '../basics/ids.ts';
import type { SafetyData } from '../knowledge/safety-schema.ts';
import { foldText } from './fold.ts';
import { listed } from './lexicon.ts';
import type { Level } from './types.ts';

/** What is asked after a notice: whether it is the dangerous thing, and what changes the action. */
export type FollowUp = 'is-it' | 'everyone-out' | 'anyone-ill' | 'where';

/** `unclear` keeps the danger and goes on to the next question. */
export type FollowUpAnswer = 'yes' | 'no' | 'unclear';

/**
 * The questions to ask after a notice, first first.
 *
 * @param level Of the reading: only `ask` has the question whether it is the dangerous thing.
 */
export function followUps(hazard: TopicId, level: Level, safety: Pick<SafetyData, 'notices'>): readonly FollowUp[] {
  const notice = safety.notices[hazard];
  if (notice === undefined) return [];
  return [...(level === 'ask' && notice.is_it !== undefined ? (['is-it'] as const) : []), ...notice.asks];
}

/** The question in the language of the message, or in English. 'is-it' is worded so that only a clear no ends the danger. */
export function followUpText(
  ask: FollowUp,
  hazard: TopicId,
  language: string,
  safety: Pick<SafetyData, 'notices' | 'shared'>,
): string {
  const saying = ask === 'is-it' ? safety.notices[hazard]?.is_it : safety.shared.asks[ask];
  return saying?.[language] ?? saying?.['en'] ?? '';
}

/**
 * Reads an answer to one of the questions. Anything that says both or neither is unclear, and unclear never ends a danger.
 * For 'where' every answer is an answer: the caller keeps the text.
 */
export function readFollowUp(text: string, safety: Pick<SafetyData, 'shared'>): FollowUpAnswer {
  const said = ` ${plainWords(text)} `;
  const has = (lists: Readonly<Record<string, string>>) =>
    Object.values(lists).some((list) => listed(list).some((saying) => said.includes(` ${plainWords(saying)} `)));
  const no = has(safety.shared.answers.no);
  const yes = has(safety.shared.answers.yes);
  return yes === no ? 'unclear' : yes ? 'yes' : 'no';
}

function plainWords(text: string): string {
  return foldText(text)
    .replaceAll("'", '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
