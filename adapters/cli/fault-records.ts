import {
  buildKnowledge,
  countFaults,
  type Due,
  type EndedWalk,
  type FaultCounts,
  type FileEdit,
  faultsDue,
  type Knowledge,
  readGraph,
  type Splice,
  type Store,
  slipText,
  spliceOf,
  type TopicId,
  takenBack,
  type VanId,
  withPriors,
} from '../../src/index.ts';
import { type GraphFileOnDisk, readGraphFolder } from '../files/graph-files.ts';
import { publishFiles } from '../files/publish.ts';
import { UsageError, WorkError } from './command.ts';
import { unwrittenText } from './gap-texts.ts';

/** Notes under this name keep what the yard has looked at: the walk's event, and who looked. */
export const LOOKED_AT = 'fault-looked-at:';

/** Notes under this name keep which priors were accepted, so that they can be taken back. */
const ACCEPTED = 'fault-priors:';

/** Priors that were accepted: for what, by whom, and what they changed in the graph's file. */
export type AcceptedRecord = {
  readonly id: number;
  readonly atMs: number;
  readonly by: string;
  readonly symptom: TopicId;
  readonly van: VanId;
  readonly splice: Splice;
  readonly undone: { readonly atMs: number; readonly by: string } | null;
};

/** Where priors are written to, and who writes them. */
export type Accepting = {
  readonly folder: string;
  readonly store: Store;
  readonly by: string;
  readonly nowMs: number;
};

/**
 * Writes the proposed priors into the graph's file, comments kept, through the same lock, check and flush as every other
 * change of the graph.
 *
 * @throws WorkError when the changed graph would have slips, or it was changed meanwhile; then nothing is written.
 */
export async function acceptPriors(
  counts: FaultCounts,
  knowledge: Knowledge,
  { folder, store, by, nowMs }: Accepting,
): Promise<AcceptedRecord> {
  const { symptom, van } = counts;
  const priors = Object.fromEntries(counts.causes.map(({ cause, proposed }) => [cause, proposed]));
  const files = readGraphFolder(folder);
  for (const { path, text } of files) {
    const changed = path.startsWith('systems/') ? withPriors(text, { symptom, van, priors }, knowledge) : null;
    if (changed === null) continue;
    const edit: FileEdit = { path, before: text, after: changed };
    const id = ((await acceptedPriors(store))[0]?.id ?? 0) + 1;
    const accepted: AcceptedRecord = { id, atMs: nowMs, by, symptom, van, splice: spliceOf(edit), undone: null };
    await publishEdit(folder, files, edit, accepted, store);
    return accepted;
  }
  throw new WorkError(`no file of the graph has the causes of ${symptom}`);
}

/** Priors that were accepted, the latest first. */
export async function acceptedPriors(store: Store): Promise<readonly AcceptedRecord[]> {
  return (await store.notes(ACCEPTED))
    .map(({ value }) => JSON.parse(value) as AcceptedRecord)
    .sort((a, b) => b.id - a.id);
}

/**
 * Puts back the priors that stood before; what others changed elsewhere in the file stays.
 *
 * @throws UsageError for a number that was never given; WorkError when they were changed again since.
 */
export async function undoPriors(id: number, { folder, store, by, nowMs }: Accepting): Promise<AcceptedRecord> {
  const accepted = (await acceptedPriors(store)).find((each) => each.id === id);
  if (accepted === undefined) throw new UsageError(`no priors ${id} were accepted`);
  if (accepted.undone !== null) throw new WorkError(`priors ${id} are undone already, by ${accepted.undone.by}`);
  const { path } = accepted.splice;
  const files = readGraphFolder(folder);
  const before = files.find((file) => file.path === path)?.text ?? '';
  const after = takenBack(before, accepted.splice);
  if (after === null) throw new WorkError(`graph/${path} has been changed there since; put the priors back by hand`);
  const undone: AcceptedRecord = { ...accepted, undone: { atMs: nowMs, by } };
  await publishEdit(folder, files, { path, before, after }, undone, store);
  return undone;
}

async function publishEdit(
  folder: string,
  files: readonly GraphFileOnDisk[],
  edit: FileEdit,
  record: AcceptedRecord,
  store: Store,
): Promise<void> {
  const { raw, slips, slipAt } = readGraph(
    files.map((file) => (file.path === edit.path ? { path: edit.path, text: edit.after } : file)),
  );
  const problems = raw === null ? slips : buildKnowledge(raw, slipAt).slips;
  if (problems.length > 0) throw new WorkError(`the graph has slips: ${problems.map(slipText).join('\n')}`);
  const written = await publishFiles(folder, [edit], () =>
    store.putNote(`${ACCEPTED}${String(record.id).padStart(6, '0')}`, JSON.stringify(record)),
  );
  if (written.kind !== 'written') throw new WorkError(unwrittenText(written));
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
