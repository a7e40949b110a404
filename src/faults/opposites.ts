import { type Axis, isState, type State, statesIn } from './states.ts';
import type { Finding, Verdict } from './types.ts';
import { contentOf, wordsOf } from './words.ts';

/*
 * Replies in opposites: 'it is up' to 'Is the switch down?'. A question of several parts ('Is the post switched off, or is
 * its lamp out?') is read part by part, and each clause of the reply against the parts whose things it names.
 */

/** One part of the question: what it is about, and the states it asks for. */
type Part = { readonly about: ReadonlySet<string>; readonly states: readonly State[] };

/** The words it rests on are those that stand on an axis the question asks of. */
export function byOpposites(said: readonly string[], ask: string): Finding | null {
  // Words in capitals name controls: the HOT of HOT WATER is no heat.
  const labels = new Set((ask.match(/\b[A-Z]{2,}\b/g) ?? []).map((label) => label.toLowerCase()));
  const parts = partsOf(
    ask
      .replace(/\bat 0\b/gi, 'off')
      .replace(/\bbelow -?\d+ °C/gi, 'cold')
      .replace(/\babove \d+ °C/gi, 'hot')
      .replace(/\banything but\b/gi, 'not'),
    labels,
  );
  const words = said.filter((word) => !labels.has(word));
  const told = clausesOf(words).flatMap((clause) => toldOf(clause, parts));
  const verdict = verdictOf(told, words, parts, ask);
  if (verdict === null) return null;
  const axes = new Set<Axis>(statesIn(wordsOf(ask)).map(({ axis }) => axis));
  const bears = ({ axis }: State) => axes.has(axis) || axis === 'health' || axis === 'count' || axis === 'power';
  const rests = new Set(said.filter((word, at) => statesIn([word]).some(bears) || isState(word) || isSetTo(said, at)));
  // 'Is it cold, with the breaker up?' asks whether it is cold; 'Is it full, and still cold?' asks the same.
  const main = parts[partsOf(ask.split(/,? with\b/i)[0] ?? '', labels).length - 1];
  const half = verdict === 'yes' && parts.length > 1 && !/\bor\b/i.test(ask) && told.every(({ part }) => part !== main);
  return half && told.length > 0 ? { verdict, rests, half } : { verdict, rests };
}

/** The 2 of 'it is on 2'. */
function isSetTo(said: readonly string[], at: number): boolean {
  return /^\d/.test(said[at] ?? '') && /^(?:on|at|to)$/.test(said[at - 1] ?? '');
}

/** What one clause says to one part of the question. */
type Told = { readonly axis: Axis; readonly verdict: Verdict; readonly part: Part };

function toldOf(clause: readonly string[], parts: readonly Part[]): Told[] {
  const about = partsNamed(parts, contentOf(clause));
  return statesIn(clause).flatMap(({ axis, side }): Told[] => {
    const part = about.find((each) => sidesOn(each.states, axis).size > 0);
    const sides = sidesOn(part?.states ?? [], axis);
    return part === undefined || sides.size !== 1 ? [] : [{ axis, verdict: sides.has(side) ? 'yes' : 'no', part }];
  });
}

function verdictOf(
  told: readonly Told[],
  said: readonly string[],
  parts: readonly Part[],
  ask: string,
): Verdict | null {
  const verdicts = new Set(told.filter(({ axis }) => axis !== 'count').map(({ verdict }) => verdict));
  const counts = new Set(told.filter(({ axis }) => axis === 'count').map(({ verdict }) => verdict));
  const all = parts.flatMap((part) => part.states);
  const states = statesIn(said);
  // Yes to a check points to a fault: 'it looks fine' denies whatever was asked, unless it was asked whether it works.
  if (
    verdicts.size === 0 &&
    states.some((state) => state.axis === 'health' && state.side === 1) &&
    sidesOn(statesIn(wordsOf(ask)), 'health').size === 0
  ) {
    return /\bdo(?:es)?\b.*\b(?:work|charge)\b/i.test(ask) ? 'yes' : 'no';
  }
  // 'All dark' denies 'Is only one dark?'.
  if (counts.has('no')) return 'no';
  if (verdicts.size === 0 && saysNothing(said)) {
    // 'I can hear nothing' says nothing of what is dark.
    return said.includes('hear') && sidesOn(all, 'noise').size === 0 ? null : nothingTo(all);
  }
  if (verdicts.size === 0) return only(counts) ?? onOrOffOfAValve(states, all);
  return only(verdicts) ?? (/\bor\b/i.test(ask) ? 'yes' : null);
}

function partsOf(ask: string, labels: ReadonlySet<string>): Part[] {
  const parts: Part[] = [];
  let waiting: string[] = [];
  for (const piece of ask.split(/,|\b(?:or|and|with|but)\b/i)) {
    const words = [...waiting, ...wordsOf(piece).filter((word) => !labels.has(word))];
    const states = statesIn(words, true);
    const asks = states.some(({ axis }) => axis !== 'count');
    // 'The doors and windows shut' is one part: a piece that asks nothing yet goes with the next.
    if (asks) parts.push({ about: contentOf(words), states });
    waiting = asks ? [] : words;
  }
  if (waiting.length === 0) return parts;
  return [...parts, { about: contentOf(waiting), states: statesIn(waiting, true) }];
}

/** 'The switch is on but the lamp is out' says two things. */
function clausesOf(said: readonly string[]): string[][] {
  const clauses: string[][] = [[]];
  for (const word of said) {
    if (word === 'but' || word === 'and' || word === 'though') clauses.push([]);
    else clauses.at(-1)?.push(word);
  }
  return clauses.filter((clause) => clause.length > 0);
}

/** The parts whose things a clause names; all of them where it names none. */
function partsNamed(parts: readonly Part[], content: ReadonlySet<string>): readonly Part[] {
  const named = parts.filter((part) => [...content].some((each) => part.about.has(each)));
  return named.length === 0 || named.every((part) => part.states.length === 0) ? parts : named;
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
  return words.length <= 4 && words.includes('nothing');
}

function sidesOn(states: readonly State[], axis: Axis): Set<number> {
  return new Set(states.filter((state) => state.axis === axis).map((state) => state.side));
}

function only<T>(values: ReadonlySet<T>): T | null {
  const [first] = values;
  return values.size === 1 && first !== undefined ? first : null;
}
