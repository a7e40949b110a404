import { loadGraph } from '../../adapters/files/served.ts';
import { learntFor, servedWith } from '../../adapters/training/models.ts';
import { type Knowledge, type Served, slipText } from '../../src/index.ts';

/** Where the build keeps the parsed graph and its weights; `npm test` builds first. */
const PREPARED = 'dist/graphs';

/** The project's own graph, as it is served. */
export function realKnowledge(): Knowledge {
  const { knowledge, slips } = loadGraph('graph', PREPARED);
  if (knowledge === null) throw new Error(slips.map(slipText).join('\n'));
  return knowledge;
}

export function realServed(): Served {
  const knowledge = realKnowledge();
  return servedWith(knowledge, learntFor(PREPARED, knowledge));
}
