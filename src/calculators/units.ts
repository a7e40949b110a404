/*
 * What hirers say, in the units the sums use: kilograms, litres, metres, degrees Celsius, watts.
 * The factors are exact by definition (international yard and pound of 1959, imperial gallon of 1985).
 */

export const KG_PER_POUND = 0.45359237;
export const KG_PER_STONE = 14 * KG_PER_POUND;
export const LITRES_PER_GALLON = 4.54609;
export const MM_PER_INCH = 25.4;
export const WATTS_PER_KILOWATT = 1000;
const KELVIN_AT_0C = 273.15;

/** Degrees Fahrenheit to degrees Celsius. */
export function celsiusFromFahrenheit(degreesF: number): number {
  return ((degreesF - 32) * 5) / 9;
}

/** Degrees Celsius to kelvin. */
export function kelvinFromCelsius(degreesC: number): number {
  return degreesC + KELVIN_AT_0C;
}

/** Kelvin to degrees Celsius. */
export function celsiusFromKelvin(kelvins: number): number {
  return kelvins - KELVIN_AT_0C;
}

/** `value` to `places` decimals; never minus nought. */
export function rounded(value: number, places = 0): number {
  const scale = 10 ** places;
  const result = Math.round((value + Number.EPSILON * Math.sign(value)) * scale) / scale;
  return result === 0 ? 0 : result;
}
