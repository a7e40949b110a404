/*
 * Amounts in answers: '12.4' to 'Is the needle below 11.8?'. Only where the question compares with exactly one number
 * and the answer names exactly one.
 */

const NUMBER_WORDS: Readonly<Record<string, number>> = {
  zero: 0,
  none: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
};

const UNDER = /\b(?:under|below|less than|fewer than)\s+(?:a |an )?(-?\d+(?:\.\d+)?)/i;
const AT_MOST =
  /(?:at or under|no more than|at most)\s+(-?\d+(?:\.\d+)?)|(-?\d+(?:\.\d+)?|one|two|three)\s+(?:\w+\s+)?or (?:less|fewer|under)/i;
const OVER = /\b(?:over|above|more than)\s+(-?\d+(?:\.\d+)?|one|two|three)/i;
const AT_LEAST = /(?:at least)\s+(-?\d+(?:\.\d+)?)|(-?\d+(?:\.\d+)?)\s*(?:%\s*)?(?:\w+\s+)?or more/i;

type Test = (amount: number, limit: number) => boolean;
const TESTS: readonly (readonly [RegExp, Test])[] = [
  [AT_MOST, (amount, limit) => amount <= limit],
  [AT_LEAST, (amount, limit) => amount >= limit],
  [UNDER, (amount, limit) => amount < limit],
  [OVER, (amount, limit) => amount > limit],
];

/** Null when no one amount answers the question. */
export function readAmount(text: string, question: string): 'yes' | 'no' | null {
  const ask = withShares(question);
  const amount = oneAmount(text);
  if (amount === null) return null;
  for (const [pattern, holds] of TESTS) {
    const found = pattern.exec(ask);
    if (found === null) continue;
    const limit = numberOf(found[1] ?? found[2] ?? '');
    if (limit === null) return null;
    const inUnit = amount.value * minutesIn(amount.unit, ask);
    return holds(inUnit, limit) ? 'yes' : 'no';
  }
  return null;
}

/** 'A quarter' as a number. */
function withShares(text: string): string {
  return text
    .replace(/three[- ]quarters/gi, '0.75')
    .replace(/\ba quarter\b/gi, '0.25')
    .replace(/\bhalf\b(?! an)/gi, '0.5');
}

/** How many of the question's unit of time one of the answer's is; 1 where either names none. */
function minutesIn(unit: string | null, ask: string): number {
  const askedUnit = /\b(second|minute|hour|day)s?\b/i.exec(ask)?.[1]?.toLowerCase();
  const minutes: Readonly<Record<string, number>> = { second: 1 / 60, minute: 1, hour: 60, day: 1440 };
  if (unit === null || askedUnit === undefined) return 1;
  return (minutes[unit] ?? 1) / (minutes[askedUnit] ?? 1);
}

function oneAmount(text: string): { readonly value: number; readonly unit: string | null } | null {
  const said = text
    .toLowerCase()
    .replace(/^no (?=bars?|volts?|lamps?|lights?)/, '0 ')
    .replace(/half an hour/, '30 minutes')
    .replace(/\ban hour\b/, '1 hour')
    .replace(/a couple of|a couple/, '2');
  const found = [
    ...withShares(said).matchAll(/(?<![\p{L}\d])(minus |-)?(\d+(?:[.,]\d+)?)(?!\d)|\b([a-z]+)\b/gu),
  ].flatMap((match) => {
    const value = numberOf((match[2] ?? match[3] ?? '').replace(',', '.'));
    return value === null ? [] : [match[1] === undefined ? value : -value];
  });
  const [value] = found;
  if (value === undefined || found.length > 1) return null;
  const unit = /\b(?:\d|one|two|three|four|five)[^a-z]*\s*(sec|min|hour|hr|h\b|day)/.exec(said)?.[1];
  return { value, unit: unit === undefined ? null : (UNITS[unit] ?? null) };
}

const UNITS: Readonly<Record<string, string>> = {
  sec: 'second',
  min: 'minute',
  hour: 'hour',
  hr: 'hour',
  h: 'hour',
  day: 'day',
};

function numberOf(text: string): number | null {
  if (/^-?\d+(?:\.\d+)?$/.test(text)) return Number(text);
  return Object.hasOwn(NUMBER_WORDS, text) ? (NUMBER_WORDS[text] ?? null) : null;
}
