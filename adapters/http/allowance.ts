/** Counts what each caller has done in the last while, and says when it was enough. */
export type Allowance = {
  /** Takes one and says yes, or takes none and says no. */
  readonly take: (caller: string, nowMs: number) => boolean;
};

/** At most `most` in any `windowMs`, for each caller. Callers that are done for a window are forgotten. */
export function createAllowance(options: { readonly most: number; readonly windowMs: number }): Allowance {
  const { most, windowMs } = options;
  const taken = new Map<string, number[]>();
  let sweptMs = 0;
  return {
    take: (caller, nowMs) => {
      const since = nowMs - windowMs;
      if (nowMs - sweptMs > windowMs) {
        for (const [name, times] of taken) if ((times.at(-1) ?? 0) <= since) taken.delete(name);
        sweptMs = nowMs;
      }
      const recent = (taken.get(caller) ?? []).filter((at) => at > since);
      const allowed = recent.length < most;
      if (allowed) recent.push(nowMs);
      taken.set(caller, recent);
      return allowed;
    },
  };
}
