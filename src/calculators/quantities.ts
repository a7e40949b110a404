import { numbersIn, type Piece, pieces, type Said } from '../language/numbers.ts';
import { mended } from './spelling.ts';
import { celsiusFromFahrenheit, KG_PER_POUND, KG_PER_STONE, LITRES_PER_GALLON, MM_PER_INCH } from './units.ts';

export type Unit =
  | 'amps'
  | 'ampHours'
  | 'watts'
  | 'volts'
  | 'degrees'
  | 'celsius'
  | 'hours'
  | 'nights'
  | 'kg'
  | 'litres'
  | 'mm'
  | 'metres'
  | 'percent'
  | 'bottles'
  | 'bare';

/**
 * A number with its unit, in the unit's own size (kilowatts as watts). For a range `low` and `high` differ, in the
 * order said. Stands over the pieces `from` to `to` (excluded).
 */
export type Quantity = {
  readonly unit: Unit;
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
};

/** What a text holds in numbers, in order. */
export type Counted = { readonly pieces: readonly Piece[]; readonly quantities: readonly Quantity[] };

type Size = readonly [Unit, number];

const UNITS: Readonly<Record<string, Size>> = {
  amp: ['amps', 1],
  amps: ['amps', 1],
  ampere: ['amps', 1],
  amperes: ['amps', 1],
  amper: ['amps', 1],
  ampers: ['amps', 1],
  ampage: ['amps', 1],
  ah: ['ampHours', 1],
  ahs: ['ampHours', 1],
  w: ['watts', 1],
  ws: ['watts', 1],
  watt: ['watts', 1],
  watts: ['watts', 1],
  wat: ['watts', 1],
  wats: ['watts', 1],
  wattage: ['watts', 1],
  kw: ['watts', 1000],
  kws: ['watts', 1000],
  kilowatt: ['watts', 1000],
  kilowatts: ['watts', 1000],
  killowatt: ['watts', 1000],
  killowatts: ['watts', 1000],
  kwatt: ['watts', 1000],
  kwatts: ['watts', 1000],
  v: ['volts', 1],
  volt: ['volts', 1],
  volts: ['volts', 1],
  degree: ['degrees', 1],
  degrees: ['degrees', 1],
  deg: ['degrees', 1],
  degs: ['degrees', 1],
  degress: ['degrees', 1],
  '°': ['degrees', 1],
  ring: ['degrees', 1],
  rings: ['degrees', 1],
  celsius: ['celsius', 1],
  celcius: ['celsius', 1],
  centigrade: ['celsius', 1],
  c: ['celsius', 1],
  h: ['hours', 1],
  hr: ['hours', 1],
  hrs: ['hours', 1],
  hour: ['hours', 1],
  hours: ['hours', 1],
  min: ['hours', 1 / 60],
  mins: ['hours', 1 / 60],
  minute: ['hours', 1 / 60],
  minutes: ['hours', 1 / 60],
  night: ['nights', 1],
  nights: ['nights', 1],
  nite: ['nights', 1],
  nites: ['nights', 1],
  day: ['nights', 1],
  days: ['nights', 1],
  week: ['nights', 7],
  weeks: ['nights', 7],
  wk: ['nights', 7],
  wks: ['nights', 7],
  fortnight: ['nights', 14],
  weekend: ['nights', 2],
  kg: ['kg', 1],
  kgs: ['kg', 1],
  kilo: ['kg', 1],
  kilos: ['kg', 1],
  kilogram: ['kg', 1],
  kilograms: ['kg', 1],
  kilogramme: ['kg', 1],
  g: ['kg', 0.001],
  gram: ['kg', 0.001],
  grams: ['kg', 0.001],
  t: ['kg', 1000],
  ton: ['kg', 1000],
  tons: ['kg', 1000],
  tonne: ['kg', 1000],
  tonnes: ['kg', 1000],
  lb: ['kg', KG_PER_POUND],
  lbs: ['kg', KG_PER_POUND],
  pound: ['kg', KG_PER_POUND],
  pounds: ['kg', KG_PER_POUND],
  stone: ['kg', KG_PER_STONE],
  l: ['litres', 1],
  lt: ['litres', 1],
  ltr: ['litres', 1],
  ltrs: ['litres', 1],
  litre: ['litres', 1],
  litres: ['litres', 1],
  liter: ['litres', 1],
  liters: ['litres', 1],
  gallon: ['litres', LITRES_PER_GALLON],
  gallons: ['litres', LITRES_PER_GALLON],
  mm: ['mm', 1],
  mil: ['mm', 1],
  millimetre: ['mm', 1],
  millimetres: ['mm', 1],
  millimeters: ['mm', 1],
  cm: ['mm', 10],
  cms: ['mm', 10],
  centimetre: ['mm', 10],
  centimetres: ['mm', 10],
  centimeters: ['mm', 10],
  inch: ['mm', MM_PER_INCH],
  inches: ['mm', MM_PER_INCH],
  '"': ['mm', MM_PER_INCH],
  m: ['metres', 1],
  metre: ['metres', 1],
  metres: ['metres', 1],
  meter: ['metres', 1],
  meters: ['metres', 1],
  '%': ['percent', 1],
  percent: ['percent', 1],
  pc: ['percent', 1],
  pct: ['percent', 1],
  bottle: ['bottles', 1],
  bottles: ['bottles', 1],
  bottel: ['bottles', 1],
  bottels: ['bottles', 1],
  cylinder: ['bottles', 1],
  cylinders: ['bottles', 1],
  canister: ['bottles', 1],
  canisters: ['bottles', 1],
  cylender: ['bottles', 1],
};

