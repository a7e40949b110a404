import type { PartId, TopicId, VanId } from '../basics/ids.ts';
import type { TopicKind } from '../knowledge/schema.ts';

/** A topic that does not exist yet, made from what staff wrote back. */
export type NewTopic = {
  readonly system: string;
  readonly id: TopicId;
  readonly kind: TopicKind;
  readonly title: string;
  /** The parts that a van must have; none: every van. */
  readonly about: readonly PartId[];
  readonly first: string;
  readonly steps: readonly string[];
  readonly otherwise: string | null;
  readonly wordings: readonly string[];
};

/** What the operator decides about a group of gaps. */
export type GrowthDecision =
  | { readonly kind: 'add-wordings'; readonly topic: TopicId; readonly wordings: readonly string[] }
  /** A word for the glossary; `part` when it names one. */
  | { readonly kind: 'teach-word'; readonly says: string; readonly means: string; readonly part: PartId | null }
  | { readonly kind: 'new-topic'; readonly topic: NewTopic }
  /** Writes the first sentence or the last resort anew, or adds a fact; a fact may be said for one van alone. */
  | {
      readonly kind: 'improve-answer';
      readonly topic: TopicId;
      readonly place: 'first' | 'facts' | 'otherwise';
      readonly say: string;
      readonly van: VanId | null;
    }
  /** A van has not got the thing: the line that names what it has instead. */
  | { readonly kind: 'note-lack'; readonly van: VanId; readonly part: PartId; readonly say: string }
  /** None of ours: such words are passed to people without a guess. */
  | { readonly kind: 'set-aside'; readonly wordings: readonly string[] };

/** A file of graph/ before and after. */
export type FileEdit = { readonly path: string; readonly before: string; readonly after: string };

/** What a decision comes to. Problems say what to change, all at once. */
export type Proposed =
  | { readonly kind: 'proposed'; readonly edits: readonly FileEdit[] }
  | { readonly kind: 'refused'; readonly problems: readonly string[] };
