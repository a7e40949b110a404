/** Numbers that only grow (`count`) or are read when asked for (`gauge`), given out as Prometheus text. */
export type Counters = {
  /** Adds `by` (1 when left out) to a counter; labels make rows of their own. */
  readonly count: (name: CounterName, labels?: Labels, by?: number) => void;
  /** Registers a number that is read at each scrape; a later gauge of that name replaces it. */
  readonly gauge: (name: CounterName, help: string, read: () => number) => void;
  /** Says what a counter counts; without it the name stands alone. */
  readonly describe: (name: CounterName, help: string) => void;
  /** The whole page, as in the text exposition format 0.0.4 of prometheus.io. */
  readonly text: () => string;
};

/** Letters, digits and underscores, as the exposition format asks. */
export type CounterName = string;
export type Labels = Readonly<Record<string, string>>;

const NAME = /^[a-zA-Z_][a-zA-Z0-9_]*$/;

export function createCounters(): Counters {
  const rows = new Map<CounterName, Map<string, number>>();
  const helps = new Map<CounterName, string>();
  const gauges = new Map<CounterName, () => number>();

  const named = (name: CounterName): CounterName => {
    if (!NAME.test(name)) throw new Error(`a counter's name holds letters, digits and underscores only: ${name}`);
    return name;
  };

  return {
    count: (name, labels = {}, by = 1) => {
      const row = rows.get(named(name)) ?? new Map<string, number>();
      const key = labelText(labels);
      row.set(key, (row.get(key) ?? 0) + by);
      rows.set(name, row);
    },
    gauge: (name, help, read) => {
      gauges.set(named(name), read);
      helps.set(name, help);
    },
    describe: (name, help) => void helps.set(named(name), help),
    text: () => {
      const lines: string[] = [];
      const head = (name: CounterName, type: 'counter' | 'gauge') => {
        const help = helps.get(name);
        if (help !== undefined) lines.push(`# HELP ${name} ${help.replace(/\\/g, '\\\\').replace(/\n/g, '\\n')}`);
        lines.push(`# TYPE ${name} ${type}`);
      };
      for (const [name, row] of [...rows].sort(byName)) {
        head(name, 'counter');
        for (const [labels, value] of [...row].sort(byName)) lines.push(`${name}${labels} ${value}`);
      }
      for (const [name, read] of [...gauges].sort(byName)) {
        head(name, 'gauge');
        lines.push(`${name} ${read()}`);
      }
      return `${lines.join('\n')}\n`;
    },
  };
}

function byName(a: readonly [string, unknown], b: readonly [string, unknown]): number {
  return a[0] < b[0] ? -1 : 1;
}

function labelText(labels: Labels): string {
  const pairs = Object.entries(labels).sort(byName);
  if (pairs.length === 0) return '';
  const quoted = pairs.map(([name, value]) => {
    const safe = value.replace(/\\/g, '\\\\').replace(/"/g, '\\"').replace(/\n/g, '\\n');
    return `${name}="${safe}"`;
  });
  return `{${quoted.join(',')}}`;
}
