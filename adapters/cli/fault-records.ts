import { renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  buildKnowledge,
  countFaults,
  type Due,
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
import { UsageError, WorkError } from './command.ts';

/** Notes under this name keep what the yard has looked at: the walk's event, and who looked. */
export const LOOKED_AT = 'fault-looked-at:';

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

/** Ticks an entry of the list off, with who looked. */
export async function lookAt(entry: string, by: string | undefined, knowledge: Knowledge, store: Store): Promise<void> {
  const due = await vanFaultsDue(store, knowledge, null);
  if (!due.some(({ id }) => String(id) === entry))
    throw new UsageError(`no entry '${entry}' in 'pitchhand faults due'`);
  if (by === undefined || by.trim() === '') throw new UsageError('expected --by NAME: who looked');
  await store.putNote(`${LOOKED_AT}${entry}`, by);
}
