import { calibrate, inputHash, slipText, trainingInput } from '../src/index.ts';
import { sweepKept } from './files/kept-sweep.ts';
import { loadGraph } from './files/served.ts';
import { trainAndKeepWarm } from './training/learning.ts';
import { readModelNamed, writeModel } from './training/model-files.ts';
import { learnAndKeepNet, netInput, readNet } from './training/net-files.ts';
import { SEED } from './training/seed.ts';

/**
 * Makes what a start needs of a graph, once for each content: its parsed form and what is learnt from it. Slips are told
 * and are no failure of the build, since the server says them again and serves the last good graph.
 */
export async function prepareGraph(folder: string, into: string): Promise<void> {
  const { knowledge, slips } = loadGraph(folder, into);
  if (knowledge === null) {
    for (const slip of slips) console.error(`graph: ${slipText(slip)}`);
    return;
  }
  const net = netInput(knowledge);
  if (readNet(into, net) === null) learnAndKeepNet(into, net);
  const input = trainingInput(knowledge);
  if (readModelNamed(into, inputHash(input))?.calibration == null) {
    const model = trainAndKeepWarm(into, input);
    writeModel(into, { ...model, calibration: calibrate(input, SEED).calibration });
    sweepKept(into);
  }
}
