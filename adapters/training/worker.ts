import { parentPort, workerData } from 'node:worker_threads';
import { calibrate } from '../../src/index.ts';
import { type Lesson, learnNetFrom, learnWeightsFrom, trainAndKeepWarm } from './learning.ts';
import { readModelNamed, writeModel } from './model-files.ts';
import { learnAndKeepNet, readNet } from './net-files.ts';
import { SEED } from './seed.ts';

/** A piece of what is learnt from a graph. */
export type Piece = 'net' | 'weights' | 'calibration';

/** What the worker is given: where to keep what is learnt, and which pieces are wanted. */
export type Work = {
  readonly folder: string;
  readonly lesson: Lesson;
  readonly wanted: readonly Piece[];
  /** A graph that differs little, from which to learn on. */
  readonly from: Lesson | null;
  /** Whether to learn anew as well what could be learnt on from there. */
  readonly whole: boolean;
};

/*
 * Learns beside the server, so that no answer waits. After each piece it says that something better is kept: first what can
 * be learnt on from another graph, then the safety reading's second net, then the weights, then their confidence fitted on
 * this very graph.
 */
const { folder, lesson, wanted, from, whole } = workerData as Work;
const { input, hash, net } = lesson;
const isNetMissing = wanted.includes('net') && readNet(folder, net) === null;
const areWeightsMissing = wanted.includes('weights') && readModelNamed(folder, hash) === null;
const done = {
  net: isNetMissing && from !== null && learnNetFrom(folder, from, lesson),
  weights: areWeightsMissing && from !== null && learnWeightsFrom(folder, from, lesson),
};
if (done.net || done.weights) parentPort?.postMessage('the change alone');
if (isNetMissing && (whole || !done.net)) {
  learnAndKeepNet(folder, net);
  parentPort?.postMessage('second net');
}
if (areWeightsMissing && (whole || !done.weights)) {
  writeModel(folder, trainAndKeepWarm(folder, input));
  parentPort?.postMessage('weights');
}
const model = readModelNamed(folder, hash);
if (wanted.includes('calibration') && model?.calibration === null) {
  writeModel(folder, { ...model, calibration: calibrate(input, SEED).calibration });
  parentPort?.postMessage('calibration');
}
