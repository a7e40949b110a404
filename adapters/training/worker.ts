import { parentPort, workerData } from 'node:worker_threads';
import { calibrate, type TrainingInput, train } from '../../src/index.ts';
import { readModelNamed, writeModel } from './model-files.ts';
import { learnAndKeepNet, type NetInput, readNet } from './net-files.ts';
import { SEED } from './seed.ts';

/** A piece of what is learnt from a graph. */
export type Piece = 'net' | 'weights' | 'calibration';

/** What the worker is given: under which names to keep what is learnt, and which pieces are wanted. */
export type Work = {
  readonly folder: string;
  readonly input: TrainingInput;
  readonly hash: string;
  readonly net: NetInput;
  readonly wanted: readonly Piece[];
};

/*
 * Trains beside the server, so that no answer waits. After each piece it says that something better is kept: the safety
 * reading's second net first, then the weights, then their confidence fitted on this very graph.
 */
const { folder, input, hash, net, wanted } = workerData as Work;
if (wanted.includes('net') && readNet(folder, net) === null) {
  learnAndKeepNet(folder, net);
  parentPort?.postMessage('second net');
}
const kept = readModelNamed(folder, hash);
if (wanted.includes('weights') && kept === null) {
  writeModel(folder, train(input, SEED));
  parentPort?.postMessage('weights');
}
const model = readModelNamed(folder, hash);
if (wanted.includes('calibration') && model?.calibration === null) {
  writeModel(folder, { ...model, calibration: calibrate(input, SEED).calibration });
  parentPort?.postMessage('calibration');
}
