import { setTimeout as wait } from 'node:timers/promises';
import type { Logger } from 'pino';
import { builtInKnowledge, type Calibration, type Knowledge, type Served, type Slip, slipText } from '../src/index.ts';
import { claimKept, sweepKept } from './files/kept-sweep.ts';
import {
  keepLoaded,
  type LoadedGraph,
  loadEdited,
  loadGraph,
  type ReadBefore,
  readLastGood,
  writeLastGood,
} from './files/served.ts';
import { watchFolder } from './files/watch-folder.ts';
import { calibratedAs, type Learnt, type Models, type Serving, servedWith, takenOver } from './training/models.ts';

/** How long the folder must be quiet before it is read: an editor writes in several steps. */
const QUIET_MS = 100;
/** How long an edited graph only answers, before it is written down. */
const BEFORE_KEEPING_MS = 50;

export type LiveGraphOptions = {
  readonly folder: string;
  readonly cacheFolder: string;
  readonly log: Logger;
  /** What has been learnt from a graph; better comes later, learnt beside the server. */
  readonly learntFor: Models;
  /** Where the last graph that could be served is kept, for a start with a broken folder. Left out: it is not kept. */
  readonly lastGood?: string;
};

/** The graph as it is served: follows the folder, and keeps the last good one while an edit is bad. */
export type LiveGraph = {
  readonly served: () => Served;
  readonly hash: () => string;
  /** The slips of the last edit that could not be served; empty when the folder is being served as it is. */
  readonly slips: () => readonly Slip[];
  /** Reads the folder now; resolves when it is served, or refused. */
  readonly reload: () => Promise<readonly Slip[]>;
  readonly onChange: (listener: () => void) => void;
  readonly stop: () => void;
};

/**
 * @throws GraphError when the folder holds no graph that can be served, none was kept, and not even the firm's own file
 * can be read: a notice needs its hours and numbers.
 */
export function createLiveGraph({ folder, cacheFolder, log, learntFor, lastGood }: LiveGraphOptions): LiveGraph {
  const listeners: (() => void)[] = [];
  let slips: readonly Slip[] = [];
  let calibration: Calibration | null = null;
  let wholly: Knowledge | null = null;
  let serving: Serving | null = null;
  const first = loadGraph(folder, cacheFolder);
  const kept = first.knowledge === null && lastGood !== undefined ? readLastGood(lastGood) : null;
  if (kept !== null) {
    slips = first.slips;
    log.error({ slips: slips.map(slipText) }, 'the graph has slips; the last good one, kept from before, is served');
  }
  let { hash, served: current } = serve(kept ?? first);
  let before = readOf(first);
  keepGood(first);

  function keepGood({ hash, raw }: LoadedGraph): void {
    if (lastGood !== undefined && raw !== null) writeLastGood(lastGood, { hash, raw }, cacheFolder);
  }

  // The files' text is let go; of what was read, what answers holds the most part.
  function serve(fresh: LoadedGraph): { readonly hash: string; readonly served: Served } {
    const { knowledge } = fresh;
    if (knowledge === null) return { hash: fresh.hash, served: minimum(fresh) };
    // Until a changed graph has its own confidence it is served with the last one: as its trial was.
    const confident = (learnt: Learnt): Served => {
      calibration = learnt.model?.calibration ?? calibration;
      if (learnt.isWhole === true) wholly = knowledge;
      const best = calibratedAs(serving === null ? learnt : takenOver(learnt, knowledge, serving), calibration);
      serving = { knowledge, model: best.model, net: best.net };
      return servedWith(knowledge, best);
    };
    const later = (learnt: Learnt): void => {
      // A later edit may be served by now; its own learning is on its way.
      if (hash === fresh.hash) current = confident(learnt);
    };
    const learnt = learntFor(knowledge, wholly, later);
    claimKept(cacheFolder, [`${fresh.hash}.json`, ...(learnt.files ?? [])]);
    sweepKept(cacheFolder);
    return { hash: fresh.hash, served: confident(learnt) };
  }

  function minimum({ firm, slips: found }: LoadedGraph): Served {
    if (firm === null) throw new GraphError(found);
    slips = found;
    log.error(
      { slips: slips.map(slipText) },
      'the graph has slips and none was kept from before: only the notices built in are served, everything else goes to people',
    );
    return servedWith(builtInKnowledge(firm), { model: null, net: null });
  }

  const reload = async (): Promise<readonly Slip[]> => {
    const fresh = loadEdited(folder, cacheFolder, before);
    if (fresh.knowledge !== null && fresh.hash === hash) {
      slips = [];
      return slips;
    }
    if (fresh.knowledge === null) {
      slips = fresh.slips;
      log.error({ slips: slips.map(slipText) }, 'the edited graph has slips; the last good one is served');
      return slips;
    }
    slips = [];
    ({ hash, served: current } = serve(fresh));
    before = readOf(fresh);
    log.info({ hash: hash.slice(0, 8) }, 'the edited graph is served');
    for (const listener of listeners) listener();
    // What waited meanwhile is answered first: what is kept is for the next start.
    await wait(BEFORE_KEEPING_MS);
    keepLoaded(fresh, cacheFolder);
    keepGood(fresh);
    return slips;
  };

  let timer: NodeJS.Timeout | null = null;
  const edited = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => {
      reload().catch((error: unknown) =>
        log.error({ err: error }, 'the graph folder cannot be read; the last good one is served'),
      );
    }, QUIET_MS);
  };
  const unwatch = watchFolder(folder, edited, (error) =>
    log.warn({ err: error }, 'a folder of the graph is no longer watched'),
  );

  return {
    served: () => current,
    hash: () => hash,
    slips: () => slips,
    reload,
    onChange: (listener) => listeners.push(listener),
    stop: () => {
      if (timer !== null) clearTimeout(timer);
      unwatch();
    },
  };
}

function readOf({ raw, digests }: LoadedGraph): ReadBefore | null {
  return raw === null ? null : { raw, digests };
}

/** The graph folder cannot be served: its slips, all of them. */
export class GraphError extends Error {
  override readonly name = 'GraphError';
  constructor(readonly slips: readonly Slip[]) {
    super(`the graph cannot be served:\n${slips.map((slip) => `  ${slipText(slip)}`).join('\n')}`);
  }
}
