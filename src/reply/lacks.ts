import type { PartId } from '../basics/ids.ts';
import type { Knowledge, Topic, VanScope } from '../knowledge/knowledge.ts';

/**
 * The part for want of which a topic is not in a van's scope: the first it is about that the van has not.
 * Prefers one for which the van says what it has instead, at any remove up the roles.
 */
export function missingPart(topic: Topic, scope: VanScope, knowledge: Knowledge): PartId {
  const missing = topic.about.filter((part) => !scope.parts.has(part));
  for (const part of missing) {
    for (let at: PartId | undefined = part; at !== undefined; at = knowledge.parts.get(at)?.is) {
      if (scope.data.lacks[at] !== undefined) return at;
    }
  }
  return missing[0] ?? topic.id;
}

/** 'Wren has no microwave. It has a gas hob and a grill.' */
export function lackText(part: PartId, scope: VanScope, knowledge: Knowledge): string {
  return scope.data.lacks[part] ?? `${scope.name} has no ${knowledge.parts.get(part)?.name ?? part}.`;
}
