/** A van being warmed. Watts and W/K; the store in kWh for each kelvin of its walls, furniture and air. */
export type Warming = { readonly watts: number; readonly lossWPerK: number; readonly storeKWhPerK: number };

/** The most a source can hold above the outside, in kelvins: watts / heat loss. */
export function maxRiseK(watts: number, lossWPerK: number): number {
  return watts / lossWPerK;
}

/**
 * Minutes from `startRiseK` to `targetRiseK` above the outside:
 * t (h) = (store / loss) x 1000 x ln((watts - loss x start) / (watts - loss x target)); with start 0 it is the firm's
 * -(store / loss) x 1000 x ln(1 - loss x rise / watts).
 *
 * @returns Null when it never gets there; 0 when it is as warm already.
 */
export function warmingMinutes(
  { watts, lossWPerK, storeKWhPerK }: Warming,
  startRiseK: number,
  targetRiseK: number,
): number | null {
  if (targetRiseK <= startRiseK) return 0;
  if (lossWPerK * targetRiseK >= watts) return null;
  const hours =
    (storeKWhPerK / lossWPerK) * 1000 * Math.log((watts - lossWPerK * startRiseK) / (watts - lossWPerK * targetRiseK));
  return hours * 60;
}
