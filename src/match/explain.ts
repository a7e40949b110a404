import type { Scorer } from './scorer.ts';
import type { Why } from './types.ts';
import type { Space, Vector } from './vector.ts';

const EXPLAINED = 3;
const MOST_FEATURES = 6;

/**
 * What spoke for and against the best topics: for each, the features that weighed most between it and its rival, which
 * is the runner-up for the best and the best for all others.
 *
 * @param ranked Classes, best first, with the topics' ids.
 */
export function explain(
  ranked: readonly { readonly label: number; readonly topic: string }[],
  vector: Vector,
  space: Space,
  scorer: Scorer,
): Why['features'] {
  return ranked.slice(0, EXPLAINED).flatMap(({ label, topic }, i) => {
    const rival = ranked[i === 0 ? 1 : 0]?.label;
    const parts: { topic: string; feature: string; weight: number }[] = [];
    for (let f = 0; f < vector.at.length; f++) {
      const feature = vector.at[f] as number;
      const lead = scorer.weight(feature, label) - (rival === undefined ? 0 : scorer.weight(feature, rival));
      parts.push({ topic, feature: space.names[feature] as string, weight: lead * (vector.weight[f] as number) });
    }
    return parts.sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight)).slice(0, MOST_FEATURES);
  });
}
