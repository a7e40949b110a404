import type { GraphPicture, Heat, PictureNode, PictureRoom, VanScope } from '../../src/index.ts';
import { NO_HEAT, type TopicId } from '../../src/index.ts';

/** By what the picture is heated: questions, or answers that did not help. */
export type HeatBy = 'asked' | 'failed';

/** A thing in the picture; `here`: the chosen van has it, or no van is chosen. */
export type DrawnThing = Pick<PictureNode, 'key' | 'kind' | 'name' | 'x' | 'y'> & Heat & { readonly here: boolean };

/** What the page's script draws. */
export type PictureData = {
  readonly rooms: readonly PictureRoom[];
  readonly things: readonly DrawnThing[];
  /** Places in `things`, from and to; 1 when both are in one room. */
  readonly links: readonly (readonly [number, number, 0 | 1])[];
};

/** A part is as warm as the topics about it together. */
export function pictureData(
  { rooms, nodes, links }: GraphPicture,
  van: VanScope | null,
  heat: ReadonlyMap<TopicId, Heat>,
): PictureData {
  const at = new Map(nodes.map(({ key }, i) => [key, i]));
  const sums = new Map<string, Heat>();
  for (const { key } of nodes) sums.set(key, heat.get(idOf(key)) ?? NO_HEAT);
  for (const { from, to } of links) {
    if (!from.startsWith('part:') || !to.startsWith('topic:')) continue;
    const [part, topic] = [sums.get(from) ?? NO_HEAT, sums.get(to) ?? NO_HEAT];
    sums.set(from, { asked: part.asked + topic.asked, failed: part.failed + topic.failed });
  }
  return {
    rooms,
    things: nodes.map(({ key, kind, name, x, y }) => ({
      key,
      kind,
      name,
      x,
      y,
      ...(sums.get(key) ?? NO_HEAT),
      here: van === null || (kind === 'part' ? van.parts : van.topics).has(idOf(key)),
    })),
    links: links.map(({ from, to, near }) => [at.get(from) ?? 0, at.get(to) ?? 0, near ? 1 : 0] as const),
  };
}

/** 'water-pump' of 'part:water-pump'. */
export function idOf(key: string): string {
  return key.slice(key.indexOf(':') + 1);
}
