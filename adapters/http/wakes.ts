/**
 * Lets open event streams sleep until something they show has changed. Nothing is sent through here: a stream that
 * wakes reads the store, so a wake too many costs a read and nothing else.
 */
export type Wakes = {
  /** Wakes everyone who waits under this name; the next `wait` under it returns at once for those who are not waiting. */
  readonly wake: (name: string) => void;
  /** A sleeper's own bell: remembers a wake that comes while the sleeper is reading. Call `leave` when done. */
  readonly join: (name: string) => Bell;
  /** Ends every stream, now and from here on. */
  readonly close: () => void;
  readonly closed: () => boolean;
  /** How many are listening now. */
  readonly size: () => number;
};

export type Bell = {
  /** 'woken', 'slept' after `mostMs`, or 'closed'. */
  readonly wait: (mostMs: number) => Promise<'woken' | 'slept' | 'closed'>;
  readonly leave: () => void;
};

type Sleeper = { rung: boolean; ring: (() => void) | null };

export function createWakes(): Wakes {
  const sleepers = new Map<string, Set<Sleeper>>();
  let closed = false;
  let size = 0;

  const ringAll = (set: ReadonlySet<Sleeper> | undefined) => {
    for (const sleeper of set ?? []) {
      sleeper.rung = true;
      sleeper.ring?.();
    }
  };

  return {
    wake: (name) => ringAll(sleepers.get(name)),
    close: () => {
      closed = true;
      for (const set of sleepers.values()) ringAll(set);
    },
    closed: () => closed,
    size: () => size,
    join: (name) => {
      const sleeper: Sleeper = { rung: false, ring: null };
      const set = sleepers.get(name) ?? new Set();
      sleepers.set(name, set.add(sleeper));
      size += 1;
      return {
        wait: async (mostMs) => {
          if (!sleeper.rung && !closed) {
            await new Promise<void>((resolve) => {
              const timer = setTimeout(resolve, mostMs);
              sleeper.ring = () => {
                clearTimeout(timer);
                resolve();
              };
            });
            sleeper.ring = null;
          }
          if (closed) return 'closed';
          const woken = sleeper.rung;
          sleeper.rung = false;
          return woken ? 'woken' : 'slept';
        },
        leave: () => {
          if (!set.delete(sleeper)) return;
          // One who is asleep as well: its timer would keep the process alive.
          sleeper.ring?.();
          size -= 1;
          if (set.size === 0 && sleepers.get(name) === set) sleepers.delete(name);
        },
      };
    },
  };
}
