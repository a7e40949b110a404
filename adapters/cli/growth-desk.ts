import {
  type ChangeRecord,
  candidateOf,
  createGlossary,
  createGrouping,
  effectsOf,
  type FileEdit,
  type Gap,
  type GapGroup,
  type Grouping,
  groupOf,
  isOnHire,
  judgeTrial,
  type Knowledge,
  propose,
  type RawGraph,
  type RecordedQuestion,
  type Served,
  type Splice,
  spliceOf,
  type Trialled,
  takenBack,
  toTell,
} from '../../src/index.ts';
import { graphHash, readGraphFolder } from '../files/graph-files.ts';
import { sweepKept } from '../files/kept-sweep.ts';
import { type Published, publishFiles } from '../files/publish.ts';
import { keepRead, type LoadedGraph, loadGraph } from '../files/served.ts';
import { calibratedAs, type Learnt, servedWith } from '../training/models.ts';
import { createGapRecords } from './gap-records.ts';
import { figuresFrom, heatFrom } from './growth-counts.ts';
import { previewsOf, wordsTried } from './growth-previews.ts';
import type { Draft, GrowthDesk, GrowthParts, Loaded } from './growth-types.ts';
import { trier } from './trial.ts';

/** Notes under this name keep what was published. */
const CHANGE = 'growth-change:';
/** So many questions are replayed before others are let in. */
const AT_ONCE = 8;
/** So many joined one by one, and more than this share of all, are worth parting all anew. */
const FEW_JOINED = 10;
const JOINED_SHARE = 0.02;
/** So many graphs' answers are remembered. */
const ANSWERED = 3;

/** What a graph's answers came to, by question; `name` is of the graph and of what was learnt from it. */
type Answered = { readonly name: string; readonly served: Served; readonly results: Map<string, Trialled> };

type Grouped = { readonly key: string; readonly grouping: Grouping; readonly ids: Set<number>; joined: number };

