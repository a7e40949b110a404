import { WATTS_PER_KILOWATT } from './units.ts';

/** Water to be heated. Litres, degrees Celsius, and kJ for a litre and kelvin. */
export type Tank = { readonly litres: number; readonly fromC: number; readonly toC: number; readonly kJPerLK: number };

/** Energy into the water, in kWh. */
export function waterKWh({ litres, fromC, toC, kJPerLK }: Tank): number {
  return (litres * kJPerLK * Math.max(0, toC - fromC)) / 3600;
}

/** minutes = litres x 4.19 x (target - cold) / (watts x efficiency) x 1000 / 60, without the start. `usefulW` is watts x efficiency. */
export function waterMinutes(tank: Tank, usefulW: number): number {
  return (waterKWh(tank) * 60) / (usefulW / WATTS_PER_KILOWATT);
}

/** Litres at `mixC` from hot and cold water: heat balance. */
export function mixedLitres(hotL: number, hotC: number, coldC: number, mixC: number): number {
  return (hotL * (hotC - coldC)) / (mixC - coldC);
}
