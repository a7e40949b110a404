/** A word, number or sign of the text. `value` is set on numbers written in digits. */
export type Piece = {
  readonly kind: 'number' | 'word' | 'sign' | 'clock';
  readonly text: string;
  readonly value: number;
  /** No space before it: '10A' is '10' and a glued 'a'. */
  readonly glued: boolean;
  /** As typed, for the cases where 'A' and 'a' differ. */
  readonly typed: string;
};

/** A number said in digits or words, over the pieces `from` to `to` (excluded). A range has two ends. */
export type Said = {
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
  /** 'a week' and 'half': only a number when a unit follows. */
  readonly weak: boolean;
  readonly range: boolean;
};

const PIECES =
  /(\d{1,2}[:.]\d{2}\s?[ap]m\b|\d{1,2}:\d{2}\b|\d{1,2}\s?[ap]m\b)|(\d+\/\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+,\d{1,2}(?=\s?(?:kw|kg|w|v|l|t)\b)|\d*\.\d+|\d+)|(\p{L}+(?:'\p{L}+)?)|([^\s\p{L}\d])/giu;

/** Cuts a text into pieces in lower case; hyphens and odd minus signs are '-'. */
export function pieces(text: string): readonly Piece[] {
  const plain = text
    .replaceAll(/[\u2010-\u2015\u2212]/g, '-')
    .replaceAll(/[\u2018\u2019]/g, "'")
    .replaceAll('½', ' 1/2')
    .replaceAll('¼', ' 1/4')
    .replaceAll('¾', ' 3/4')
    .replaceAll(/[º˚]/g, '°');
  const found: Piece[] = [];
  let end = -1;
  for (const match of plain.matchAll(PIECES)) {
    const typed = match[0];
    const glued = match.index === end;
    end = match.index + typed.length;
    const kind =
      match[1] !== undefined ? 'clock' : match[2] !== undefined ? 'number' : match[3] !== undefined ? 'word' : 'sign';
    found.push({
      kind,
      text: typed.toLowerCase(),
      value: kind === 'number' ? digits(typed) : Number.NaN,
      glued,
      typed,
    });
  }
  return found;
}

function digits(typed: string): number {
  const [top, bottom] = typed.split('/');
  if (bottom !== undefined) return Number(bottom) === 0 ? Number(top) : Number(top) / Number(bottom);
  if (/^\d{1,3}(,\d{3})+/.test(typed)) return Number(typed.replaceAll(',', ''));
  return Number(typed.replace(',', '.'));
}

const ONES: Readonly<Record<string, number>> = {
  nought: 0,
  zero: 0,
  nil: 0,
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
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
};
const TENS: Readonly<Record<string, number>> = {
  twenty: 20,
  thirty: 30,
  forty: 40,
  fourty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
};
const FRACTIONS: Readonly<Record<string, number>> = {
  half: 0.5,
  third: 1 / 3,
  quarter: 0.25,
  thirds: 1 / 3,
  quarters: 0.25,
};
/** 'A few' is read as three: what most people mean, and the reply shows what was taken. */
const A_FEW = 3;

type Read = { readonly value: number; readonly to: number; readonly weak: boolean };

/** Every number of the text in order, ranges as one. */
export function numbersIn(all: readonly Piece[]): readonly Said[] {
  const found: Said[] = [];
  for (let at = 0; at < all.length; ) {
    const first = signed(all, at);
    if (first === null) {
      at++;
      continue;
    }
    const second = rangeEnd(all, at, first);
    const said: Said =
      second === null
        ? { low: first.value, high: first.value, from: at, to: first.to, weak: first.weak, range: false }
        : { low: first.value, high: second.value, from: at, to: second.to, weak: false, range: true };
    found.push(said);
    at = said.to;
  }
  return found;
}

function rangeEnd(all: readonly Piece[], from: number, first: Read): Read | null {
  const between = all[first.to]?.text;
  if (first.weak) return null;
  const opened = all[from - 1]?.text === 'between';
  if (between !== '-' && between !== 'to' && between !== 'or' && between !== 'till' && !(opened && between === 'and'))
    return null;
  // In '2-3' the hyphen parts two numbers; in '5 to -2' the second has its own sign.
  const second = between === '-' ? plain(all, first.to + 1) : signed(all, first.to + 1);
  return second === null || second.weak ? null : second;
}

function signed(all: readonly Piece[], at: number): Read | null {
  const piece = all[at];
  if (piece === undefined) return null;
  if (piece.text === 'minus' || piece.text === 'negative') return negated(plain(all, at + 1));
  const before = all[at - 1];
  if (piece.text === '-' && all[at + 1]?.glued === true && (!piece.glued || before?.kind === 'sign'))
    return negated(plain(all, at + 1));
  return plain(all, at);
}

function negated(read: Read | null): Read | null {
  return read === null || read.weak ? null : { ...read, value: -read.value };
}

/** A number without its sign: '2', '2 1/2', 'two and a half', 'two point five', 'a couple of', 'half a', 'a'. */
function plain(all: readonly Piece[], at: number): Read | null {
  const piece = all[at];
  if (piece === undefined) return null;
  if (piece.kind === 'number') return andAHalf(all, { value: piece.value, to: at + 1, weak: false });
  if (piece.kind !== 'word') return null;
  const few = fewWords(all, at);
  if (few !== null) return few;
  const fraction = fractionWords(all, at);
  if (fraction !== null) return fraction;
  const whole = wholeWords(all, at);
  if (whole !== null) return andAHalf(all, whole);
  return piece.text === 'a' || piece.text === 'an' ? { value: 1, to: at + 1, weak: true } : null;
}

function fewWords(all: readonly Piece[], at: number): Read | null {
  const start = all[at]?.text === 'a' ? at + 1 : at;
  const word = all[start]?.text;
  const value = word === 'couple' || word === 'pair' ? 2 : word === 'dozen' ? 12 : word === 'few' ? A_FEW : null;
  if (value === null) return null;
  return {
    value,
    to: all[start + 1]?.text === 'of' ? start + 2 : start + 1,
    weak: word === 'couple' || word === 'pair',
  };
}

function fractionWords(all: readonly Piece[], at: number): Read | null {
  const start = all[at]?.text === 'a' ? at + 1 : at;
  const size = FRACTIONS[all[start]?.text ?? ''];
  if (size === undefined) return null;
  let to = start + 1;
  if (all[to]?.text === 'of') to++;
  if (all[to]?.text === 'a' || all[to]?.text === 'an') to++;
  return { value: size, to, weak: true };
}

function wholeWords(all: readonly Piece[], at: number): Read | null {
  let to = at;
  let total = 0;
  let part = 0;
  let any = false;
  // 'A hundred' is one hundred.
  if (all[at]?.text === 'a' && /^(hundred|thousand)$/.test(all[at + 1]?.text ?? '')) {
    part = 1;
    any = true;
    to++;
  }
  for (;;) {
    const word = all[to]?.text ?? '';
    const one = Object.hasOwn(ONES, word) ? ONES[word] : undefined;
    const ten = Object.hasOwn(TENS, word) ? TENS[word] : undefined;
    if (ten !== undefined && part % 100 === 0) part += ten;
    else if (one !== undefined && (part === 0 ? !any || total > 0 : part % 10 === 0 && one < 10 && one > 0))
      part += one;
    else if (word === 'hundred' && any) part = (part === 0 ? 1 : part) * 100;
    else if (word === 'thousand' && any) {
      total += part * 1000;
      part = 0;
    } else if (word === '-' && any && Object.hasOwn(ONES, all[to + 1]?.text ?? '') && part % 10 === 0) {
      to++;
      continue;
    } else if (word === 'and' && any && part % 100 === 0 && part > 0 && isWholeWord(all[to + 1]?.text)) {
      to++;
      continue;
    } else break;
    any = true;
    to++;
  }
  if (!any) return null;
  const parts = fractionParts(all, to, total + part);
  if (parts !== null) return parts;
  return pointDigits(all, { value: total + part, to, weak: false });
}

/** 'three quarters', 'two thirds'. */
function fractionParts(all: readonly Piece[], to: number, count: number): Read | null {
  const word = all[to]?.text;
  if (word !== 'quarters' && word !== 'thirds' && word !== 'quarter') return null;
  const size = FRACTIONS[word];
  if (size === undefined || count < 1 || count > 3) return null;
  let end = to + 1;
  if (all[end]?.text === 'of') end++;
  if (all[end]?.text === 'a') end++;
  return { value: count * size, to: end, weak: true };
}

function isWholeWord(word: string | undefined): boolean {
  return word !== undefined && (Object.hasOwn(ONES, word) || Object.hasOwn(TENS, word));
}

function pointDigits(all: readonly Piece[], whole: Read): Read {
  if (all[whole.to]?.text !== 'point') return whole;
  let to = whole.to + 1;
  let decimals = '';
  for (;;) {
    const piece = all[to];
    const digit = piece === undefined ? undefined : piece.kind === 'number' ? piece.text : ONES[piece.text]?.toString();
    if (digit === undefined || digit.length !== 1) break;
    decimals += digit;
    to++;
  }
  return decimals === '' ? whole : { value: whole.value + Number(`0.${decimals}`), to, weak: false };
}

/** 'two and a half', '1 1/2', '2 and a quarter'. */
function andAHalf(all: readonly Piece[], whole: Read): Read {
  const next = all[whole.to];
  if (next?.kind === 'number' && next.text.includes('/') && Number.isInteger(whole.value)) {
    return { value: whole.value + next.value, to: whole.to + 1, weak: false };
  }
  if (next?.text !== 'and') return whole;
  const at = all[whole.to + 1]?.text === 'a' ? whole.to + 2 : whole.to + 1;
  const size = FRACTIONS[all[at]?.text ?? ''];
  if (size === undefined) return whole;
  // 'two and a half hours' is 2.5; 'a two and half a bottle' is two things.
  return all[at + 1]?.text === 'a' ? whole : { value: whole.value + size, to: at + 1, weak: false };
}
