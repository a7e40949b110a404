import { numbersIn, type Piece, pieces } from '../language/numbers.ts';

/*
 * Amounts in answers: '12.4' to 'Is the needle below 11.8?'. Only where the question compares with exactly one number
 * and the answer names exactly one.
 */

type Test = (amount: number, limit: number) => boolean;
const LIMIT = '(-?\\d+(?:\\.\\d+)?)';
const TESTS: readonly (readonly [RegExp, Test])[] = [
  [
    new RegExp(`(?:at or under|no more than|at most) ${LIMIT}|${LIMIT} (?:\\w+ )?or (?:less|fewer|under)`),
    (amount, limit) => amount <= limit,
  ],
  [new RegExp(`at least ${LIMIT}|${LIMIT} ?%? ?(?:\\w+ )?or more`), (amount, limit) => amount >= limit],
  [new RegExp(`(?:under|below|less than|fewer than) (?:an? )?${LIMIT}`), (amount, limit) => amount < limit],
  [new RegExp(`(?:over|above|more than) ${LIMIT}`), (amount, limit) => amount > limit],
];

/** Null when no one amount answers the question. */
export function readAmount(text: string, question: string): 'yes' | 'no' | null {
  const ask = inDigits(question);
  const amount = oneAmount(text);
  if (amount === null) return null;
  for (const [pattern, holds] of TESTS) {
    const found = pattern.exec(ask);
    const limit = found?.[1] ?? found?.[2];
    if (limit === undefined) continue;
    // No gauge has thirty bars: the number is about something else.
    if (/\b(?:bars?|lamps?)\b/.test(ask) && amount.unit !== '%' && amount.value > GAUGE) return null;
    return holds(inUnitOf(amount, Number(limit), ask), Number(limit)) ? 'yes' : 'no';
  }
  return null;
}

/** The question with its number words in digits: 'under a quarter' is 'under 0.25', 'a day or more' is '1 day or more'. */
function inDigits(question: string): string {
  const all = pieces(question);
  let read = '';
  let at = 0;
  for (const said of numbersIn(all)) {
    // 'A' is one only as the first word of a length of time.
    const article = said.weak && said.low === 1 && !isTime(all[said.to]);
    read += `${words(all, at, said.from)}${article ? words(all, said.from, said.to) : `${said.low} `}`;
    at = said.to;
  }
  return read + words(all, at, all.length);
}

function words(all: readonly Piece[], from: number, to: number): string {
  return all
    .slice(from, to)
    .map((piece) => `${piece.text} `)
    .join('');
}

type Amount = { readonly value: number; readonly unit: string | null };

/** Lamps and bars of a gauge with four of them; percent; and times, in minutes each. */
const GAUGE = 4;
const MINUTES: Readonly<Record<string, number>> = {
  sec: 1 / 60,
  min: 1,
  hour: 60,
  hr: 60,
  h: 60,
  day: 1440,
  night: 1440,
};

function unitOf(word: string | undefined): string | null {
  if (word === undefined) return null;
  if (word === '%' || /^per ?cent$|^percent/.test(word)) return '%';
  if (/^(?:bars?|lamps?|lights?)$/.test(word)) return 'bar';
  return Object.keys(MINUTES).find((each) => (each === 'h' ? word === 'h' : word.startsWith(each))) ?? null;
}

function isTime(piece: Piece | undefined): boolean {
  return Object.hasOwn(MINUTES, unitOf(piece?.text) ?? '');
}

/** The amount in the unit of the question's limit: hours to its minutes, bars and percent to its share of the whole. */
function inUnitOf({ value, unit }: Amount, limit: number, ask: string): number {
  if (limit > 0 && limit < 1 && !/\d (?:%|bar|volt|v )/.test(ask)) {
    if (unit === 'bar') return value / GAUGE;
    return unit === '%' || value > 1 ? value / 100 : value;
  }
  const asked = /\b(second|minute|hour|day)s?\b/.exec(ask)?.[1];
  const [own, theirs] = [MINUTES[unit ?? ''], MINUTES[unitOf(asked) ?? '']];
  return own === undefined || theirs === undefined ? value : (value * own) / theirs;
}

function oneAmount(text: string): Amount | null {
  const said = text.toLowerCase().replace(/^no(?:ne)? ?(?=bars?|volts?|lamps?|lights?|$)/, '0 ');
  const all = pieces(said.replace(/^none$/, '0'));
  const found = numbersIn(all).filter(({ weak, low, to }) => !weak || low !== 1 || isTime(all[to]));
  const [amount] = found;
  if (amount === undefined || found.length > 1 || amount.range) return null;
  return { value: amount.low, unit: unitOf(all[amount.to]?.text) };
}
