import type { PartId, TopicId } from '../basics/ids.ts';
import type { Part, ScopedCause, Topic, VanScope } from './knowledge.ts';
import type { VanData } from './schema.ts';

/**
 * Cuts the graph to one van, by the rule of scope: a part when the van has it, directly or through a part; a topic
 * when every part it is about is, or it is about none; a cause when the part it is of is and it has a prior here.
 */
export function scopeOf(van: VanData, parts: ReadonlyMap<PartId, Part>, topics: ReadonlyMap<TopicId, Topic>): VanScope {
  const inScope = partsInScope(Object.keys(van.has), parts);
  const scoped = new Set<TopicId>();
  for (const topic of topics.values()) {
    if (topic.about.every((part) => inScope.has(part))) scoped.add(topic.id);
  }
  return {
    id: van.van,
    name: van.name,
    data: van,
    parts: inScope,
    topics: scoped,
    causes: (symptom) => causesIn(topics.get(symptom), van, inScope),
  };
}

/** The van's own parts, what belongs to them, and the roles all of those play. */
function partsInScope(own: readonly PartId[], parts: ReadonlyMap<PartId, Part>): Set<PartId> {
  const found = new Set<PartId>();
  const add = (id: PartId): void => {
    if (found.has(id)) return;
    found.add(id);
    const role = parts.get(id)?.is;
    if (role !== undefined) add(role);
  };
  own.forEach(add);
  // A part may belong to a part that belongs to a part: go on until nothing new comes.
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    for (const part of parts.values()) if (part.of !== undefined && found.has(part.of)) add(part.id);
  }
  return found;
}

function causesIn(symptom: Topic | undefined, van: VanData, inScope: ReadonlySet<PartId>): ScopedCause[] {
  if (symptom === undefined) return [];
  const given = van.priorsAs ?? van.van;
  const causes = symptom.causes.flatMap((cause) => {
    const prior = typeof cause.prior === 'number' ? cause.prior : cause.prior[given];
    const here = cause.of === undefined || inScope.has(cause.of);
    return here && prior !== undefined ? [{ ...cause, prior }] : [];
  });
  return van.priorsAs === undefined ? causes : summingToOne(causes);
}

/** Borrowed priors are those of other kit: what is left of them is shared out. */
function summingToOne(causes: readonly ScopedCause[]): ScopedCause[] {
  const sum = causes.reduce((total, cause) => total + cause.prior, 0);
  return causes.map((cause) => ({ ...cause, prior: cause.prior / sum }));
}
