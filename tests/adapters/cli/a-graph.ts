import { fileURLToPath } from 'node:url';
import { loadGraph } from '../../../adapters/files/served.ts';
import type { Knowledge } from '../../../src/index.ts';

export const GRAPH_FOLDER = fileURLToPath(new URL('../../../graph', import.meta.url));

/** The demo's own graph. */
export function demoKnowledge(): Knowledge {
  const { knowledge, slips } = loadGraph(GRAPH_FOLDER, null);
  if (knowledge === null) throw new Error(`the demo graph has slips: ${JSON.stringify(slips.slice(0, 3))}`);
  return knowledge;
}
