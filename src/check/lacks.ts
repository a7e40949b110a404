import type { Knowledge } from '../knowledge/knowledge.ts';
import type { SlipAt } from '../knowledge/raw-graph.ts';
import type { Slip } from '../knowledge/slip.ts';
import { missingPart } from '../reply/lacks.ts';

/** A van without what a topic is about says what it has instead. */
export function lackSlips(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = [];
  for (const scope of knowledge.vans.values()) {
    const missing = new Set<string>();
    for (const topic of knowledge.topics.values()) {
      if (scope.topics.has(topic.id)) continue;
      const part = missingPart(topic, scope, knowledge);
      if (scope.data.lacks[part] === undefined) missing.add(part);
    }
    for (const part of missing) {
      slips.push(
        slipAt(
          `vans/${scope.id}.yaml`,
          ['lacks'],
          `${scope.name} has no '${part}' and does not say what it has instead`,
          `lacks: { ${part}: ... }`,
        ),
      );
    }
  }
  return slips;
}
