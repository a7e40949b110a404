import { stem } from '../language/stems.ts';
import { readAmount } from './amounts.ts';
import { byQuestion, isThereSaid } from './by-question.ts';
import { type Axis, isState, refusedAt, type State, statesIn } from './states.ts';
import { COMMON, contentOf, wordsOf } from './words.ts';

export type Verdict = 'yes' | 'no';

const DETERMINERS = new Set('the a an your its either any another other one both all'.split(' '));

/**
 * What a statement answers to a yes-or-no question: 'its up' to 'Is the switch down?' is no. Read from opposites, from
 * amounts ('12.4' to 'below 11.8?'), from labels ('it says VAN' to 'on CAR or OFF?'), and last from saying the
 * question's own words, plainly or with 'not'.
 *
 * @returns Null when the statement does not bear on the question, or its parts contradict each other.
 */
export function readStatement(text: string, ask: string): Verdict | null {
  const said = wordsOf(text);
  const asked = wordsOf(ask);
  // Words in capitals name controls: the HOT of HOT WATER is no heat.
  const labels = new Set((ask.match(/\b[A-Z]{2,}\b/g) ?? []).map((label) => label.toLowerCase()));
  const plain = (words: readonly string[]) => words.filter((word) => !labels.has(word));
  return (
    byQuestion(said.join(' '), ask) ??
    bySetting(said.join(' '), ask) ??
    byLabel(said, ask) ??
    (/\b(?:any|some)thing\b/i.test(ask) ? null : onlyAnother(said, asked)) ??
    readAmount(text, ask) ??
    byStates(
      statesIn(plain(said)),
      statesIn(plain(wordsOf(ask.replace(/\bat 0\b/gi, 'off')))),
      said,
      /\bdo(?:es)?\b.*\bwork\b/i.test(ask),
    ) ??
    byWords(said, asked) ??
    (isThereSaid(said.join(' '), ask) ? 'yes' : null)
  );
}

function byStates(
  said: readonly State[],
  asked: readonly State[],
  words: readonly string[],
  asksIfWorking: boolean,
): Verdict | null {
  const verdicts = new Set<Verdict>();
  const counts = new Set<Verdict>();
  for (const { axis, side } of said) {
    const sides = sidesOn(asked, axis);
    if (sides.size !== 1) continue;
    (axis === 'count' ? counts : verdicts).add(sides.has(side) ? 'yes' : 'no');
  }
  // Yes to a check points to a fault: 'it looks fine' denies whatever was asked, unless it was asked whether it works.
  if (
    verdicts.size === 0 &&
    said.some((state) => state.axis === 'health' && state.side === 1) &&
    sidesOn(asked, 'health').size === 0
  ) {
    return asksIfWorking ? 'yes' : 'no';
  }
  // 'All dark' denies 'Is only one dark?'.
  if (counts.has('no')) return 'no';
  if (verdicts.size === 0 && saysNothing(words)) {
    // 'I can hear nothing' says nothing of what is dark.
    const onlyHeard = words.includes('hear') && sidesOn(asked, 'noise').size === 0;
    return onlyHeard ? null : nothingTo(asked);
  }
  if (verdicts.size === 0) return only(counts) ?? onOrOffOfAValve(said, asked);
  return only(verdicts);
}

/** 'The gas is on' says of a tap that it is open. */
function onOrOffOfAValve(said: readonly State[], asked: readonly State[]): Verdict | null {
  const [open] = sidesOn(asked, 'valve');
  const sides = sidesOn(said, 'power');
  if (open === undefined || sides.size !== 1) return null;
  return sides.has(open) ? 'yes' : 'no';
}

/** 'Nothing' agrees with questions about what is silent, dark or empty, and denies those about what is there. */
function nothingTo(asked: readonly State[]): Verdict | null {
  const first = asked.find(({ axis }) => axis === 'noise' || axis === 'power' || axis === 'amount');
  return first === undefined ? null : first.side === -1 ? 'yes' : 'no';
}

function saysNothing(words: readonly string[]): boolean {
  return words.length <= 4 && words.some((word) => word === 'nothing' || word === 'nada' || word === 'zilch');
}

/** 'It was only the lights' to 'Was the heating on?': something else, and no more. */
function onlyAnother(said: readonly string[], asked: readonly string[]): Verdict | null {
  const named = /\b(?:only|just) the (?!one\b)(\w+)/.exec(said.join(' '))?.[1];
  if (named === undefined) return null;
  return contentOf(asked).has(stem(named)) ? null : 'no';
}

/** A dial or page that points to, or is set to, one thing: another thing said denies it. */
function bySetting(said: string, ask: string): Verdict | null {
  const chosen = /\b(?:set|points?|pointing|turned|is|on) (?:to|at|on) (?:the )?([a-z]+)\b/.exec(said)?.[1];
  const other = /\bother than the (\w+)/i.exec(ask)?.[1]?.toLowerCase();
  if (other !== undefined) return said.includes(other) ? 'no' : chosen === undefined ? null : 'yes';
  const asked = /\b(?:set|show|point) (?:to )?(?:the )?([a-z]+)\b/i.exec(ask)?.[1]?.toLowerCase();
  if (chosen === undefined || asked === undefined || !/\b(?:set|points?|turned)\b/.test(said)) return null;
  return chosen === asked ? 'yes' : 'no';
}

/** What a lamp or selector may name beside what was asked: 'MAINS is lit' denies 'Is GAS lit?'. */
const SOURCES = new Set(['mains', 'gas', 'car', 'battery', 'electric']);

/**
 * Words in capitals are labels. Where the question asks which of them is chosen, naming one answers; where it asks of the
 * state of one ('Is ELECTRIC at 0?'), the name alone says nothing.
 */
function byLabel(said: readonly string[], ask: string): Verdict | null {
  const labels = new Set(
    [...ask.matchAll(/\b[A-Z]{2,}\b(?! (?:lamp|page|set|at|off|out|below|not|[A-Z]))/g)].map((found) =>
      found[0].toLowerCase(),
    ),
  );
  if (labels.size === 0) return null;
  const lit = /^(?:the )?(\w+)(?: lamp| light)? (?:is )?(?:lit|on|glowing)$/.exec(said.join(' '))?.[1];
  if (lit !== undefined && SOURCES.has(lit) && !labels.has(lit) && [...labels].some((each) => SOURCES.has(each)))
    return 'no';
  const named = said.findIndex((word) => labels.has(word));
  if (named >= 0 && said.length <= 6) return refusedAt(said, named) ? 'no' : 'yes';
  const chosen =
    /^(?:it |its |is |the |switch |selector |set |turned |says? |shows? |reads? )*(?:on|at|to|says?|shows?|reads?) (?:the )?([a-z]+)$/.exec(
      said.join(' '),
    );
  return chosen?.[1] === undefined || isState(chosen[1]) ? null : 'no';
}

function byWords(said: readonly string[], asked: readonly string[]): Verdict | null {
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

function sidesOn(states: readonly State[], axis: Axis): Set<number> {
  return new Set(states.filter((state) => state.axis === axis).map((state) => state.side));
}

function only<T>(values: ReadonlySet<T>): T | null {
  const [first] = values;
  return values.size === 1 && first !== undefined ? first : null;
}
