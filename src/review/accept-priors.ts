import { isMap, isScalar, isSeq, parseDocument, type YAMLMap } from 'yaml';
import type { CauseId, TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

export type AcceptedPriors = {
  readonly symptom: TopicId;
  readonly van: VanId;
  /** By cause; causes left out keep theirs. */
  readonly priors: Readonly<Record<CauseId, number>>;
};

type Edit = { readonly from: number; readonly to: number; readonly text: string };

/**
 * A system file of the graph with new priors for one van: only the numbers change, every other character stays. A prior
 * that was one number for every van is spread out first, so that no other van's changes.
 *
 * @returns Null when the file has no such symptom.
 */
export function withPriors(yaml: string, { symptom, van, priors }: AcceptedPriors, { vans }: Knowledge): string | null {
  const causes = parseDocument(yaml).getIn(['topics', symptom, 'causes']);
  if (!isSeq(causes)) return null;
  const edits = causes.items.flatMap((cause): Edit[] => {
    if (!isMap(cause)) return [];
    const id = String(cause.get('id'));
    const prior = priors[id];
    return prior === undefined ? [] : editOf(cause, van, prior, () => holdersOf(id, symptom, vans));
  });
  // From the end, so that the places of the others stay true.
  return [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((text, edit) => text.slice(0, edit.from) + edit.text + text.slice(edit.to), yaml);
}

function editOf(cause: YAMLMap, van: VanId, prior: number, holders: () => readonly VanId[]): Edit[] {
  const written = cause.get('prior', true) as unknown;
  const number = isMap(written) ? written.get(van, true) : written;
  if (!isScalar(number) || number.range == null) return [];
  const [from, to] = number.range;
  if (isMap(written)) return [{ from, to, text: String(prior) }];
  const spread = holders().map((holder) => `${holder}: ${holder === van ? prior : String(number.value)}`);
  return [{ from, to, text: `{${spread.join(', ')}}` }];
}

function holdersOf(id: CauseId, symptom: TopicId, vans: Knowledge['vans']): VanId[] {
  return [...vans.values()].filter((van) => van.causes(symptom).some((each) => each.id === id)).map((van) => van.id);
}
