import type { TopicId, VanId } from '../basics/ids.ts';
import type { ThreadEvent } from './gaps.ts';

/** Counts of one week, van and system; no personal data. */
export type GrowthRow = {
  /** The Monday it began on, 2027-07-12. */
  readonly week: string;
  readonly van: VanId | '';
  /** '' where no topic was settled on. */
  readonly system: string;
  /** At once, without asking back. */
  readonly answered: number;
  /** Choices offered, and those of them from which one was picked. */
  readonly offered: number;
  readonly chosen: number;
  readonly passed: number;
  readonly helped: number;
  readonly stillStuck: number;
  readonly gaps: number;
  /** Passes that a person took up, and the minutes until then together. */
  readonly takenUp: number;
  readonly waitMinutes: number;
};

export type GrowthSource = {
  readonly events: readonly ThreadEvent[];
  readonly vanOf: (threadId: string) => VanId | null;
  readonly systemOf: (topic: TopicId) => string | null;
  readonly weekOf: (atMs: number) => string;
};

type Counts = { -readonly [Key in keyof GrowthRow]: GrowthRow[Key] };

/** Counts what came about, by week, van and system, in that order. */
export function growthFigures({ events, vanOf, systemOf, weekOf }: GrowthSource): readonly GrowthRow[] {
  const rows = new Map<string, Counts>();
  const offered = new Map<string, readonly TopicId[]>();
  const lastGap = new Map<string, string>();
  const waiting = new Map<string, { readonly row: Counts; readonly sinceMs: number }>();
  const rowFor = ({ threadId, atMs }: ThreadEvent, topic: TopicId | undefined): Counts => {
    const [week, van, system] = [weekOf(atMs), vanOf(threadId) ?? '', (topic && systemOf(topic)) ?? ''];
    const key = `${week}\t${van}\t${system}`;
    const row = rows.get(key) ?? { week, van, system, ...NOTHING };
    rows.set(key, row);
    return row;
  };
  for (const at of events) {
    const { event } = at;
    switch (event.kind) {
      case 'answered':
        rowFor(at, event.topic)[offered.get(at.threadId)?.includes(event.topic) === true ? 'chosen' : 'answered']++;
        offered.delete(at.threadId);
        break;
      case 'offered':
        rowFor(at, event.topics[0]).offered++;
        offered.set(at.threadId, event.topics);
        break;
      case 'helped':
        if (event.yes) rowFor(at, event.topic).helped++;
        else rowFor(at, event.topic).stillStuck++;
        break;
      case 'gap':
        // Unsure, asked back, nothing picked: one question.
        if (event.why !== 'nothing-picked' || lastGap.get(at.threadId) !== event.text)
          rowFor(at, event.topics[0]).gaps++;
        lastGap.set(at.threadId, event.text);
        break;
      case 'passed': {
        const row = rowFor(at, event.brief.understood[0]?.topic);
        row.passed++;
        if (!waiting.has(at.threadId)) waiting.set(at.threadId, { row, sinceMs: at.atMs });
        break;
      }
      case 'taken':
      case 'staff-said': {
        const wait = waiting.get(at.threadId);
        if (wait === undefined) break;
        wait.row.takenUp++;
        wait.row.waitMinutes += (at.atMs - wait.sinceMs) / 60_000;
        waiting.delete(at.threadId);
        break;
      }
      case 'given-back':
        waiting.delete(at.threadId);
        break;
      default:
    }
  }
  return [...rows.values()].sort(
    (a, b) => compare(a.week, b.week) || compare(a.van, b.van) || compare(a.system, b.system),
  );
}

const NOTHING = {
  answered: 0,
  offered: 0,
  chosen: 0,
  passed: 0,
  helped: 0,
  stillStuck: 0,
  gaps: 0,
  takenUp: 0,
  waitMinutes: 0,
};

/** The rows of one week, van or system added up, in the order in which they first come. */
export function summedBy(rows: readonly GrowthRow[], by: 'week' | 'van' | 'system'): readonly GrowthRow[] {
  const sums = new Map<string, Counts>();
  for (const row of rows) {
    const sum = sums.get(row[by]) ?? { week: '', van: '', system: '', ...NOTHING, [by]: row[by] };
    for (const field of COUNTED) sum[field] += row[field];
    sums.set(row[by], sum);
  }
  return [...sums.values()];
}

const COUNTED = Object.keys(NOTHING) as (keyof typeof NOTHING)[];

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const COLUMNS = [
  'week',
  'van',
  'system',
  'answered',
  'offered',
  'chosen',
  'passed',
  'helped',
  'stillStuck',
  'gaps',
  'takenUp',
  'waitMinutes',
] as const satisfies readonly (keyof GrowthRow)[];

/** The rows as RFC 4180 describes a file; no field can hold a comma, so none is in quotes. */
export function figuresCsv(rows: readonly GrowthRow[]): string {
  const lines = rows.map((row) => COLUMNS.map((column) => cell(row[column])).join(','));
  return [COLUMNS.join(','), ...lines, ''].join('\r\n');
}

function cell(value: string | number): string {
  return typeof value === 'number' ? String(Math.round(value * 10) / 10) : value;
}
