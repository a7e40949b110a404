/** The only source of the time for adapters; tests pass their own. */
export type Clock = { readonly nowMs: () => number };
