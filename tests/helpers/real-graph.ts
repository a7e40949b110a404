import { loadGraph } from '../../adapters/files/served.ts';
import { learntFor } from '../../adapters/training/models.ts';
import { createMatcher, createSafetyReader, type Knowledge, type Served, slipText } from '../../src/index.ts';

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
  const { model, net } = learntFor(PREPARED, knowledge);
  return { knowledge, matcher: createMatcher(knowledge, model), readDanger: createSafetyReader(knowledge.safety, net) };
}
