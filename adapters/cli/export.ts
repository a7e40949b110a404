import { writeFileSync } from 'node:fs';
import gexf from 'graphology-gexf';
import { graphmlOf, jsonLdOf } from '../files/graph-exports.ts';
import { counted } from '../pages/counted.ts';
import { writePictures } from '../pictures/write-pictures.ts';
import { command, UsageError } from './command.ts';
import { servedGraph } from './served-graph.ts';

export const exportGraph = command({
  name: 'export',
  does: 'Writes the graph in an open format, or the drawings as pictures.',
  usage: '--format gexf|graphml|jsonld [--out FILE] | --pictures FOLDER',
  help: [
    '--format F        gexf or graphml: the whole graph for a graph program; jsonld: parts and topics with SKOS labels',
    '--out FILE        left out: standard output',
    '--pictures FOLDER every drawing as a PNG, and a page of all with what answers ring in them, light and dark',
  ],
  options: { format: { type: 'string' }, out: { type: 'string' }, pictures: { type: 'string' } },
  run: async ({ format, out, pictures }, _words, terminal) => {
    if (format === undefined && pictures === undefined) throw new UsageError('expected --format or --pictures');
    const { knowledge } = servedGraph(terminal);
    if (pictures !== undefined) {
      terminal.out(`${counted(await writePictures(knowledge, pictures), 'drawing')} in ${pictures}
`);
    }
    if (format === undefined) return 0;
    const text = writtenAs(format, knowledge);
    if (text === null) throw new UsageError(`no format '${format}', expected gexf, graphml or jsonld`);
    if (out === undefined) terminal.out(`${text}\n`);
    else writeFileSync(out, `${text}\n`);
    return 0;
  },
});

function writtenAs(format: string, knowledge: ReturnType<typeof servedGraph>['knowledge']): string | null {
  switch (format) {
    case 'gexf':
      return gexf.write(knowledge.graph);
    case 'graphml':
      return graphmlOf(knowledge.graph);
    case 'jsonld':
      return jsonLdOf(knowledge);
    default:
      return null;
  }
}
