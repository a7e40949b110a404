import type { MultiDirectedGraph } from 'graphology';
import type { CauseId, PartId, TopicId, VanId } from '../basics/ids.ts';
import type { SafetyData } from './safety-schema.ts';
import type {
  CauseData,
  FirmData,
  GlossaryData,
  PartData,
  PlacesData,
  QuestionsData,
  TalkData,
  TopicData,
  VanData,
} from './schema.ts';

export type Topic = TopicData & { readonly id: TopicId; readonly system: string };
export type Part = PartData & { readonly id: PartId; readonly system: string };

/** A cause as it stands in one van: its prior resolved to a number; the priors of a symptom sum to 1. */
export type ScopedCause = Omit<CauseData, 'prior'> & { readonly id: CauseId; readonly prior: number };

/** The part of the graph that holds for one van. Nothing outside it is ever answered. */
export type VanScope = {
  readonly id: VanId;
  readonly name: string;
  readonly data: VanData;
  /** Every part the van has, directly or through a part, and every role those parts play. */
  readonly parts: ReadonlySet<PartId>;
  readonly topics: ReadonlySet<TopicId>;
  /** The causes in scope of a symptom, in the graph's order; empty when it is answered from its text alone. */
  readonly causes: (symptom: TopicId) => readonly ScopedCause[];
};

/** A drawing of graph/pictures, with the ids of its parts. */
export type Picture = { readonly name: string; readonly svg: string; readonly ids: ReadonlySet<string> };

/** Everything the firm has written down, checked and linked. Built once a load; never changed. */
export type Knowledge = {
  /**
   * Nodes `van:dunlin`, `part:...`, `control:part/name`, `topic:...`, `cause:symptom/name`, `check:...`, `fix:...`, `site:...`,
   * `place:site/0`; each has `kind` and `name`. Edge attribute `is`: HAS, SETS, SHOWS, IS, ABOUT, WARNS, KIN, CAUSED_BY, OF, TOLD_BY,
   * CURED_BY, NEAR.
   */
  readonly graph: MultiDirectedGraph;
  readonly topics: ReadonlyMap<TopicId, Topic>;
  readonly parts: ReadonlyMap<PartId, Part>;
  readonly systems: ReadonlyMap<string, string>;
  readonly vans: ReadonlyMap<VanId, VanScope>;
  readonly firm: FirmData;
  readonly safety: SafetyData;
  readonly glossary: GlossaryData;
  readonly places: PlacesData;
  readonly talk: TalkData;
  readonly questions: QuestionsData;
  readonly pictures: ReadonlyMap<string, Picture>;
};
