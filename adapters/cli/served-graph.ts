import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Served, slipText } from '../../src/index.ts';
import { loadGraph } from '../files/served.ts';
import { learntFor, servedWith } from '../training/models.ts';
import { type Terminal, WorkError } from './command.ts';
import { graphFolder } from './graph-folder.ts';

/** Where the build keeps what it made of graphs: dist/graphs, whether the program runs built or from its sources. */
export function preparedFolder(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const dist = dirname(here);
  return basename(dist) === 'dist' ? join(dist, 'graphs') : join(dirname(dist), 'dist', 'graphs');
}

/** The graph of the settings, ready to answer; its trained weights when they are at hand, else naive Bayes. */
export function servedGraph(terminal: Pick<Terminal, 'env' | 'err'>): Served {
  const loaded = loadGraph(graphFolder(terminal.env), preparedFolder());
  const { knowledge } = loaded;
  if (knowledge === null)
    throw new WorkError(`the graph cannot be served:\n${loaded.slips.map((slip) => `  ${slipText(slip)}`).join('\n')}`);
  return servedWith(knowledge, learntFor(preparedFolder(), knowledge));
}
