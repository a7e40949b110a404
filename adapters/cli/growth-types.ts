import type {
  ChangeEffect,
  ChangeRecord,
  FileEdit,
  Gap,
  GapGroup,
  GrowthDecision,
  GrowthRow,
  Heat,
  Knowledge,
  RawGraph,
  Store,
  TopicId,
  VanId,
} from '../../src/index.ts';
import type { Published } from '../files/publish.ts';
import type { LoadedGraph } from '../files/served.ts';
import type { Learn } from '../training/models.ts';
import type { TrialTold } from '../yard/growth-world.ts';

/** A decision as edits of a graph that holds together, not yet tried. */
export type Draft = {
  readonly decision: GrowthDecision;
  readonly gaps: readonly Gap[];
  readonly base: Loaded;
  readonly edits: readonly FileEdit[];
  readonly raw: RawGraph;
  readonly knowledge: Knowledge;
};

/** A draft with what the trial said. */
export type Tried = TrialTold & { readonly draft: Draft };

export type Refused = { readonly kind: 'refused'; readonly problems: readonly string[] };

export type Publishing = {
  readonly by: string;
  readonly why: string;
  readonly evenIfWorse: boolean;
  /** Whether hirers still on hire whose gaps they were get the answer. */
  readonly tell: boolean;
};

export type TrialOptions = {
  readonly onStep?: (done: number, total: number) => void;
  /** Ends the trial, which then rejects with its reason. */
  readonly signal?: AbortSignal;
};

export type GrowthDesk = {
  /** Gaps that nobody has decided on, in groups; the largest first. */
  readonly groups: () => Promise<readonly GapGroup[]>;
  readonly group: (id: number) => Promise<GapGroup | null>;
  readonly knowledge: () => Knowledge;
  readonly draft: (
    decision: GrowthDecision,
    group: GapGroup,
  ) => Refused | { readonly kind: 'drafted'; readonly draft: Draft };
  /** Learns the changed graph and replays the recorded and the latest real questions against it, through the whole turn. */
  readonly trial: (draft: Draft, how?: TrialOptions) => Promise<Tried>;
  readonly publish: (
    tried: Tried,
    how: Publishing,
  ) => Promise<
    Exclude<Published, { kind: 'written' }> | Refused | { readonly kind: 'published'; readonly change: ChangeRecord }
  >;
  readonly gaps: (knowledge: Knowledge) => Promise<readonly Gap[]>;
  /** The latest first. */
  readonly changes: () => Promise<readonly ChangeRecord[]>;
  readonly undo: (
    id: number,
    by: string,
  ) => Promise<Exclude<Published, { kind: 'written' }> | Refused | { readonly kind: 'undone' }>;
  readonly figures: () => Promise<readonly GrowthRow[]>;
  /** What the latest changes did, the latest first. */
  readonly effects: () => Promise<readonly ChangeEffect[]>;
  /** How often each topic was asked for and did not help, in one van or (null) in all. */
  readonly heat: (van: VanId | null) => Promise<ReadonlyMap<TopicId, Heat>>;
};

export type GrowthParts = {
  readonly store: Store;
  readonly folder: string;
  readonly cacheFolder: string | null;
  /** What is learnt from a graph; resolves when it can be tried. */
  readonly learn: Learn;
  /** Takes up the folder as it is now. */
  readonly reload: () => Promise<unknown>;
  readonly nowMs: () => number;
};

/** A graph that can be served, with what it was read from. */
export type Loaded = LoadedGraph & { readonly raw: RawGraph; readonly knowledge: Knowledge };
