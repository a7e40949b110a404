import type { Knowledge } from '../knowledge/knowledge.ts';

/** Where the graph knows little. */
export type Thin =
  | {
      readonly kind: 'few-wordings';
      readonly id: string;
      readonly name: string;
      readonly system: string;
      readonly count: number;
    }
  | { readonly kind: 'no-causes'; readonly id: string; readonly name: string; readonly system: string }
  | { readonly kind: 'not-described'; readonly id: string; readonly name: string; readonly system: string };

const FEW = 20;

/** Topics with fewer than 20 wordings, the fewest first; symptoms without causes; parts that no topic is about. */
export function thinIn({ topics, parts }: Knowledge): readonly Thin[] {
  const described = new Set([...topics.values()].flatMap((topic) => topic.about));
  const told = (id: string): boolean => {
    const part = parts.get(id);
    return described.has(id) || [part?.is, part?.of].some((above) => above !== undefined && told(above));
  };
  const few = [...topics.values()]
    .map((topic) => ({ topic, count: Object.values(topic.wordings).flat().length }))
    .filter(({ count }) => count < FEW)
    .sort((a, b) => a.count - b.count || (a.topic.id < b.topic.id ? -1 : 1))
    .map(
      ({ topic, count }): Thin => ({
        kind: 'few-wordings',
        id: topic.id,
        name: topic.title,
        system: topic.system,
        count,
      }),
    );
  const causeless = [...topics.values()]
    .filter((topic) => topic.kind === 'symptom' && topic.causes.length === 0)
    .map((topic): Thin => ({ kind: 'no-causes', id: topic.id, name: topic.title, system: topic.system }));
  const untold = [...parts.values()]
    .filter((part) => !told(part.id))
    .map((part): Thin => ({ kind: 'not-described', id: part.id, name: part.name, system: part.system }));
  return [...few, ...causeless, ...untold];
}
