import { parentPort, workerData } from 'node:worker_threads';
import { calibrate, type TrainingInput, train } from '../../src/index.ts';
import { readModelNamed, writeModel } from './model-files.ts';
import { learnAndKeepNet, type NetInput, readNet } from './net-files.ts';
import { SEED } from './seed.ts';

/** What the worker is given: its name says which of the two are wanted. */
export type Work = {
  readonly folder: string;
  readonly input: TrainingInput;
  readonly hash: string;
  readonly net: NetInput;
};

/*
 * Trains beside the server, so that no answer waits. After each piece it says that something better is kept: the safety
 * reading's second net first, then the weights, then their confidence fitted on this very graph.
 */
const { folder, input, hash, net } = workerData as Work;
if (readNet(folder, net) === null) {
  learnAndKeepNet(folder, net);
  parentPort?.postMessage('second net');
}
const kept = readModelNamed(folder, hash);
const model = kept ?? train(input, SEED);
if (kept === null) {
  writeModel(folder, model);
  parentPort?.postMessage('weights');
}
if (model.calibration === null) {
  writeModel(folder, { ...model, calibration: calibrate(input, SEED).calibration });
  parentPort?.postMessage('calibration');
}
