import type { Figures } from '../knowledge/schema.ts';
import type { Counted } from './quantities.ts';
import type { CalculatorContext } from './types.ts';
import { figure, wattsText } from './words.ts';

export type Source = Figures['heating']['sources'][number];

/** The kinds a text speaks of, and what tells their settings apart. */
export type SourceSaid = {
  readonly kinds: readonly Source['kind'][];
  /** Watts said, such as 2000 in 'on 2 kW'; a step without unit is in `step`. */
  readonly watts: number | null;
  readonly step: number | 'low' | 'high' | null;
};

/** Between these a number without a unit is the watts of a setting. */
const LEAST_BARE_W = 400;
const MOST_BARE_W = 6000;
/** A said kilowatt figure is the step it lies nearest to when it is within this share: 2 kW is the 1.8 kW step. */
const NEAR = 0.15;

/** What a text says of gas, electricity, diesel or the engine; null when it says nothing of it. */
export function sourceIn(counted: Counted): SourceSaid | null {
  const text = counted.pieces.map((piece) => piece.text).join(' ');
  const kinds: Source['kind'][] = [];
  const noGas = /\b(no|without|not on|not|off the|instead of) (the )?gas\b/.test(text);
  const noElectric =
    /\b(no|without|not on|off|instead of) (the )?(electric|electrics|electricity|hook|mains|leccy|hookup|ehu)/.test(
      text,
    );
  if (/\bgas\b|\bpropane\b|\bbutane\b|\bflame\b|\bburner\b/.test(text) && !noGas) kinds.push('gas');
  if (
    /\b(electric|electrics|electricity|electrical|mains|leccy|lecky|hook - up|hookup|hook up|ehu|element|immersion|plugged in)\b/.test(
      text,
    ) &&
    !noElectric
  )
    kinds.push('electric');
  if (/\bdiesel\b/.test(text)) kinds.push('diesel');
  if (/\b(engine|driving|drive|alternator)\b/.test(text)) kinds.push('engine');
  if (/\b(both|mix|mixed|mix 1|mix 2|everything on|all on)\b/.test(text))
    kinds.push(...(['gas', 'electric'] as const).filter((kind) => !kinds.includes(kind)));
  const watts = counted.quantities.find((quantity) => quantity.unit === 'watts')?.high ?? null;
  const step = stepIn(counted, text);
  return kinds.length === 0 && watts === null && step === null ? null : { kinds, watts, step };
}

function stepIn(counted: Counted, text: string): SourceSaid['step'] {
  for (const quantity of counted.quantities) {
    if (quantity.unit !== 'bare' || quantity.high < 0) continue;
    // Watts are said without their unit as well: 'on 1000'.
    if (quantity.high > 9 && (quantity.high < LEAST_BARE_W || quantity.high > MOST_BARE_W)) continue;
    const before = counted.pieces[quantity.from - 1]?.text ?? '';
    if (/^(on|step|setting|level|electric|mix|number|no|gas|heater|heating|fire)$/.test(before)) return quantity.high;
  }
  if (/\b(full|max|maximum|flat out|highest|top|high)\b/.test(text)) return 'high';
  return /\b(low|lowest|minimum|min)\b/.test(text) ? 'low' : null;
}

