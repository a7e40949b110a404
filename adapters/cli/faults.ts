import { renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  buildKnowledge,
  countFaults,
  type Due,
  dayOf,
  type EndedWalk,
  type FaultCounts,
  faultsDue,
  type Knowledge,
  readGraph,
  type Store,
  slipText,
  type TopicId,
  type VanId,
  withPriors,
} from '../../src/index.ts';
import { readGraphFolder } from '../files/graph-files.ts';
import { command, UsageError, WorkError } from './command.ts';
import { withData } from './with-data.ts';

/** Notes under this name keep what the yard has looked at: the walk's event, and who looked. */
export const LOOKED_AT = 'fault-looked-at:';

export const faults = command({
  name: 'faults',
  does: 'What fault finding has taught: counts against priors, and what to look at before the next hire.',
  usage:
    'report [--symptom ID] [--van NAME] | due [--van NAME] [--looked-at N --by NAME] | accept --symptom ID --van NAME [--json]',
  help: [
    'report           how often each cause was found, beside its prior, with 95 % intervals and priors to consider',
    'due              faults that were passed or fixed by a trick, with who said what',
    'accept           writes the priors that report proposes for one symptom and van into the graph',
    '--symptom ID     one symptom',
    '--van NAME       one van; left out: all',
    '--looked-at N    ticks off entry N of due',
    '--by NAME        who looked',
    '--json           one JSON object a line',
  ],
  options: {
    symptom: { type: 'string' },
    van: { type: 'string' },
    'looked-at': { type: 'string' },
    by: { type: 'string' },
    json: { type: 'boolean' },
  },
  run: async (values, [action], terminal) => {
    if (action !== 'report' && action !== 'due' && action !== 'accept') {
      throw new UsageError('expected report, due or accept');
    }
    if (action !== 'due' && values['looked-at'] !== undefined) throw new UsageError('--looked-at belongs to due');
    return withData(terminal, async ({ store, served, config }) => {
      const { knowledge } = served;
      const van = vanNamed(values.van, knowledge);
      const symptom = values.symptom ?? null;
      const print = (line: string, item: unknown): void =>
        terminal.out(`${values.json === true ? JSON.stringify(item) : line}\n`);
      switch (action) {
        case 'report':
          for (const counts of await faultReport(store, knowledge, symptom, van)) print(reportText(counts), counts);
          return 0;
        case 'due': {
          const looked = values['looked-at'];
          if (looked !== undefined) await lookAt(looked, values.by, knowledge, store);
          for (const due of await vanFaultsDue(store, knowledge, van))
            print(dueText(due, knowledge.firm.timeZone), due);
          return 0;
        }
        case 'accept': {
          if (symptom === null || van === null) throw new UsageError('accept needs --symptom and --van');
          const [counts] = await faultReport(store, knowledge, symptom, van);
          if (counts === undefined) throw new WorkError(`no walk of ${symptom} in ${van} has ended yet`);
          const file = acceptPriors(counts, knowledge, config.graphFolder);
          print(`${file}: new priors for ${symptom} in ${van}. The running service takes them up.`, { file });
          return 0;
        }
      }
    });
  },
});

/**
 * Writes the proposed priors into the graph's file, comments kept, all or nothing.
 *
 * @throws WorkError when the changed graph would have slips; then nothing is written.
 */
export function acceptPriors(counts: FaultCounts, knowledge: Knowledge, folder: string): string {
  const { symptom, van } = counts;
  const priors = Object.fromEntries(counts.causes.map(({ cause, proposed }) => [cause, proposed]));
  const files = readGraphFolder(folder);
  for (const { path, text } of files) {
    const changed = path.startsWith('systems/') ? withPriors(text, { symptom, van, priors }, knowledge) : null;
    if (changed === null) continue;
    const { raw, slips, slipAt } = readGraph(
      files.map((file) => (file.path === path ? { path, text: changed } : file)),
    );
    const problems = raw === null ? slips : buildKnowledge(raw, slipAt).slips;
    if (problems.length > 0) throw new WorkError(`the graph has slips: ${problems.map(slipText).join('\n')}`);
    const aside = join(folder, `${path}.new`);
    writeFileSync(aside, changed);
    renameSync(aside, join(folder, path));
    return path;
  }
  throw new WorkError(`no file of the graph has the causes of ${symptom}`);
}