/** From gaps to groups to a published change, for the operator's pages and the command. */
export function createGrowthDesk(parts: GrowthParts): GrowthDesk {
  const { store, folder, cacheFolder, nowMs } = parts;
  const records = createGapRecords(store, nowMs);
  let loaded: Loaded | null = null;
  let grouped: Grouped | null = null;
  /** The last graph that was wholly learnt when it was the one to change: what differs is learnt on from there. */
  let wholly: Knowledge | null = null;
  /** What graphs came to that were tried, the latest last: a published one is the next trial's graph as it is. */
  const answered: Answered[] = [];

  /** The folder as it is; the last one that held together when it does not. */
  const load = (): Loaded => {
    const fresh = loadGraph(folder, cacheFolder);
    if (fresh.raw !== null && fresh.knowledge !== null && fresh.hash !== loaded?.hash)
      loaded = { ...fresh, raw: fresh.raw, knowledge: fresh.knowledge };
    if (loaded === null) throw new Error('the graph cannot be served; pitchhand check says why');
    return loaded;
  };

  const changes = async (): Promise<readonly ChangeRecord[]> =>
    (await store.notes(CHANGE)).map(({ value }) => JSON.parse(value) as ChangeRecord).sort((a, b) => b.id - a.id);

  const groups = async (): Promise<readonly GapGroup[]> => {
    const { hash, knowledge } = load();
    const settled = new Set((await changes()).flatMap((change) => (change.undone === null ? change.gaps : [])));
    const open = (await records.gaps(knowledge)).filter((gap) => !settled.has(gap.id));
    const byId = new Map(open.map((gap) => [gap.id, gap]));
    const key = `${hash} ${settled.size}`;
    if (grouped?.key !== key || [...grouped.ids].some((id) => !byId.has(id))) {
      const background = [...knowledge.topics.values()].flatMap((topic) => Object.values(topic.wordings).flat());
      grouped = {
        key,
        grouping: createGrouping(createGlossary(knowledge.glossary.words), background),
        ids: new Set(),
        joined: 0,
      };
      for (const gap of open) addGap(grouped, gap);
      grouped.grouping.regroup();
      grouped.joined = 0;
    }
    for (const gap of open) if (!grouped.ids.has(gap.id)) addGap(grouped, gap);
    if (grouped.joined > Math.max(FEW_JOINED, JOINED_SHARE * grouped.ids.size)) {
      grouped.grouping.regroup();
      grouped.joined = 0;
    }
    return grouped.grouping.groups().flatMap((members) => groupOf(members, byId) ?? []);
  };

  /** The answers of a graph that were remembered, or none yet. */
  const answersOf = (name: string, serve: () => Served): Answered => {
    const found = answered.findIndex((each) => each.name === name);
    const [known = { name, served: serve(), results: new Map() }] = found === -1 ? [] : answered.splice(found, 1);
    answered.push(known);
    if (answered.length > ANSWERED) answered.shift();
    return known;
  };

  const replay = async (
    { served, results }: Answered,
    questions: readonly RecordedQuestion[],
    onOne: () => void,
  ): Promise<readonly Trialled[]> => {
    const tryOne = trier(served);
    let asked = 0;
    for (const question of questions) {
      const key = JSON.stringify(question);
      if (!results.has(key)) {
        results.set(key, tryOne(question));
        // Hirers' messages come in between.
        if (++asked % AT_ONCE === 0) await new Promise((resolve) => setImmediate(resolve));
      }
      onOne();
    }
    return questions.flatMap((question) => results.get(JSON.stringify(question)) ?? []);
  };

  const trial: GrowthDesk['trial'] = async (draft, { onStep = () => {}, signal } = {}) => {
    const { base, knowledge } = draft;
    const learntBefore = await parts.learn(base.knowledge, { signal });
    if (learntBefore.isWhole === true) wholly = base.knowledge;
    // The graph as it is is asked while the changed one is being learnt.
    const learning = parts.learn(knowledge, { from: wholly ?? base.knowledge, signal });
    learning.catch(() => {});
    const calibration = learntBefore.model?.calibration ?? null;
    const real = await records.realQuestions(base.knowledge);
    const old = [...base.knowledge.questions.questions, ...real];
    const questions = [...knowledge.questions.questions, ...real];
    const total = questions.length + old.length;
    let done = 0;
    const onOne = () => {
      signal?.throwIfAborted();
      onStep(++done, total);
    };
    const nameOf = (hash: string, learnt: Learnt) => `${hash} ${learnt.isWhole === true} ${calibration !== null}`;
    const before = answersOf(nameOf(base.hash, learntBefore), () => servedWith(base.knowledge, learntBefore));
    const trialledBefore = await replay(before, old, onOne);
    const learnt = calibratedAs(await learning, calibration);
    const after = answersOf(nameOf(hashWith(base, draft.edits), learnt), () => servedWith(knowledge, learnt));
    const trialledAfter = await replay(after, questions, onOne);
    if (cacheFolder !== null) sweepKept(cacheFolder);
    return {
      ...judgeTrial(trialledBefore, trialledAfter),
      draft,
      words: wordsTried(draft.gaps, before.served, after.served),
      previews: previewsOf(draft, after.served),
      hirers: await hirersToTell(draft),
    };
  };

  const hirersToTell = async ({ gaps, decision, knowledge }: Draft): Promise<number> => {
    let count = 0;
    for (const { threadId } of toTell(gaps, decision)) {
      const thread = await store.thread(threadId);
      const booking = thread?.booking == null ? null : await store.booking(thread.booking);
      if (booking !== null && thread?.keeper !== 'staff' && isOnHire(booking, nowMs(), knowledge.firm.timeZone))
        count++;
    }
    return count;
  };

  const record = (change: ChangeRecord): Promise<void> =>
    store.putNote(`${CHANGE}${String(change.id).padStart(6, '0')}`, JSON.stringify(change));

  const write = async (
    base: Loaded,
    edits: readonly FileEdit[],
    raw: RawGraph,
    recorded: () => Promise<void>,
  ): Promise<Published> => {
    const written = await publishFiles(folder, edits, recorded);
    if (written.kind !== 'written') return written;
    if (cacheFolder !== null) keepRead(raw, cacheFolder, hashWith(base, edits));
    await parts.reload();
    return written;
  };

  /** Why a tried change is no longer what was tried, though its own files are as they were; null when it is. */
  const overtakenBy = (
    others: readonly ChangeRecord[],
    gaps: readonly number[],
    base: Loaded,
    expected: string,
  ): string | null => {
    const settled = others.find(({ gaps: own, undone }) => undone === null && own.some((id) => gaps.includes(id)));
    if (settled !== undefined) return `${settled.by} has decided on these questions meanwhile`;
    if (graphHash(readGraphFolder(folder)) === expected) return null;
    const last = others.find(({ splices }) =>
      splices.some(({ path, inserted }) => !textOf(base, path).includes(inserted)),
    );
    return `${last === undefined ? 'the graph was changed' : `${last.by} changed the graph`} after this was tried; try it again`;
  };

  return {
    groups,
    group: async (id) => (await groups()).find((group) => group.gaps.some((gap) => gap.id === id)) ?? null,
    knowledge: () => load().knowledge,
    draft: (decision, group) => {
      const base = load();
      const proposed = propose(decision, base.files, base.knowledge);
      if (proposed.kind === 'refused') return proposed;
      const candidate = candidateOf(base.raw, proposed.edits);
      if (candidate.kind === 'refused') return candidate;
      const { raw, knowledge } = candidate;
      return { kind: 'drafted', draft: { decision, gaps: group.gaps, base, edits: proposed.edits, raw, knowledge } };
    },
    trial,
    publish: async ({ draft, verdict, lost, figures }, { by, why, evenIfWorse, tell }) => {
      if (verdict === 'unsafe')
        return { kind: 'refused', problems: lost.map((text) => `'${text}' would no longer show its notice`) };
      if (verdict === 'worse' && !evenIfWorse)
        return {
          kind: 'refused',
          problems: figures.worse.map((each) => `'${each.text}': ${each.before} -> ${each.after}`),
        };
      let change: ChangeRecord | null = null;
      const written = await write(draft.base, draft.edits, draft.raw, async () => {
        const others = await changes();
        const gaps = draft.gaps.map((gap) => gap.id);
        const overtaken = overtakenBy(others, gaps, draft.base, hashWith(draft.base, draft.edits));
        if (overtaken !== null) throw new Error(overtaken);
        const id = (others[0]?.id ?? 0) + 1;
        const splices = draft.edits.map(spliceOf);
        change = { id, atMs: nowMs(), by, why, decision: draft.decision, gaps, splices, figures, tell, undone: null };
        await record(change);
      });
      if (written.kind !== 'written') return written;
      if (change === null) throw new Error('what was written was not recorded');
      return { kind: 'published', change };
    },
    changes,
    undo: async (id, by) => {
      const change = (await changes()).find((each) => each.id === id);
      if (change === undefined) return { kind: 'refused', problems: [`there is no change ${id}`] };
      if (change.undone !== null)
        return { kind: 'refused', problems: [`change ${id} is undone already, by ${change.undone.by}`] };
      const base = load();
      const edits: FileEdit[] = [];
      for (const splice of change.splices) {
        const before = textOf(base, splice.path);
        const after = takenBack(before, splice);
        if (after === null) return conflictOf(splice, before);
        edits.push({ path: splice.path, before, after });
      }
      // Undone in the other order: a question must go before the topic it names.
      edits.reverse();
      const candidate = candidateOf(base.raw, edits);
      if (candidate.kind === 'refused') return candidate;
      const written = await write(base, edits, candidate.raw, () =>
        record({ ...change, undone: { atMs: nowMs(), by } }),
      );
      return written.kind === 'written' ? { kind: 'undone' } : written;
    },
    heat: async (van) => heatFrom(store, await records.gaps(load().knowledge), van),
    effects: async () => effectsOf(await changes(), await store.events({ kinds: ['answered', 'helped'] })),
    figures: () => figuresFrom(store, load().knowledge),
    gaps: records.gaps,
  };
}

/** The graph's hash once these edits are in place. */
function hashWith(base: LoadedGraph, edits: readonly FileEdit[]): string {
  const texts = new Map(edits.map(({ path, after }) => [path, after]));
  return graphHash(base.files.map(({ path, text }) => ({ path, text: texts.get(path) ?? text })));
}

function textOf(base: LoadedGraph, path: string): string {
  return base.files.find((file) => file.path === path)?.text ?? '';
}

function addGap(grouped: Grouped, gap: Gap): void {
  grouped.grouping.join(gap.id, gap.text);
  grouped.ids.add(gap.id);
  grouped.joined++;
}

/** What the change wrote, and what stands in its place now. */
function conflictOf(splice: Splice, now: string): Exclude<Published, { kind: 'written' | 'failed' }> {
  const { path, at, removed, inserted, before, after } = splice;
  const wrote = before + inserted + after;
  const from = at - before.length;
  return {
    kind: 'conflict',
    ours: { path, before: wrote, after: before + removed + after },
    theirs: { path, before: wrote, after: now.slice(from, from + wrote.length) },
  };
}
