import type { Knowledge } from '../../src/index.ts';

type Graph = Knowledge['graph'];

/** The graph as GraphML (graphml.graphdrawing.org), every attribute as text. */
export function graphmlOf(graph: Graph): string {
  const nodeKeys = new Set<string>();
  const edgeKeys = new Set<string>();
  graph.forEachNode((_, attributes) => {
    for (const key of Object.keys(attributes)) nodeKeys.add(key);
  });
  graph.forEachEdge((_, attributes) => {
    for (const key of Object.keys(attributes)) edgeKeys.add(key);
  });
  const data = (attributes: Readonly<Record<string, unknown>>): string =>
    Object.entries(attributes)
      .map(
        ([key, value]) =>
          `<data key="${escaped(key)}">${escaped(typeof value === 'object' ? JSON.stringify(value) : String(value))}</data>`,
      )
      .join('');
  const keys = [
    ...[...nodeKeys].map((key) => ['node', key] as const),
    ...[...edgeKeys].map((key) => ['edge', key] as const),
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<graphml xmlns="http://graphml.graphdrawing.org/xmlns">',
    ...keys.map(
      ([of, key]) => `  <key id="${escaped(key)}" for="${of}" attr.name="${escaped(key)}" attr.type="string"/>`,
    ),
    '  <graph edgedefault="directed">',
    ...graph.mapNodes((node, attributes) => `    <node id="${escaped(node)}">${data(attributes)}</node>`),
    ...graph.mapEdges(
      (_edge, attributes, source, target) =>
        `    <edge source="${escaped(source)}" target="${escaped(target)}">${data(attributes)}</edge>`,
    ),
    '  </graph>',
    '</graphml>',
  ].join('\n');
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

/** Parts and topics as JSON-LD with SKOS labels (W3C SKOS Reference): what a thing is called, and what it belongs to. */
export function jsonLdOf({ parts, topics }: Knowledge): string {
  const concept = (kind: string, id: string): string => `urn:pitchhand:${kind}:${id}`;
  const graph = [
    ...[...parts.values()].map((part) => ({
      '@id': concept('part', part.id),
      '@type': 'Concept',
      prefLabel: { '@language': 'en', '@value': part.name },
      altLabel: part.also.map((name) => ({ '@language': 'en', '@value': name })),
      broader: [part.is, part.of].flatMap((role) => (role === undefined ? [] : [concept('part', role)])),
    })),
    ...[...topics.values()].map((topic) => ({
      '@id': concept('topic', topic.id),
      '@type': 'Concept',
      prefLabel: { '@language': 'en', '@value': topic.title },
      hiddenLabel: Object.values(topic.wordings)
        .flat()
        .map((wording) => ({ '@language': 'en', '@value': wording })),
      related: [
        ...topic.about.map((part) => concept('part', part)),
        ...topic.kin.map((other) => concept('topic', other)),
      ],
    })),
  ];
  const skos = 'http://www.w3.org/2004/02/skos/core#';
  const context = Object.fromEntries([
    ['Concept', `${skos}Concept`],
    ...['prefLabel', 'altLabel', 'hiddenLabel'].map((name) => [name, `${skos}${name}`]),
    ...['broader', 'related'].map((name) => [name, { '@id': `${skos}${name}`, '@type': '@id' }]),
  ]);
  return JSON.stringify({ '@context': context, '@graph': graph }, null, 1);
}
