/** Fails the type check when a case of a union was forgotten; throws should one slip through at run time. */
export function never(value: never): never {
  throw new Error(`unhandled case: ${JSON.stringify(value)}`);
}
