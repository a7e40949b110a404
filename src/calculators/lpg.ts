import { celsiusFromKelvin, kelvinFromCelsius, WATTS_PER_KILOWATT } from './units.ts';

export type Gas = 'propane' | 'butane';

/** log10 P(bar) = a - b / (T + c), T in kelvin. */
export type Antoine = { readonly a: number; readonly b: number; readonly c: number };

/**
 * Vapour pressure of the pure gases. Propane: the constants of the reference's G-01, good from about -42 to 25 C;
 * n-butane: G-04, -73 to 19 C. Commercial gas is within 15 %.
 */
export const ANTOINE: Readonly<Record<Gas, Antoine>> = {
  propane: { a: 3.95463, b: 813.2, c: -25.15 },
  butane: { a: 3.93266, b: 935.773, c: -34.361 },
};

export const ATMOSPHERE_BAR = 1.01325;

/** Absolute vapour pressure in bar at a temperature in degrees Celsius. */
export function vapourBar(celsius: number, { a, b, c }: Antoine): number {
  return 10 ** (a - b / (kelvinFromCelsius(celsius) + c));
}

/** Pressure over the air's in the cylinder, in bar; below nought nothing comes out. */
export function gaugeBar(celsius: number, gas: Gas): number {
  return vapourBar(celsius, ANTOINE[gas]) - ATMOSPHERE_BAR;
}

/** The temperature at which the cylinder holds `gauge` bar, in degrees Celsius: the inverse of {@link gaugeBar}. */
export function celsiusAtGauge(gauge: number, gas: Gas): number {
  const { a, b, c } = ANTOINE[gas];
  return celsiusFromKelvin(b / (a - Math.log10(gauge + ATMOSPHERE_BAR)) - c);
}

/** Grams burnt by `watts` of flame (net) for `hours`. */
export function gramsBurnt(watts: number, hours: number, netKWhPerKg: number): number {
  return ((watts / WATTS_PER_KILOWATT) * hours * 1000) / netKWhPerKg;
}

/** g a day = heat loss (W/K) x (inside - outside) x hours / 1000 x 77.7 / 0.85; nothing when it is warmer outside. */
export function heatingGrams(heat: {
  readonly lossWPerK: number;
  readonly liftK: number;
  readonly hours: number;
  readonly efficiency: number;
  readonly netKWhPerKg: number;
}): number {
  return gramsBurnt(heat.lossWPerK * Math.max(0, heat.liftK), heat.hours, heat.netKWhPerKg) / heat.efficiency;
}
