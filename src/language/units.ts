/** The units that hirers name figures in, each in one spelling, with what else they write. */
const SPELLINGS: Readonly<Record<string, string>> = {
  A: 'a amp amps ampere amperes',
  V: 'v volt volts',
  W: 'w watt watts',
  kW: 'kw kilowatt kilowatts',
  Ah: 'ah',
  Wh: 'wh',
  kWh: 'kwh',
  kg: 'kg kgs kilo kilos kilogram kilograms',
  g: 'g gram grams gramme grammes',
  stone: 'stone',
  lb: 'lb lbs pound pounds',
  t: 'tonne tonnes ton tons',
  l: 'l ltr ltrs litre litres liter liters',
  ml: 'ml millilitre millilitres',
  mm: 'mm millimetre millimetres millimeter millimeters',
  cm: 'cm centimetre centimetres',
  m: 'm metre metres meter meters',
  km: 'km kilometre kilometres',
  mile: 'mile miles',
  mph: 'mph',
  inch: 'inch inches',
  foot: 'foot feet ft',
  min: 'min mins minute minutes',
  h: 'h hr hrs hour hours',
  day: 'day days',
  night: 'night nights',
  week: 'week weeks',
  C: 'c celsius centigrade',
  degree: 'degree degrees deg',
  percent: 'percent percentage',
  bar: 'bar',
  psi: 'psi',
  person: 'person persons people adult adults kid kids child children',
};

const UNITS = new Map(
  Object.entries(SPELLINGS).flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit])),
);
UNITS.set('%', 'percent');
UNITS.set('°', 'degree');
UNITS.set('°c', 'C');
UNITS.set('"', 'inch');

/** The unit a word names, in one spelling ('amps' -> 'A'), or null. Case does not matter. */
export function unitOf(word: string): string | null {
  return UNITS.get(word.toLowerCase()) ?? null;
}
