import type { InputSpec, Reader, Reading } from './input-spec.ts';
import type { Quantity } from './quantities.ts';
import { frostInWords, temperaturesIn } from './temperatures.ts';

export function readTemperature(at: 'outside' | 'inside'): Reader {
  return (reading, spec) => {
    const asked = reading.asked === spec.name;
    const all = temperaturesIn(reading.counted, asked);
    // '8 in here now' is where the warming starts, not what is wanted.
    const mine = all.filter((each) => each.where?.at === at && (at === 'outside' || asked || each.where.now !== true));
    const open = [...all.filter((each) => each.where === null)].sort((a, b) => a.low - b.low);
    const others = all.length - mine.length - open.length;
    const found =
      at === 'outside'
        ? (mine[0] ?? open[0])
        : (mine.at(-1) ?? (open.length > 1 || others > 0 || asked ? open.at(-1) : undefined));
    // The reply to 'how cold is it outside?' is outside, whatever stands near it.
    const reply = found ?? (asked ? all[0] : undefined);
    if (reply === undefined) return at === 'outside' ? frostInWords(reading.text) : null;
    return spec.worse === 'high' ? reply.high : reply.low;
  };
}

/** A temperature of the van's inside, or one that is not said to be outside. */
export function readAnywhere(reading: Reading, spec: InputSpec): number | null {
  const all = temperaturesIn(reading.counted, reading.asked === spec.name);
  const found =
    all.find((each) => each.where?.at === 'inside') ??
    all.find((each) => each.where?.sure !== true) ??
    (reading.asked === spec.name ? all[0] : undefined);
  if (found === undefined) return null;
  return spec.worse === 'high' ? found.high : found.low;
}

/** Where warming starts: 12 in 'from 12 to 60'. */
export function readFrom(reading: Reading): number | null {
  const { pieces, quantities } = reading.counted;
  const temperature = (each: Quantity) => each.unit === 'degrees' || each.unit === 'celsius' || each.unit === 'bare';
  const found = quantities.find(
    (each) => temperature(each) && (pieces[each.from - 1]?.text === 'from' || each.high - each.low >= 20),
  );
  return found?.low ?? null;
}

/** The lowest temperature that a water heater is ever set to, in degrees Celsius: below it a number is the weather. */
const LEAST_TARGET_C = 30;

/** Where warming ends: 60 in 'from 12 to 60', '60 degrees'. */
export function readTarget(reading: Reading, spec: InputSpec): number | null {
  const all = temperaturesIn(reading.counted, reading.asked === spec.name).filter(
    (each) => !(each.where?.at === 'outside' && each.where.sure) && (each.high >= LEAST_TARGET_C || each.high < 0),
  );
  return all.at(-1)?.high ?? null;
}

/** The warmth inside before the heating goes on: said as it is now, or the lower of two temperatures inside. */
export function readStart(reading: Reading): number | null {
  const inside = temperaturesIn(reading.counted, false).filter((each) => each.where?.at === 'inside');
  const now = inside.find((each) => each.where?.now === true);
  if (now !== undefined) return now.low;
  return inside.length < 2 ? null : Math.min(...inside.map((each) => each.low));
}