/** Letters that are a unit only straight after a number: 'c' and 'm' stand alone in other ways too. */
const LETTERS = new Set(['w', 'v', 'h', 'g', 't', 'l', 'm', 'c', 'k']);
/** From here on a 'w' that stands apart is watts: '500 w'. */
const LEAST_APART_W = 100;
/** After these 'a' is 'for each', not amps: '10 a day'. */
const PER = /^(day|night|week|week?end|hour|time|head|person|bit|piece)s?$/;

const NIGHTS = /^(nights|days|weeks)$/;
const SMALL = /^(a|an|the|of|or|to|and|per|each|every|in|on|for|at|amps?|watts?|hours?|people|kids|adults|[a-z])$/;

/** Reads the quantities of a text. Never throws; what is not understood is left out. */
export function countedIn(text: string): Counted {
  const all = pieces(text).map((piece) => (piece.kind === 'word' ? { ...piece, text: mended(piece.text) } : piece));
  const quantities = numbersIn(all).flatMap((said): Quantity[] => {
    const unit = unitAfter(all, said);
    if (unit !== null) return [unit];
    return said.weak || isPronoun(all, said)
      ? []
      : [{ unit: 'bare', low: said.low, high: said.high, from: said.from, to: said.to }];
  });
  return { pieces: all, quantities: quantities.map((each) => belowZero(all, each)) };
}

/** 'Can our car tow this one?' counts nothing. */
function isPronoun(all: readonly Piece[], { from, to }: Said): boolean {
  return (
    to === from + 1 &&
    all[from]?.text === 'one' &&
    /^(this|that|which|the|our|other|another|any|every|each|new|big|small|old)$/.test(all[from - 1]?.text ?? '')
  );
}

