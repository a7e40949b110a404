import { stem } from '../language/stems.ts';
import { readAmount } from './amounts.ts';
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
  return (
    byLabel(said, ask) ??
    readAmount(text, ask) ??
    byStates(statesIn(said), statesIn(asked), said) ??
    byWords(said, asked)
  );
}

function byStates(said: readonly State[], asked: readonly State[], words: readonly string[]): Verdict | null {
  const verdicts = new Set<Verdict>();
  const counts = new Set<Verdict>();
  for (const { axis, side } of said) {
    const sides = sidesOn(asked, axis);
    if (sides.size !== 1) continue;
    (axis === 'count' ? counts : verdicts).add(sides.has(side) ? 'yes' : 'no');
  }
  // Yes to a check points to a fault: 'it looks fine' denies whatever was asked.
  if (
    verdicts.size === 0 &&
    said.some((state) => state.axis === 'health' && state.side === 1) &&
    sidesOn(asked, 'health').size === 0
  ) {
    return 'no';
  }
  if (verdicts.size === 0 && saysNothing(words)) return nothingTo(asked);
  return only(verdicts.size > 0 ? verdicts : counts);
}

/** 'Nothing' agrees with questions about what is silent, dark or empty, and denies those about what is there. */
function nothingTo(asked: readonly State[]): Verdict | null {
  const first = asked.find(({ axis }) => axis === 'noise' || axis === 'power' || axis === 'amount');
  return first === undefined ? null : first.side === -1 ? 'yes' : 'no';
}

function saysNothing(words: readonly string[]): boolean {
  return words.length <= 4 && words.some((word) => word === 'nothing' || word === 'nada' || word === 'zilch');
}

/** Words in capitals are labels: the question asks whether one of them is chosen. */
function byLabel(said: readonly string[], ask: string): Verdict | null {
  const labels = new Set([...ask.matchAll(/\b[A-Z]{2,}\b/g)].map((found) => found[0].toLowerCase()));
  if (labels.size === 0) return null;
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
