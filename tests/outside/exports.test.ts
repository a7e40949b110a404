import { MultiDirectedGraph } from 'graphology';
import gexf from 'graphology-gexf';
import { parse as parseGraphml } from 'graphology-graphml';
import jsonld from 'jsonld';
import { describe, expect, it } from 'vitest';
import { graphmlOf, jsonLdOf } from '../../adapters/files/graph-exports.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/*
 * What is exported, read by others: JSON-LD by jsonld (the W3C's JSON-LD 1.1 algorithms), GraphML and GEXF by graphology's
 * own parsers, and the labels held to the integrity conditions of the SKOS Reference (W3C Recommendation, 18 August 2009).
 */

const knowledge = realKnowledge();
const SKOS = 'http://www.w3.org/2004/02/skos/core#';

type Statement = { readonly subject: string; readonly is: string; readonly object: string };

/** Statements as N-Quads have them. */
async function statements(): Promise<readonly Statement[]> {
  const quads = await jsonld.toRDF(JSON.parse(jsonLdOf(knowledge)), { format: 'application/n-quads' });
  return String(quads)
    .trim()
    .split('\n')
    .map((line) => {
      const [, subject = '', is = '', object = ''] = /^<([^>]*)> <([^>]*)> (.*) \.$/.exec(line) ?? [];
      return { subject, is, object };
    });
}

describe('the graph as JSON-LD with SKOS labels', async () => {
  const all = await statements();
  const of = (name: string) => all.filter(({ is }) => is === SKOS + name);

  it('says of every part and every topic that it is a concept with a label', () => {
    const concepts = all.filter(({ object }) => object === `<${SKOS}Concept>`).map(({ subject }) => subject);
    expect(concepts).toHaveLength(knowledge.parts.size + knowledge.topics.size);
    expect(new Set(of('prefLabel').map(({ subject }) => subject))).toEqual(new Set(concepts));
  });

  it('uses no term that SKOS has not', () => {
    const used = new Set(all.map(({ is }) => is).filter((is) => is.startsWith(SKOS)));
    expect([...used].map((is) => is.slice(SKOS.length)).sort()).toEqual([
      'altLabel',
      'broader',
      'hiddenLabel',
      'prefLabel',
      'related',
    ]);
  });

  it('S14: gives nothing two preferred labels in one language', () => {
    const labelled = of('prefLabel').map(({ subject, object }) => `${subject} ${/@[a-z-]+$/.exec(object)?.[0]}`);
    expect(new Set(labelled).size).toBe(labelled.length);
  });

  it('S13: gives nothing one label in two roles', () => {
    const roles = new Map<string, string>();
    const twice: string[] = [];
    for (const { subject, is, object } of [...of('prefLabel'), ...of('altLabel'), ...of('hiddenLabel')]) {
      const key = `${subject} ${object}`;
      if (roles.has(key) && roles.get(key) !== is) twice.push(key);
      roles.set(key, is);
    }
    expect(twice).toEqual([]);
  });

  it('S27: relates nothing to what is above it', () => {
    const above = new Map<string, string[]>();
    for (const { subject, object } of of('broader'))
      above.set(subject, [...(above.get(subject) ?? []), object.slice(1, -1)]);
    const allAbove = (concept: string): string[] =>
      (above.get(concept) ?? []).flatMap((one) => [one, ...allAbove(one)]);
    const clashes = of('related').filter(({ subject, object }) => {
      const other = object.slice(1, -1);
      return allAbove(subject).includes(other) || allAbove(other).includes(subject);
    });
    expect(clashes).toEqual([]);
  });

  it('links only to what it describes', () => {
    const known = new Set(all.map(({ subject }) => subject));
    const lost = [...of('broader'), ...of('related')].filter(({ object }) => !known.has(object.slice(1, -1)));
    expect(lost).toEqual([]);
  });
});

describe('the graph for graph programs', () => {
  const { graph } = knowledge;

  it('is read back whole from GraphML, names with signs among them', () => {
    const signs = `<b>"fish & chips"</b> isn't`;
    const signed = graph.copy();
    signed.setNodeAttribute(signed.nodes()[0], 'name', signs);
    expect(parseGraphml(MultiDirectedGraph, graphmlOf(signed)).getNodeAttribute(signed.nodes()[0], 'name')).toBe(signs);
    const back = parseGraphml(MultiDirectedGraph, graphmlOf(graph));
    expect([back.order, back.size]).toEqual([graph.order, graph.size]);
    graph.forEachNode((node, { name, kind }) => {
      expect(back.getNodeAttributes(node)).toMatchObject({ name, kind });
    });
  });

  it('is read back whole from GEXF', () => {
    const back = gexf.parse(MultiDirectedGraph, gexf.write(graph));
    expect([back.order, back.size]).toEqual([graph.order, graph.size]);
  });
});
