import { learnSafetyOn, type Model, startTraining, type TrainingInput, touchUp } from '../../src/index.ts';
import { readModelNamed, readWarm, writeModel, writeWarm } from './model-files.ts';
import { type NetInput, readLearntNet, readQuickNet, writeQuickNet } from './net-files.ts';
import { SEED } from './seed.ts';

/** What is learnt from a graph, as plain data with the names it is kept under. */
export type Lesson = { readonly input: TrainingInput; readonly hash: string; readonly net: NetInput };

/** The whole training; what is needed to go on from it is kept. */
export function trainAndKeepWarm(folder: string, input: TrainingInput): Model {
  const training = startTraining(input, SEED);
  while (training.step());
  writeWarm(folder, training.warm());
  return training.model();
}

/** Learns the weights on from another graph's. False: it takes the whole training. */
export function learnWeightsFrom(folder: string, from: Lesson, { input, hash }: Lesson): boolean {
  if (readModelNamed(folder, hash, 'quick') !== null) return true;
  const [model, warm] = [readModelNamed(folder, from.hash), readWarm(folder, from.hash)];
  const learnt =
    model === null || warm === null ? null : touchUp({ model, warm, before: from.input, after: input, hash }, SEED);
  if (learnt !== null) writeModel(folder, learnt, 'quick');
  return learnt !== null;
}

/** Learns the second net on from another graph's. False: it takes the whole learning. */
export function learnNetFrom(folder: string, from: Lesson, { net }: Lesson): boolean {
  if (readQuickNet(folder, net) !== null) return true;
  const old = from.net.reading === net.reading ? readLearntNet(folder, from.net) : null;
  const learnt = old === null ? null : learnSafetyOn(old, net.safety, from.net.lines, net.lines);
  if (learnt !== null) writeQuickNet(folder, net, learnt);
  return learnt !== null;
}