/** The one setting of `all` that was said; ids joined by '+' for both fuels. Null when it cannot be told. */
export function settingOf(
  said: SourceSaid,
  all: readonly Source[],
  availableW: number | null,
  usualGasW: number,
): string | null {
  const kinds = said.kinds.filter((kind) => all.some((source) => source.kind === kind));
  if (kinds.includes('gas') && kinds.includes('electric') && (said.kinds.length === 2 || kinds.length === 2)) {
    if (said.watts !== null && !/both/.test(said.kinds.join())) {
      const only = byWatts(all, said.watts);
      const gas = pickGas(all, { ...said, watts: null }, usualGasW);
      if (only !== null && gas !== null && only.kind === 'electric') return `${only.id}+${gas.id}`;
      if (only !== null && only.kind === 'gas') return only.id;
    }
    const electric = pickElectric(all, said, availableW) ?? all.filter((source) => source.kind === 'electric').at(-1);
    const gas = pickGas(all, { ...said, watts: null }, usualGasW);
    return electric !== undefined && gas !== null ? `${electric.id}+${gas.id}` : null;
  }
  if (kinds[0] === 'gas') return pickGas(all, said, usualGasW)?.id ?? null;
  if (kinds[0] === 'diesel' || kinds[0] === 'engine') return all.find((source) => source.kind === kinds[0])?.id ?? null;
  if (kinds[0] === 'electric') return pickElectric(all, said, availableW)?.id ?? null;
  if (said.watts !== null) return byWatts(all, said.watts)?.id ?? null;
  if (said.step === null) return null;
  // 'On 5.5' is whatever has such a step.
  const step = typeof said.step === 'number' ? byWatts(all, stepW(said.step)) : null;
  return (step ?? pickElectric(all, said, availableW))?.id ?? null;
}

/** 2 for 2 kW; 2000 as it stands. */
function stepW(step: number): number {
  return step < LEAST_BARE_W ? step * 1000 : step;
}

function byWatts(all: readonly Source[], watts: number): Source | null {
  const near = [...all].sort((a, b) => Math.abs(a.watts - watts) - Math.abs(b.watts - watts))[0];
  return near !== undefined && Math.abs(near.watts - watts) <= near.watts * NEAR ? near : null;
}

function pickGas(all: readonly Source[], said: SourceSaid, usualGasW: number): Source | null {
  const gas = all.filter((source) => source.kind === 'gas');
  if (said.watts !== null) return byWatts(gas, said.watts) ?? usualGas(gas, usualGasW);
  if (said.step === 'high') return gas.at(-1) ?? null;
  if (said.step === 'low') return gas[0] ?? null;
  if (typeof said.step === 'number') return byWatts(gas, stepW(said.step)) ?? usualGas(gas, usualGasW);
  return usualGas(gas, usualGasW);
}

/** Of several settings of gas the strongest that is used every day. */
export function usualGas(gas: readonly Source[], usualGasW: number): Source | null {
  return gas.filter((source) => source.watts <= usualGasW).at(-1) ?? gas[0] ?? null;
}

function pickElectric(all: readonly Source[], said: SourceSaid, availableW: number | null): Source | null {
  const electric = all.filter((source) => source.kind === 'electric');
  if (electric.length === 1) return electric[0] ?? null;
  if (said.watts !== null) return byWatts(electric, said.watts);
  if (typeof said.step === 'number') return byWatts(electric, stepW(said.step)) ?? electric[said.step - 1] ?? null;
  if (said.step === 'high') return electric.at(-1) ?? null;
  if (said.step === 'low') return electric[0] ?? null;
  return availableW === null ? null : (electric.filter((source) => source.watts <= availableW).at(-1) ?? null);
}

/** Whether the pitch carries a setting beside the background; any does while the amps are not known. */
export function carried(source: Source, amps: number | null, { figures, constants }: CalculatorContext): boolean {
  if (source.kind !== 'electric' || amps === null) return true;
  return source.watts <= amps * constants.volts - figures.mains.backgroundW;
}

/** A time as it is told: with an electric setting that is more than the pitch carries, that comes first. */
export function onPost(says: string, used: readonly Source[], amps: number | null, context: CalculatorContext): string {
  const past = used.find((source) => !carried(source, amps, context));
  if (past === undefined || amps === null) return says;
  const [not, then] =
    amps === 0 ? ['There is no hook-up for', 'With one'] : [`Your ${figure(amps)} amps do not carry`, 'With more'];
  return `${not} ${past.name} (${wattsText(past.watts)}). ${then} it is ${says.charAt(0).toLowerCase()}${says.slice(1)}`;
}

/** The heat of a stored setting in watts: both fuels together add up. Empty when an id is unknown. */
export function sourcesOf(setting: string, all: readonly Source[]): readonly Source[] {
  return setting.split('+').flatMap((id) => all.find((source) => source.id === id) ?? []);
}
