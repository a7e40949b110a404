import type { MultiDirectedGraph } from 'graphology';
import type { Knowledge } from './knowledge.ts';

type Unlinked = Omit<Knowledge, 'graph'>;

/** Puts every node and edge of the knowledge into `graph` and returns it. Names as {@link Knowledge.graph} says. */
export function drawGraph(graph: MultiDirectedGraph, from: Unlinked): MultiDirectedGraph {
  const node = (key: string, kind: string, name: string): void => {
    graph.mergeNode(key, { kind, name });
  };
  const edge = (is: string, source: string, target: string, more: Record<string, unknown> = {}): void => {
    graph.addEdge(source, target, { is, ...more });
  };
  for (const part of from.parts.values()) node(`part:${part.id}`, 'part', part.name);
  for (const topic of from.topics.values()) node(`topic:${topic.id}`, 'topic', topic.title);
  for (const van of from.vans.values()) node(`van:${van.id}`, 'van', van.name);

  for (const part of from.parts.values()) {
    if (part.is !== undefined) edge('IS', `part:${part.id}`, `part:${part.is}`);
    if (part.of !== undefined) edge('HAS', `part:${part.of}`, `part:${part.id}`);
    for (const [name, control] of Object.entries(part.controls)) {
      const key = `control:${part.id}/${name}`;
      node(key, 'control', control.name);
      edge('HAS', `part:${part.id}`, key);
      edge('SETS', key, `part:${part.id}`);
    }
  }
  for (const van of from.vans.values()) {
    for (const part of Object.keys(van.data.has)) edge('HAS', `van:${van.id}`, `part:${part}`);
  }
  for (const topic of from.topics.values()) {
    const key = `topic:${topic.id}`;
    for (const part of topic.about) edge('ABOUT', key, `part:${part}`);
    for (const other of topic.warns) edge('WARNS', key, `topic:${other}`);
    for (const other of topic.kin) edge('KIN', key, `topic:${other}`);
    for (const cause of topic.causes) {
      const causeKey = `cause:${topic.id}/${cause.id}`;
      node(causeKey, 'cause', cause.say);
      edge('CAUSED_BY', key, causeKey, { prior: cause.prior });
      if (cause.of !== undefined) edge('OF', causeKey, `part:${cause.of}`);
      if (cause.check !== undefined) {
        node(`check:${topic.id}/${cause.id}`, 'check', cause.say);
        edge('TOLD_BY', causeKey, `check:${topic.id}/${cause.id}`, { minutes: cause.check.minutes });
      }
      node(`fix:${topic.id}/${cause.id}`, 'fix', cause.say);
      const { minutes, success, who } = cause.fix;
      edge('CURED_BY', causeKey, `fix:${topic.id}/${cause.id}`, { minutes, success, who });
    }
  }
  for (const [id, site] of Object.entries(from.places.sites)) {
    node(`site:${id}`, 'site', site.name);
    site.places.forEach((place, i) => {
      const key = `place:${id}/${i}`;
      node(key, 'place', place.name);
      edge('NEAR', `site:${id}`, key, { metres: place.metres, hours: place.hours });
    });
  }
  return graph;
}
