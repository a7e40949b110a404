import { stem } from '../language/stems.ts';
import { isOfAmount, readAmount } from './amounts.ts';
import { byShape, byThere } from './by-shape.ts';
import { byOpposites } from './opposites.ts';
import { bySetting, isOfSetting } from './settings.ts';
import { isState, refusedAt } from './states.ts';
import type { Finding, Verdict } from './types.ts';
import { COMMON, contentOf, isIdle, wordsOf } from './words.ts';

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
 * one in plain-words.ts; none of them is a reading of its own. `mayLeave` is how many words of content a reply may hold
 * beside those the reading rests on before it is asked again: a word that was not understood may turn it round.
 */
const PLAN: readonly { readonly mayLeave: number; readonly read: (read: Read) => Finding | null }[] = [
  { mayLeave: 1, read: ({ said, ask }) => byShape(said, ask) },
  { mayLeave: 1, read: ({ said, text, ask }) => found(readAmount(text, ask), said.filter(isOfAmount)) },
  { mayLeave: 1, read: ({ said, ask }) => found(bySetting(said, ask), said.filter(isOfSetting)) },
  { mayLeave: 1, read: (read) => found(onlyAnother(read), read.said) },
  { mayLeave: 0, read: ({ said, ask }) => byOpposites(said, ask) },
  { mayLeave: 0, read: (read) => found(ownWords(read), []) },
  { mayLeave: 0, read: ({ said, ask }) => byThere(said, ask) },
];

/** What a reply says: `sure` is false where words of it were not understood that may turn it round. */
export type Statement = { readonly verdict: Verdict; readonly sure: boolean };

/**
 * What a statement answers to a yes-or-no question: 'its up' to 'Is the switch down?' is no.
 *
 * @param about Further words that are no surprise in a reply: how the thing is looked at, what the cause is called.
 * @returns     Null when the statement does not bear on the question, or its parts contradict each other.
 */
export function readStatement(text: string, ask: string, about = ''): Statement | null {
  const whole = readWhole(text, ask, about);
  if (whole?.sure === true) return whole;
  const parts = clausesOf(text).flatMap((clause) => readWhole(clause, ask, about) ?? []);
  const [sure] = parts.filter((part) => part.sure);
  return sure !== undefined && parts.every((part) => part.verdict === sure.verdict) ? sure : whole;
}

function readWhole(text: string, ask: string, about: string): Statement | null {
  const read = { text, said: wordsOf(text), ask, asked: wordsOf(ask) };
  for (const { mayLeave, read: reading } of PLAN) {
    const finding = reading(read);
    if (finding === null) continue;
    const left = leftOut(read.said, finding, contentOf([...read.asked, ...wordsOf(about)]));
    return { verdict: finding.verdict, sure: left <= mayLeave && finding.half === undefined };
  }
  return null;
}

/** A long reply in its clauses, one of which often answers plainly: 'I went over with the torch and there is a light'. */
function clausesOf(text: string): string[] {
  const clauses = text.split(/[.,;!\n]|\b(?:and|but|so|because)\b/i).filter((clause) => /\w/.test(clause));
  return clauses.length > 1 ? clauses : [];
}

/** How many words of content a finding does not rest on. */
function leftOut(said: readonly string[], { rests }: Finding, about: ReadonlySet<string>): number {
  return said.filter((word) => !COMMON.has(word) && !isIdle(word) && !rests.has(word) && !about.has(stem(word))).length;
}

function found(verdict: Verdict | null, rests: readonly string[]): Finding | null {
  return verdict === null ? null : { verdict, rests: new Set(rests) };
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
