import { stem } from '../language/stems.ts';
import { readAmount } from './amounts.ts';
import { byShape, byThere } from './by-shape.ts';
import { byOpposites } from './opposites.ts';

import { bySetting } from './settings.ts';
import { isState, refusedAt } from './states.ts';
import type { Verdict } from './types.ts';
import { COMMON, contentOf, wordsOf } from './words.ts';

/** A reply and the question it is read against, each as typed and as words. */
type Read = {
  readonly text: string;
  readonly said: readonly string[];
  readonly ask: string;
  readonly asked: readonly string[];
};

/**
 * The plan: each way of reading a reply, the surest first. The first that finds anything decides. What belongs to one
 * shape of question only is a line of the table in question-shapes.ts, a new word for a state one in states.ts, a saying
 * one in plain-words.ts; none of them is a reading of its own.
 */
const PLAN: readonly ((read: Read) => Verdict | null)[] = [
  ({ said, ask }) => byShape(said, ask),
  ({ text, ask }) => readAmount(text, ask),
  ({ said, ask }) => bySetting(said, ask),
  onlyAnother,
  ({ said, ask }) => byOpposites(said, ask),
  ownWords,
  ({ said, ask }) => byThere(said, ask),
];

/**
 * What a statement answers to a yes-or-no question: 'its up' to 'Is the switch down?' is no.
 *
 * @returns Null when the statement does not bear on the question, or its parts contradict each other.
 */
export function readStatement(text: string, ask: string): Verdict | null {
  const read = { text, said: wordsOf(text), ask, asked: wordsOf(ask) };
  for (const reading of PLAN) {
    const verdict = reading(read);
    if (verdict !== null) return verdict;
  }
  return null;
}

/** 'It was only the lights' to 'Was the heating on?': something else, and no more. */
function onlyAnother({ said, ask, asked }: Read): Verdict | null {
  if (/\b(?:any|some)thing\b/i.test(ask)) return null;
  const named = /\b(?:only|just) (?:the|my|our) (?!one\b)(\w+)/.exec(said.join(' '))?.[1];
  if (named === undefined) return null;
  return contentOf(asked).has(stem(named)) ? null : 'no';
}

const DETERMINERS = new Set('the a an your its either any another other one both all'.split(' '));

/** The question's own words, said plainly or with 'not': 'the cable is cut' to 'Is the cable cut?'. */
function ownWords({ said, asked }: Read): Verdict | null {
  const about = contentOf(asked);
  const verdicts: Verdict[] = [];
  let telling = 0;
  said.forEach((word, at) => {
    if (COMMON.has(word) || isState(word) || !about.has(stem(word))) return;
    const where = asked.findIndex((each) => stem(each) === stem(word));
    verdicts.push(refusedAt(said, at) === refusedAt(asked, where) ? 'yes' : 'no');
    if (!isNamed(asked, where)) telling++;
  });
  // 'The switch' alone says nothing of it: something must be said that the question asks of it.
  if (telling === 0 && verdicts.length < 2) return null;
  if (said.includes('there') && !asked.includes('there') && telling === 0) return null;
  // One refusal tells: 'the cable is not cut'.
  return verdicts.includes('no') ? 'no' : 'yes';
}

/** Whether the question only names the thing at `at`: 'the switch', 'the large switch', but not 'the cylinder changed'. */
function isNamed(asked: readonly string[], at: number): boolean {
  if (/(?:ed|ing)$/.test(asked[at] ?? '')) return false;
  return asked.slice(Math.max(0, at - 2), at).some((word) => DETERMINERS.has(word));
}
