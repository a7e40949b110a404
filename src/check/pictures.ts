import type { Knowledge } from '../knowledge/knowledge.ts';
import type { SlipAt } from '../knowledge/raw-graph.ts';
import type { Slip } from '../knowledge/slip.ts';
import { drawingSlips } from './drawings.ts';
import { svgElements } from './svg-elements.ts';
import { fileOf, pictureUsesOf } from './texts.ts';

/**
 * Every drawing is well made and used, and every use names a drawing and parts of it that are there and can be ringed.
 * A use may touch several parts, apart by a space.
 */
export function pictureSlips(knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  const slips: Slip[] = drawingSlips(knowledge);
  const used = new Set<string>();
  for (const topic of knowledge.topics.values()) {
    const at = fileOf(knowledge, topic.id);
    for (const { field, use } of pictureUsesOf(topic)) {
      used.add(use.picture);
      const picture = knowledge.pictures.get(use.picture);
      if (picture === undefined)
        slips.push(slipAt(at, field, `no drawing '${use.picture}'`, `pictures/${use.picture}.svg`));
      else {
        const parts = svgElements(picture.svg).flatMap(({ id, attributes }) =>
          attributes.has('data-ring') ? (id ?? []) : [],
        );
        for (const touch of use.touch?.split(' ') ?? []) {
          if (!parts.includes(touch))
            slips.push(slipAt(at, field, `'${use.picture}' has no part '${touch}' to ring`, parts.join(', ')));
        }
      }
    }
  }
  for (const name of knowledge.pictures.keys()) {
    if (!used.has(name))
      slips.push({
        file: `pictures/${name}.svg`,
        line: 1,
        column: 1,
        field: '',
        problem: 'no answer uses this drawing',
        expected: 'a topic that shows it',
      });
  }
  return slips;
}
