import type { Counted } from './quantities.ts';

const NAMES = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const SHORT: Readonly<Record<string, number>> = {
  jan: 1,
  feb: 2,
  febuary: 2,
  mar: 3,
  apr: 4,
  jun: 6,
  jul: 7,
  aug: 8,
  sep: 9,
  sept: 9,
  oct: 10,
  nov: 11,
  dec: 12,
  decemeber: 12,
};
/** A season stands for its middle month; Christmas and Easter for the month they mostly fall in. */
const SEASONS: Readonly<Record<string, number>> = {
  spring: 4,
  springtime: 4,
  summer: 7,
  summertime: 7,
  midsummer: 6,
  autumn: 10,
  fall: 10,
  winter: 1,
  wintertime: 1,
  midwinter: 12,
  christmas: 12,
  xmas: 12,
  easter: 4,
};
const LEAD =
  /^(in|during|early|mid|late|of|this|next|until|till|for|by|about|around|through|to|say|if|it's|its|was|were|middle|end|start|and|or|last)$/;

/** What makes a leading 'may' the month: 'may half term'. */
const OF_MAY = /^(half|bank|day|week|weekend|holidays?|trip|term|break|time)$/;

/** The month a text names, 1..12, or a number outside it for 'month 13'; null when none is named. */
export function monthIn(counted: Counted): number | null {
  const { pieces, quantities } = counted;
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at];
    const word = piece?.text ?? '';
    const before = pieces[at - 1]?.text ?? '';
    if (word === 'month') {
      const number = quantities.find((quantity) => quantity.unit === 'bare' && quantity.from === at + 1);
      if (number !== undefined) return number.low;
    }
    const sure = LEAD.test(before) || (piece?.typed[0] !== word[0] && at > 0);
    // 'May we ...' and 'march off' are not months, nor is a fall in the battery's charge.
    if (word === 'may' && OF_MAY.test(pieces[at + 1]?.text ?? '')) return 5;
    if (
      (word === 'may' || word === 'march' || word === 'mar' || word === 'spring' || word === 'fall') &&
      !sure &&
      pieces.length > 1
    )
      continue;
    if (word === 'may' && /^(i|we|need|be|have|as|not)$/.test(pieces[at + 1]?.text ?? '')) continue;
    if (word === 'march' && /^(of|off)$/.test(pieces[at + 1]?.text ?? '')) continue;
    if (word === 'fall' && /^(to|below|off|under)$/.test(pieces[at + 1]?.text ?? '')) continue;
    const full = NAMES.indexOf(word);
    if (full >= 0) return full + 1;
    const other = Object.hasOwn(SHORT, word) ? SHORT[word] : Object.hasOwn(SEASONS, word) ? SEASONS[word] : undefined;
    if (other !== undefined) return other;
  }
  return null;
}

/** July for 7. */
export function monthName(month: number): string {
  const name = NAMES[month - 1] ?? '';
  return name.charAt(0).toUpperCase() + name.slice(1);
}
