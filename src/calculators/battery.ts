import type { Constants, Figures } from '../knowledge/schema.ts';
import type { CalculatorContext } from './types.ts';

type Battery = Figures['battery'];

/** Hours over which makers rate a battery: 100 Ah is 5 A for 20 hours. */
export const RATED_HOURS = 20;

/** Ah = watts x hours / volts; the firm's sums are done at the nominal 12 V. */
export function ampHours(watts: number, hours: number, volts: number): number {
  return (watts * hours) / volts;
}

/** What may be drawn from a full battery, in Ah: nominal x usable share x age. */
export function usableAh({
  nominalAh,
  usableShare,
  ageFactor,
}: Pick<Battery, 'nominalAh' | 'usableShare' | 'ageFactor'>): number {
  return nominalAh * usableShare * ageFactor;
}

/** What may still be drawn at a state of charge of `percent`, in Ah; nothing below the share that stays in. */
export function leftAh(
  { nominalAh, usableShare, ageFactor }: Pick<Battery, 'nominalAh' | 'usableShare' | 'ageFactor'>,
  percent: number,
): number {
  return Math.max(0, nominalAh * ageFactor * (percent / 100 - (1 - usableShare)));
}

/**
 * Peukert's law for a capacity rated over `ratedHours`: t = H (C / (I H))^k. The short form t = C / I^k is wrong with a
 * 20-hour label (reference B-08).
 *
 * @param amps More than 0.
 * @returns    Hours to empty.
 */
export function peukertHours(capacityAh: number, ratedHours: number, amps: number, k: number): number {
  return ratedHours * (capacityAh / (amps * ratedHours)) ** k;
}

/** The share of its rated Ah a battery gives at `amps`; 1 up to the rated current. */
export function peukertShare(nominalAh: number, amps: number, k: number): number {
  if (amps <= nominalAh / RATED_HOURS) return 1;
  return (amps * peukertHours(nominalAh, RATED_HOURS, amps, k)) / nominalAh;
}

/**
 * State of charge from the voltage of a rested battery, in per cent, within about 12; between the points of `rest` in a line.
 * @returns Null for lithium: between 13.0 and 13.3 V its tables read anything from 40 to 70 % (reference B-04).
 */
export function percentFromVolts(volts: number, type: Battery['type'], rest: Constants['restVolts']): number | null {
  if (type === 'lithium') return null;
  const table = rest[type];
  const above = table.findIndex((each) => each >= volts);
  if (above === -1) return 100;
  if (above === 0) return 0;
  const [low, high] = [table[above - 1] ?? volts, table[above] ?? volts];
  return 25 * (above - 1 + (volts - low) / (high - low));
}

/** What a compressor fridge takes in a day, between the firm's figures at 10, 20 and 30 C; level beyond them. */
export function fridgeAh(perDay: NonNullable<Battery['fridgeAhPerDay']>, outsideC: number): number {
  const { at10C, at20C, at30C } = perDay;
  if (outsideC <= 10) return at10C;
  if (outsideC >= 30) return at30C;
  return outsideC <= 20
    ? at10C + ((at20C - at10C) * (outsideC - 10)) / 10
    : at20C + ((at30C - at20C) * (outsideC - 20)) / 10;
}

/** Wh a day = panel W x sun hours x factor. */
export function solarWh(panelW: number, sunHours: number, factor: number): number {
  return panelW * sunHours * factor;
}

/** Hours of full sun on a flat roof on a usual day of a month, at the latitude of the site. */
export function sunHoursIn(month: number, { constants, sun }: Pick<CalculatorContext, 'constants' | 'sun'>): number {
  return constants.sunHours[sun][month - 1] ?? 0;
}

/** The panel's Wh on a usual day of a month; less under trees. */
export function solarWhInMonth(context: CalculatorContext, month: number, shaded: boolean): number {
  const { solarFactor, shadedShare } = context.constants;
  return solarWh(context.figures.solarW ?? 0, sunHoursIn(month, context), solarFactor) * (shaded ? shadedShare : 1);
}

/** Days = usable / (use - solar). Null when the sun keeps up. */
export function batteryDays(usable: number, dailyAh: number, solarAh: number): number | null {
  return solarAh >= dailyAh ? null : usable / (dailyAh - solarAh);
}