/** Counts of every symptom and van asked for of which a walk has ended. */
export async function faultReport(
  store: Store,
  knowledge: Knowledge,
  symptom: TopicId | null,
  van: VanId | null,
): Promise<readonly FaultCounts[]> {
  const ended = (await endedWalks(store)).map(({ walk }) => walk);
  return countFaults(ended, knowledge).filter(
    (counts) => (symptom === null || counts.symptom === symptom) && (van === null || counts.van === van),
  );
}

/** What to look at before the next hire; what the yard has ticked off is left out. */
export async function vanFaultsDue(store: Store, knowledge: Knowledge, van: VanId | null): Promise<readonly Due[]> {
  const looked = new Set((await store.notes(LOOKED_AT)).map(({ name }) => Number(name.slice(LOOKED_AT.length))));
  return faultsDue(await endedWalks(store), van, looked, knowledge);
}

async function endedWalks(store: Store): Promise<readonly EndedWalk[]> {
  const stored = await store.events({ kinds: ['walk-ended'] });
  const ended: EndedWalk[] = [];
  const hirers = new Map<string, string | null>();
  for (const { id, threadId, atMs, event } of stored) {
    if (event.kind !== 'walk-ended') continue;
    if (!hirers.has(threadId)) hirers.set(threadId, await hirerOf(threadId, store));
    ended.push({ id, atMs, who: hirers.get(threadId) ?? null, walk: event });
  }
  return ended;
}

async function hirerOf(threadId: string, store: Store): Promise<string | null> {
  const ref = (await store.thread(threadId))?.booking ?? null;
  const booking = ref === null ? null : await store.booking(ref);
  return booking === null ? ref : `${booking.hirer} (${booking.ref})`;
}

async function lookAt(entry: string, by: string | undefined, knowledge: Knowledge, store: Store): Promise<void> {
  const due = await vanFaultsDue(store, knowledge, null);
  if (!due.some(({ id }) => String(id) === entry))
    throw new UsageError(`no entry '${entry}' in 'pitchhand faults due'`);
  if (by === undefined || by.trim() === '') throw new UsageError('expected --by NAME: who looked');
  await store.putNote(`${LOOKED_AT}${entry}`, by);
}

function vanNamed(said: string | undefined, { vans }: Knowledge): VanId | null {
  if (said === undefined) return null;
  const van = said.toLowerCase();
  if (!vans.has(van)) throw new UsageError(`no van '${said}', expected one of ${[...vans.keys()].join(', ')}`);
  return van;
}

/** One symptom of one van: its causes as a small table, and the priors to consider where they part. */
export function reportText(counts: FaultCounts): string {
  const { symptom, van, walks, fixed, passed, left, unresolved } = counts;
  const head = `${symptom} ${van}: ${walks} walks, ${fixed} fixed, ${passed} passed (${unresolved} without a likely cause), ${left} left`;
  const rows = counts.causes.map((row) => {
    const found = `${row.cured} cured${row.believed > 0 ? `, ${row.believed} believed` : ''}`;
    const [low, high] = row.interval;
    const range = `${percent(row.share)} (${percent(low)} to ${percent(high)})`;
    const proposal = counts.parts ? `  consider ${row.proposed.toFixed(2)}` : '';
    return `  ${row.parts ? '*' : ' '} prior ${row.prior.toFixed(2)}  found ${range.padEnd(20)} ${found.padEnd(24)} ${row.say}${proposal}`;
  });
  return [head, ...rows].join('\n');
}

function dueText(due: Due, zone: string): string {
  const why = due.why === 'trick' ? 'fixed by a trick' : 'passed to staff';
  const head = `${due.id}  ${due.van}, ${dayOf(due.atMs, zone)}: ${due.title} - ${why}${due.say === null ? '' : `; ${due.say}`}`;
  const who = due.who === null ? [] : [`   ${due.who} said:`];
  return [head, ...who, ...due.tried.map(({ did, answered }) => `   ${did} - ${answered}`)].join('\n');
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
