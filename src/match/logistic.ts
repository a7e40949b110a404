/** One observation: what was seen, whether it came true, how much it counts. */
export type Row = { readonly x: readonly number[]; readonly y: boolean; readonly weight: number };

/**
 * Logistic regression by Newton's method with a small ridge, on columns scaled to unit spread so that the ridge
 * treats them alike. The first column is taken for the constant and is not held back.
 *
 * @returns Weights for the columns as they came; zeros when there are no rows.
 */
export function fitLogistic(rows: readonly Row[], ridge: number): readonly number[] {
  const columns = rows[0]?.x.length ?? 0;
  const spread = spreads(rows, columns);
  let w = new Array<number>(columns).fill(0);
  for (let round = 0; round < 30; round++) {
    const slope = w.map((value, i) => (i === 0 ? 0 : ridge * value));
    const bend = w.map((_, i) => w.map((__, j) => (i === j ? (i === 0 ? 1e-9 : ridge) : 0)));
    for (const { x, y, weight } of rows) {
      let sum = 0;
      for (let i = 0; i < columns; i++) sum += ((w[i] as number) * (x[i] as number)) / (spread[i] as number);
      const p = 1 / (1 + Math.exp(-sum));
      const pull = weight * (p - (y ? 1 : 0));
      const curve = weight * p * (1 - p);
      for (let i = 0; i < columns; i++) {
        const xi = (x[i] as number) / (spread[i] as number);
        slope[i] = (slope[i] as number) + pull * xi;
        const row = bend[i] as number[];
        for (let j = 0; j < columns; j++)
          row[j] = (row[j] as number) + (curve * xi * (x[j] as number)) / (spread[j] as number);
      }
    }
    const move = solve(bend, slope);
    w = w.map((value, i) => value - (move[i] as number));
    if (move.every((one) => Math.abs(one) < 1e-8)) break;
  }
  return w.map((value, i) => value / (spread[i] as number));
}

function spreads(rows: readonly Row[], columns: number): readonly number[] {
  return Array.from({ length: columns }, (_, i) => {
    if (i === 0) return 1;
    const mean = rows.reduce((sum, { x }) => sum + (x[i] as number), 0) / rows.length;
    const variance = rows.reduce((sum, { x }) => sum + ((x[i] as number) - mean) ** 2, 0) / rows.length;
    return Math.sqrt(variance) || 1;
  });
}

/** Gaussian elimination with partial pivoting; `a` and `b` are used up. */
function solve(a: number[][], b: number[]): number[] {
  const n = b.length;
  for (let col = 0; col < n; col++) {
    let pivot = col;
    for (let row = col + 1; row < n; row++)
      if (Math.abs(a[row]?.[col] ?? 0) > Math.abs(a[pivot]?.[col] ?? 0)) pivot = row;
    [a[col], a[pivot]] = [a[pivot] as number[], a[col] as number[]];
    [b[col], b[pivot]] = [b[pivot] as number, b[col] as number];
    const lead = a[col] as number[];
    if (Math.abs(lead[col] as number) < 1e-12) continue;
    for (let row = col + 1; row < n; row++) {
      const below = a[row] as number[];
      const factor = (below[col] as number) / (lead[col] as number);
      for (let k = col; k < n; k++) below[k] = (below[k] as number) - factor * (lead[k] as number);
      b[row] = (b[row] as number) - factor * (b[col] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    const line = a[row] as number[];
    let sum = b[row] as number;
    for (let k = row + 1; k < n; k++) sum -= (line[k] as number) * (x[k] as number);
    x[row] = Math.abs(line[row] as number) < 1e-12 ? 0 : sum / (line[row] as number);
  }
  return x;
}
