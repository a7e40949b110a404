import { existsSync, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { realKnowledge } from '../helpers/real-graph.ts';

/* The demo's graph against the list of topics it was written from, where that list is at hand. */
const CATALOGUE = '../shared/catalogue/topics.csv';
const isHere = existsSync(CATALOGUE);
if (!isHere) console.log(`${CATALOGUE} is not here: the graph is not compared with it`);

type Row = { id: string; kind: string; vans: string; caution: string; pass_to_staff: string };

describe.skipIf(!isHere)('the graph and the catalogue', () => {
  const rows = isHere
    ? Papa.parse<Row>(readFileSync(CATALOGUE, 'utf8'), { header: true, skipEmptyLines: true }).data
    : [];
  const knowledge = isHere ? realKnowledge() : null;

  it('have the same topics', () => {
    expect([...(knowledge?.topics.keys() ?? [])].sort()).toEqual(rows.map((row) => row.id).sort());
  });

  it('agree which vans have a topic, what kind it is, how careful it must be and when it is passed', () => {
    const vans = [...(knowledge?.vans.values() ?? [])];
    for (const row of rows) {
      const topic = knowledge?.topics.get(row.id);
      const inVans = vans.filter((van) => van.topics.has(row.id)).map((van) => van.name);
      const expected = row.vans === 'all' ? vans.map((van) => van.name) : row.vans.split(';');
      expect({ id: row.id, vans: inVans.sort() }).toEqual({ id: row.id, vans: [...expected].sort() });
      expect(topic).toMatchObject({ kind: row.kind, caution: row.caution, pass: row.pass_to_staff });
    }
  });
});
