import { numbersIn, type Piece, pieces } from '../language/numbers.ts';
import type { Verdict } from './types.ts';

/*
 * Amounts in answers: '12.4' to 'Is the needle below 11.8?'. Only where the question compares with exactly one number
 * and the answer names exactly one.
 */

type Test = (amount: number, limit: number) => boolean;
const LIMIT = '(-?\\d+(?:\\.\\d+)?)';
const TESTS: readonly (readonly [RegExp, Test])[] = [
  [new RegExp(`all ${LIMIT} (?:bar|lamp)`), (amount, limit) => amount >= limit],
  [
    new RegExp(`(?:at or under|no more than|at most) ${LIMIT}|${LIMIT} (?:\\w+ )?or (?:less|fewer|under)`),
    (amount, limit) => amount <= limit,
  ],
  [new RegExp(`at least ${LIMIT}|${LIMIT} ?%? ?(?:\\w+ )?or more`), (amount, limit) => amount >= limit],
  [new RegExp(`(?:under|below|less than|fewer than) (?:an? )?${LIMIT}`), (amount, limit) => amount < limit],
  [new RegExp(`(?:over|above|more than) ${LIMIT}`), (amount, limit) => amount > limit],
];

/** Words of amounts, beside the figures. */
const AMOUNT_WORDS = new Set(
  'zero one two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty half quarter quarters third empty full bar bars lamp lamps light lights percent per cent volt volts v degree degrees c second seconds minute minutes hour hours h day days night nights week yesterday today morning afternoon evening breakfast lunch dinner tea supper since ago last about around roughly nearly almost reads shows'.split(
    ' ',
  ),
);

export function isOfAmount(word: string): boolean {
  return AMOUNT_WORDS.has(word) || /^\d/.test(word);
}

/** Null when no one amount answers the question. */
export function readAmount(text: string, question: string): Verdict | null {
  const ask = inDigits(
    question.replace(/\bis it freezing\b/i, 'is it below 0 °C').replace(/\bless than its full time\b/i, USUAL_TIME),
  );
  const since = /\b(?:minute|hour|day)s?\b/.test(ask) ? toldAgo(text) : null;
  if (since !== null) {
    const [least, most] = since.map((minutes) => compare({ value: minutes, unit: 'min' }, ask));
    return least === most ? (least ?? null) : null;
  }
  const amount = oneAmount(text) ?? byGauge(text, ask);
  return amount === null ? null : compare(amount, ask);
}

function compare(amount: Amount, ask: string): Verdict | null {
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

/**
 * Times told by the calendar, as the least and most minutes they are ago. Whole phrases, the longer first: 'this morning'
 * may be an hour ago or ten.
 */
const AGO: readonly (readonly [RegExp, number, number])[] = [
  [/\b(?:day before yesterday|two nights? ago)\b/, 36 * 60, 60 * 60],
  [/\b(?:yesterday (?:evening|night)|last night)\b/, 8 * 60, 24 * 60 - 1],
  [/\b(?:yesterday morning|yesterday lunch\w*)\b/, 24 * 60, 40 * 60],
  [/\byesterday\b/, 12 * 60, 40 * 60],
  [/\b(?:just (?:now|did|done|switched|turned|put|started)|a moment ago|moments ago)\b/, 0, 20],
  [/\bsince (?:breakfast|lunch|dinner|tea|supper|we (?:got|came) (?:up|in))\b/, 60, 14 * 60],
  [/\bthis morn(?:ing)?\b/, 30, 12 * 60],
  [/\bthis (?:afternoon|evening)\b/, 10, 6 * 60],
  [/\b(?:all|the whole) week\b|\b(?:a|last) week\b|\bfor weeks\b/, 5 * 1440, 9 * 1440],
  [/\b(?:for|some|several|a few|many) days\b/, 2 * 1440 + 1, 9 * 1440],
  [/\b(?:all day|whole day)\b/, 7 * 60, 24 * 60],
];

function toldAgo(text: string): readonly [number, number] | null {
  const said = text.toLowerCase();
  const found = AGO.find(([told]) => told.test(said));
  return found === undefined || /\b(?:not|n't|never)\b/.test(said) ? null : [found[1], found[2]];
}

/** 'Empty' and 'full' of a gauge that is asked for in bars, lamps or percent. */
function byGauge(text: string, ask: string): Amount | null {
  const unit = /\b(?:bars?|lamps?)\b/.test(ask) ? 'bar' : /%/.test(ask) ? '%' : null;
  const side = /^\W*(?:it ?i?'?s |completely |totally |nearly |almost )*(empty|full)\b[^?]{0,12}$/i
    .exec(text)?.[1]
    ?.toLowerCase();
  if (unit === null || side === undefined) return null;
  return { value: side === 'empty' ? 0 : unit === 'bar' ? GAUGE : 100, unit };
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

/** 'Its full time' differs by van between 40 and 60 minutes: what is told in hours or a few minutes answers all the same. */
const USUAL_TIME = 'less than 45 minutes';

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
