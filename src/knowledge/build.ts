import { MultiDirectedGraph } from 'graphology';
import type { PartId, TopicId } from '../basics/ids.ts';
import { drawGraph } from './draw-graph.ts';
import type { Knowledge, Part, Picture, Topic, VanScope } from './knowledge.ts';
import type { RawGraph, SlipAt } from './raw-graph.ts';
import { scopeOf } from './scope.ts';
import type { Slip } from './slip.ts';

/**
 * Links the files of graph/ into one graph and cuts each van's scope.
 *
 * @returns `knowledge` is null when anything names something that is not there, or is there twice.
 */
export function buildKnowledge(raw: RawGraph, slipAt: SlipAt): { knowledge: Knowledge | null; slips: Slip[] } {
  const slips: Slip[] = [];
  const parts = new Map<PartId, Part>();
  const topics = new Map<TopicId, Topic>();
  const systems = new Map<string, string>();
  for (const { file, data } of raw.systems) {
    systems.set(data.system, data.title);
    for (const [id, part] of Object.entries(data.parts)) {
      if (parts.has(id))
        slips.push(slipAt(file, ['parts', id], 'this part stands twice', 'one definition in one system'));
      parts.set(id, { ...part, id, system: data.system });
    }
    for (const [id, topic] of Object.entries(data.topics)) {
      if (topics.has(id))
        slips.push(slipAt(file, ['topics', id], 'this topic stands twice', 'one definition in one system'));
      topics.set(id, { ...topic, id, system: data.system });
    }
  }
  slips.push(...unknownNames(raw, slipAt, parts, topics));
  if (slips.length > 0) return { knowledge: null, slips };

  const vans = new Map<string, VanScope>(raw.vans.map(({ data }) => [data.van, scopeOf(data, parts, topics)] as const));
  const pictures = new Map<string, Picture>(
    raw.pictures.map(({ name, svg }) => [name, { name, svg, ids: idsIn(svg) }] as const),
  );
  const unlinked = { parts, topics, systems, vans, pictures, ...shared(raw) };
  return { knowledge: withGraph(unlinked), slips };
}

/** Draws the graph when it is first looked at: answering needs the parts and topics, pictures and exports the whole. */
function withGraph(unlinked: Omit<Knowledge, 'graph'>): Knowledge {
  let drawn: MultiDirectedGraph | null = null;
  return {
    ...unlinked,
    get graph() {
      drawn ??= drawGraph(new MultiDirectedGraph(), unlinked);
      return drawn;
    },
  };
}

function shared(raw: RawGraph): Pick<Knowledge, 'firm' | 'safety' | 'glossary' | 'places' | 'talk' | 'questions'> {
  const { firm, safety, glossary, places, talk, questions } = raw;
  return { firm, safety, glossary, places, talk, questions };
}

function idsIn(svg: string): Set<string> {
  return new Set([...svg.matchAll(/\sid="([^"]+)"/g)].map((found) => found[1] ?? ''));
}

/** Every name that one file uses of another must be there. */
function unknownNames(
  raw: RawGraph,
  slipAt: SlipAt,
  parts: ReadonlyMap<PartId, Part>,
  topics: ReadonlyMap<TopicId, Topic>,
): Slip[] {
  const slips: Slip[] = [];
  const vans = new Set(raw.vans.map(({ data }) => data.van));
  const needPart = (file: string, field: (string | number)[], id: string): void => {
    if (!parts.has(id)) slips.push(slipAt(file, field, `no part '${id}'`, 'a part of some file in systems/'));
  };
  const needTopic = (file: string, field: (string | number)[], id: string): void => {
    if (!topics.has(id)) slips.push(slipAt(file, field, `no topic '${id}'`, 'a topic of some file in systems/'));
  };
  for (const { file, data } of raw.systems) {
    for (const [id, part] of Object.entries(data.parts)) {
      if (part.is !== undefined) needPart(file, ['parts', id, 'is'], part.is);
      if (part.of !== undefined) needPart(file, ['parts', id, 'of'], part.of);
    }
    for (const [id, topic] of Object.entries(data.topics)) {
      topic.about.forEach((part, i) => {
        needPart(file, ['topics', id, 'about', i], part);
      });
      for (const field of ['kin', 'warns'] as const) {
        topic[field].forEach((other, i) => {
          needTopic(file, ['topics', id, field, i], other);
        });
      }
      topic.causes.forEach((cause, i) => {
        if (cause.of !== undefined) needPart(file, ['topics', id, 'causes', i, 'of'], cause.of);
        if (typeof cause.prior !== 'number') {
          for (const van of Object.keys(cause.prior)) {
            if (!vans.has(van))
              slips.push(slipAt(file, ['topics', id, 'causes', i, 'prior', van], `no van '${van}'`, 'a van of vans/'));
          }
        }
      });
    }
  }
  for (const { file, data } of raw.vans) {
    for (const id of Object.keys(data.has)) needPart(file, ['has', id], id);
    for (const id of Object.keys(data.lacks)) needPart(file, ['lacks', id], id);
    data.out.forEach((out, i) => {
      needPart(file, ['out', i, 'part'], out.part);
    });
    data.asked.forEach((id, i) => {
      needTopic(file, ['asked', i], id);
    });
  }
  raw.glossary.words.forEach((word, i) => {
    if (word.part !== undefined) needPart('glossary.yaml', ['words', i, 'part'], word.part);
  });
  raw.questions.questions.forEach((question, i) => {
    if (question.topic !== undefined) needTopic('questions.yaml', ['questions', i, 'topic'], question.topic);
    if (question.van !== undefined && !vans.has(question.van)) {
      slips.push(slipAt('questions.yaml', ['questions', i, 'van'], `no van '${question.van}'`, 'a van of vans/'));
    }
  });
  for (const id of Object.keys(raw.safety.notices)) needTopic('safety.yaml', ['notices', id], id);
  return slips;
}
