/**
 * A small seeded generator (mulberry32), so that training, simulation and tests repeat exactly.
 *
 * @param seed Any 32-bit integer.
 * @returns    A function giving numbers in 0..1 (1 excluded).
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Fisher-Yates on a copy; the order depends on `random` alone. */
export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const copy = [...items];
  for (let i = copy.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [copy[i], copy[j]] = [copy[j] as T, copy[i] as T];
  }
  return copy;
}

/** A number of 32 bits that depends on the text alone (FNV-1a): chance is drawn from it, not from a text's place among others. */
export function textSeed(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash | 0;
}

/** Spreads any change of a 32-bit number over all its bits (murmur3's last step). */
export function mixed(value: number): number {
  let x = value | 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}

/** Places of lines in the order of one round: each round another, and a line more or less leaves the others' order as it is. */
export function roundOrder(
  lineSeeds: Int32Array,
  roundSeed: number,
): { readonly order: readonly number[]; readonly keys: Int32Array } {
  const keys = lineSeeds.map((own) => mixed(own ^ roundSeed));
  return { keys, order: Array.from(keys.keys()).sort((a, b) => (keys[a] as number) - (keys[b] as number) || a - b) };
}