function unitAfter(all: readonly Piece[], said: Said): Quantity | null {
  let at = said.to;
  const next = all[at];
  if (next?.text === '-' && next.glued && all[at + 1]?.glued === true) at++;
  // '3 more nights', 'two whole days', 'one full bottle', '4 long nights'
  if (
    /^(more|whole|full|entire|extra|spare|long|solid|other|last|big|small|gas|empty)$/.test(all[at]?.text ?? '') &&
    Object.hasOwn(UNITS, all[at + 1]?.text ?? '')
  )
    at++;
  // 'Two consecutive nights', 'three cold days': whatever the nights are like.
  else if (NIGHTS.test(all[at + 1]?.text ?? '') && all[at]?.kind === 'word' && !SMALL.test(all[at]?.text ?? '')) at++;
  const piece = all[at];
  if (piece === undefined) return null;
  const made = (unit: Unit, factor: number, to: number): Quantity => ({
    unit,
    // 'a degree and a half', 'an hour and a half'
    low: (said.low + (isAndAHalf(all, to) ? 0.5 : 0)) * factor,
    high: (said.high + (isAndAHalf(all, to) ? 0.5 : 0)) * factor,
    from: said.from,
    to: isAndAHalf(all, to) ? to + 3 : to,
  });
  if (said.weak && said.low === 1 && LETTERS.has(piece.text)) return null;
  if (isAmps(all, at, said)) return made('amps', 1, at + 1);
  if (piece.text === 'amp' && /^hours?$/.test(all[at + 1]?.text ?? '')) return made('ampHours', 1, at + 2);
  if (piece.text === 'amps' && /^hours?$/.test(all[at + 1]?.text ?? '')) return made('ampHours', 1, at + 2);
  if (piece.text === 'kilo' && /^watts?$/.test(all[at + 1]?.text ?? '')) return made('watts', 1000, at + 2);
  if (piece.text === 'per' && all[at + 1]?.text === 'cent') return made('percent', 1, at + 2);
  if (piece.text === 'k' && piece.glued) return made('watts', 1000, at + 1);
  if (piece.text === 'f' || piece.text === 'fahrenheit') return fahrenheit(said, at + 1);
  const size = Object.hasOwn(UNITS, piece.text) ? UNITS[piece.text] : undefined;
  if (size === undefined) return null;
  if (
    LETTERS.has(piece.text) &&
    !piece.glued &&
    piece.typed !== 'W' &&
    piece.text !== 'h' &&
    !(piece.text === 'w' && said.low >= LEAST_APART_W) &&
    piece.typed !== 'C' &&
    piece.typed !== 'L' &&
    piece.typed !== 'l' &&
    // Nothing else of so few with a t is counted: '1.5 t'.
    !(piece.text === 't' && !Number.isInteger(said.low))
  )
    return null;
  if (size[0] === 'degrees') return degreesOf(all, said, at);
  return made(size[0], size[1], at + 1);
}

function isAndAHalf(all: readonly Piece[], at: number): boolean {
  const next = all[at + 3]?.text;
  return (
    all[at]?.text === 'and' &&
    all[at + 1]?.text === 'a' &&
    all[at + 2]?.text === 'half' &&
    next !== 'a' &&
    next !== 'bottle' &&
    next !== 'full'
  );
}

/** '10A', '10 A', '16a' and 'on 10 a' at the end; never '10 a day'. */
function isAmps(all: readonly Piece[], at: number, said: Said): boolean {
  const piece = all[at];
  if (piece?.text !== 'a' || said.weak) return false;
  if (PER.test(all[at + 1]?.text ?? '')) return false;
  return piece.glued || piece.typed === 'A' || all[at + 1] === undefined || all[at + 1]?.kind === 'sign';
}

function degreesOf(all: readonly Piece[], said: Said, at: number): Quantity {
  const next = all[at + 1];
  const after = next?.text ?? '';
  if (after === 'f' || after === 'fahrenheit') return fahrenheit(said, at + 2);
  const celsius = after === 'c' || after === 'celsius' || after === 'celcius' || after === 'centigrade';
  const to = celsius ? at + 2 : at + 1;
  const half = isAndAHalf(all, to) ? 0.5 : 0;
  return {
    unit: celsius ? 'celsius' : 'degrees',
    low: said.low + half,
    high: said.high + half,
    from: said.from,
    to: half > 0 ? to + 3 : to,
  };
}

function fahrenheit(said: Said, to: number): Quantity {
  return {
    unit: 'celsius',
    low: celsiusFromFahrenheit(said.low),
    high: celsiusFromFahrenheit(said.high),
    from: said.from,
    to,
  };
}

/** '3 below', 'two below zero', '5 degrees below freezing', '4 degrees of frost'. */
function belowZero(all: readonly Piece[], quantity: Quantity): Quantity {
  if (quantity.unit !== 'bare' && quantity.unit !== 'degrees' && quantity.unit !== 'celsius') return quantity;
  if (quantity.low < 0 || quantity.low !== quantity.high) return quantity;
  const [first, second] = [all[quantity.to]?.text, all[quantity.to + 1]?.text];
  const below =
    first === 'below' && (second === undefined || /^(zero|freezing|nought|tonight|outside|out|[?.,!])$/.test(second));
  if (!below && !(first === 'of' && second === 'frost')) return quantity;
  return {
    ...quantity,
    unit: 'celsius',
    low: -quantity.low,
    high: -quantity.high,
    to: Math.min(all.length, quantity.to + 2),
  };
}

/** Whether hours are of each day: '48 hours' is a stay, '30 hours a day' is absurd. */
export function isOfADay(hours: Quantity, { pieces }: Counted): boolean {
  return hours.high <= 24 || /^(a|per|every|each)$/.test(pieces[hours.to]?.text ?? '');
}
