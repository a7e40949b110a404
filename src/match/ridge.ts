import type { Vector } from './vector.ts';

/** What is added to each line's likeness to itself: how far a line alone may bend the weights. */
const RIDGE = 1;
/** Steps of conjugate gradients; the answer's first places stand long before. */
const STEPS = 12;

/**
 * Ridge regression of each class's yes or no on the vectors, solved over the lines by conjugate gradients (Hestenes and
 * Stiefel 1952), all classes side by side. It errs on other texts than the softmax does, since every line pulls on every
 * class, so that the two together are better than either where lines are few.
 *
 * @param labels The class of each vector, by number.
 * @returns      `rows[feature * classes + class]`; a right answer scores about 1 more than a wrong one.
 */
export function fitRidge(
  vectors: readonly Vector[],
  labels: readonly number[],
  classes: number,
  featureCount: number,
): Float32Array {
  const lines = vectors.length;
  const rows = new Float32Array(featureCount * classes);
  const shares = new Float64Array(classes);
  for (const label of labels) shares[label] = (shares[label] as number) + 1 / lines;
  // What is left to explain of each line, which is also the first direction.
  const left = new Float64Array(lines * classes);
  for (const [line, label] of labels.entries()) {
    for (let c = 0; c < classes; c++) left[line * classes + c] = (c === label ? 1 : 0) - (shares[c] as number);
  }
  const found = new Float64Array(left.length);
  const way = left.slice();
  const image = new Float64Array(left.length);
  let size = squares(left, classes);
  for (let step = 0; step < STEPS; step++) {
    spread(vectors, way, classes, rows);
    gather(vectors, rows, way, classes, image);
    const along = products(way, image, classes);
    const stride = size.map((one, c) => (one > 0 ? one / (along[c] as number) : 0));
    for (let i = 0; i < left.length; i++) {
      const s = stride[i % classes] as number;
      found[i] = (found[i] as number) + s * (way[i] as number);
      left[i] = (left[i] as number) - s * (image[i] as number);
    }
    const next = squares(left, classes);
    const turn = next.map((one, c) => ((size[c] as number) > 0 ? one / (size[c] as number) : 0));
    for (let i = 0; i < way.length; i++)
      way[i] = (left[i] as number) + (turn[i % classes] as number) * (way[i] as number);
    size = next;
  }
  spread(vectors, found, classes, rows);
  return rows;
}

/** From the lines' numbers to the features': the weights that they stand for. */
function spread(vectors: readonly Vector[], of: Float64Array, classes: number, rows: Float32Array): void {
  rows.fill(0);
  for (const [line, { at, weight }] of vectors.entries()) {
    for (let i = 0; i < at.length; i++) {
      const base = (at[i] as number) * classes;
      const x = weight[i] as number;
      for (let c = 0; c < classes; c++)
        rows[base + c] = (rows[base + c] as number) + x * (of[line * classes + c] as number);
    }
  }
}

/** From the features' numbers back to the lines', with the ridge added. */
function gather(
  vectors: readonly Vector[],
  rows: Float32Array,
  way: Float64Array,
  classes: number,
  image: Float64Array,
): void {
  for (let i = 0; i < image.length; i++) image[i] = RIDGE * (way[i] as number);
  for (const [line, { at, weight }] of vectors.entries()) {
    const own = line * classes;
    for (let i = 0; i < at.length; i++) {
      const base = (at[i] as number) * classes;
      const x = weight[i] as number;
      for (let c = 0; c < classes; c++) image[own + c] = (image[own + c] as number) + x * (rows[base + c] as number);
    }
  }
}

function squares(of: Float64Array, classes: number): Float64Array {
  return products(of, of, classes);
}

/** For each class the sum over the lines of the products. */
function products(a: Float64Array, b: Float64Array, classes: number): Float64Array {
  const sums = new Float64Array(classes);
  for (let i = 0; i < a.length; i++) {
    const c = i % classes;
    sums[c] = (sums[c] as number) + (a[i] as number) * (b[i] as number);
  }
  return sums;
}
