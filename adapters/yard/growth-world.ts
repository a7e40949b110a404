import type {
  Change,
  ChangeEffect,
  ChangeRecord,
  FileEdit,
  GapGroup,
  GrowthDecision,
  GrowthRow,
  Heat,
  Judged,
  Knowledge,
  TopicId,
  VanId,
} from '../../src/index.ts';

/** What a trial that is over tells. */
export type TrialTold = Judged & {
  /** What the gaps' own words get, before and after. */
  readonly words: readonly Change[];
  /** What hirers of each van will read. */
  readonly previews: readonly { readonly van: string; readonly text: string }[];
  /** So many hirers still on hire asked it, and could be told. */
  readonly hirers: number;
};

/** How far a trial has got. */
export type TrialView =
  | { readonly state: 'learning' }
  | { readonly state: 'replaying'; readonly done: number; readonly total: number }
  | { readonly state: 'failed'; readonly why: string }
  | (TrialTold & {
      readonly state: 'done';
      readonly decision: GrowthDecision;
      readonly group: GapGroup;
      readonly edits: readonly FileEdit[];
    });

export type Hindered =
  | { readonly kind: 'refused'; readonly problems: readonly string[] }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'conflict'; readonly ours: FileEdit; readonly theirs: FileEdit };

/** What the operator's pages need to teach the graph. */
export type Growth = {
  readonly groups: () => Promise<readonly GapGroup[]>;
  readonly group: (id: number) => Promise<GapGroup | null>;
  readonly knowledge: () => Knowledge;
  /** Begins a trial; `key` finds it again. */
  readonly begin: (
    decision: GrowthDecision,
    group: GapGroup,
  ) => Extract<Hindered, { kind: 'refused' }> | { readonly kind: 'begun'; readonly key: string };
  /** Null when there is no such trial, or it is too long ago. */
  readonly trial: (key: string) => TrialView | null;
  /** What was decided in a trial, to be changed and tried again. */
  readonly decisionTried: (key: string) => GrowthDecision | null;
  readonly publish: (
    key: string,
    how: {
      readonly by: string;
      readonly why: string;
      readonly evenIfWorse: boolean;
      /** Whether those hirers get the answer. */
      readonly tell: boolean;
    },
  ) => Promise<Hindered | { readonly kind: 'published'; readonly change: ChangeRecord }>;
  readonly changes: () => Promise<readonly ChangeRecord[]>;
  readonly undo: (id: number, by: string) => Promise<Hindered | { readonly kind: 'undone' }>;
  readonly figures: () => Promise<readonly GrowthRow[]>;
  /** What the latest changes did, the latest first. */
  readonly effects: () => Promise<readonly ChangeEffect[]>;
  /** How often each topic was asked for and did not help, in one van or (null) in all. */
  readonly heat: (van: VanId | null) => Promise<ReadonlyMap<TopicId, Heat>>;
};
