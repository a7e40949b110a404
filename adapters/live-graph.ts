import { watch } from 'node:fs';
import type { Logger } from 'pino';
import {
  createMatcher,
  createSafetyReader,
  type Knowledge,
  type Model,
  type Served,
  type Slip,
  slipText,
} from '../src/index.ts';
import { type LoadedGraph, loadGraph } from './files/served.ts';

/** How long the folder must be quiet before it is read: an editor writes in several steps. */
const QUIET_MS = 250;

export type LiveGraphOptions = {
  readonly folder: string;
  readonly cacheFolder: string;
  readonly log: Logger;
  /** The weights of a graph that are at hand; better ones come later, trained beside the server. */
  readonly modelFor: (knowledge: Knowledge, onModel: (model: Model) => void) => Model | null;
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

/** @throws GraphError when the folder holds no graph that can be served. */
export function createLiveGraph({ folder, cacheFolder, log, modelFor }: LiveGraphOptions): LiveGraph {
  const listeners: (() => void)[] = [];
  let slips: readonly Slip[] = [];
  let loaded = mustLoad(loadGraph(folder, cacheFolder));
  let served = serve(loaded);

  function serve({ knowledge, hash }: Loaded): Served {
    const withModel = (model: Model | null): Served => ({
      knowledge,
      matcher: createMatcher(knowledge, model),
      readDanger: createSafetyReader(knowledge.safety),
    });
    const later = (model: Model): void => {
      // A later edit may be served by now; its own training is on its way.
      if (loaded.hash === hash) served = withModel(model);
    };
    return withModel(modelFor(knowledge, later));
  }

  const reload = async (): Promise<readonly Slip[]> => {
    const fresh = loadGraph(folder, cacheFolder);
    if (fresh.hash === loaded.hash) {
      slips = [];
      return slips;
    }
    if (fresh.knowledge === null) {
      slips = fresh.slips;
      log.error({ slips: slips.map(slipText) }, 'the edited graph has slips; the last good one is served');
      return slips;
    }
    slips = [];
    loaded = mustLoad(fresh);
    served = serve(loaded);
    log.info({ hash: loaded.hash.slice(0, 8) }, 'the edited graph is served');
    for (const listener of listeners) listener();
    return slips;
  };

  let timer: NodeJS.Timeout | null = null;
  const watcher = watch(folder, { recursive: true }, () => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => {
      reload().catch((error: unknown) =>
        log.error({ err: error }, 'the graph folder cannot be read; the last good one is served'),
      );
    }, QUIET_MS);
  });
  watcher.on('error', (error) => log.warn({ err: error }, 'the graph folder is no longer watched'));

  return {
    served: () => served,
    hash: () => loaded.hash,
    slips: () => slips,
    reload,
    onChange: (listener) => listeners.push(listener),
    stop: () => {
      if (timer !== null) clearTimeout(timer);
      watcher.close();
    },
  };
}

type Loaded = LoadedGraph & { readonly knowledge: Knowledge };

/** The graph folder cannot be served: its slips, all of them. */
export class GraphError extends Error {
  override readonly name = 'GraphError';
  constructor(readonly slips: readonly Slip[]) {
    super(`the graph cannot be served:\n${slips.map((slip) => `  ${slipText(slip)}`).join('\n')}`);
  }
}

function mustLoad(loaded: LoadedGraph): Loaded {
  const { knowledge } = loaded;
  if (knowledge === null) throw new GraphError(loaded.slips);
  return { ...loaded, knowledge };
}
