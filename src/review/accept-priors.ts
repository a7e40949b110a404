import { isMap, isSeq, parseDocument, type YAMLMap } from 'yaml';
import type { CauseId, TopicId, VanId } from '../basics/ids.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

export type AcceptedPriors = {
  readonly symptom: TopicId;
  readonly van: VanId;
  /** By cause; causes left out keep theirs. */
  readonly priors: Readonly<Record<CauseId, number>>;
};

/**
 * A system file of the graph with new priors for one van; comments and the rest stay as they are. A prior that was one
 * number for every van is spread out first, so that no other van's changes.
 *
 * @returns Null when the file has no such symptom.
 */
export function withPriors(yaml: string, { symptom, van, priors }: AcceptedPriors, { vans }: Knowledge): string | null {
  const document = parseDocument(yaml);
  const causes = document.getIn(['topics', symptom, 'causes']);
  if (!isSeq(causes)) return null;
  for (const cause of causes.items) {
    if (!isMap(cause)) continue;
    const id = String(cause.get('id'));
    const prior = priors[id];
    if (prior === undefined) continue;
    if (!isMap(cause.get('prior'))) cause.set('prior', document.createNode(spreadOut(cause, id, symptom, vans)));
    cause.setIn(['prior', van], prior);
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}

/** One number as one for each van in which the cause can happen. */
function spreadOut(cause: YAMLMap, id: CauseId, symptom: TopicId, vans: Knowledge['vans']): Record<VanId, number> {
  const holders = [...vans.values()].filter((van) => van.causes(symptom).some((each) => each.id === id));
  return Object.fromEntries(holders.map((van) => [van.id, Number(cause.get('prior'))]));
}
