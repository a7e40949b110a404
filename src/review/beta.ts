/*
 * The beta distribution: the marginals of Dirichlet counts. Continued fraction and log gamma after Press, Teukolsky,
 * Vetterling and Flannery, Numerical Recipes, 3rd edition, sections 6.1 and 6.4.
 */

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
const TINY = 1e-300;
const PRECISE = 1e-12;
const MOST_TERMS = 500;

/**
 * The value below which a Beta(a, b) variable lies with the given chance.
 *
 * @param chance 0 to 1.
 * @param a      Above 0, as `b`.
 */
export function betaQuantile(chance: number, a: number, b: number): number {
  let low = 0;
  let high = 1;
  while (high - low > PRECISE) {
    const middle = (low + high) / 2;
    if (betaBelow(middle, a, b) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The chance that a Beta(a, b) variable lies below `x`. */
export function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  // The fraction converges fast only on its own side of the mean.
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

/** Lentz's way of evaluating the continued fraction of the incomplete beta function. */
function fraction(x: number, a: number, b: number): number {
  const away = (value: number) => (Math.abs(value) < TINY ? TINY : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < PRECISE) break;
  }
  return value;
}

function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const below = x - 1;
  const at = below + 7.5;
  let sum = LANCZOS[0] ?? 1;
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] ?? 0) / (below + i);
  return 0.5 * Math.log(2 * Math.PI) + (below + 0.5) * Math.log(at) - at + Math.log(sum);
}
