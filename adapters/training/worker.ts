import { parentPort, workerData } from 'node:worker_threads';
import { calibrate, type TrainingInput, train } from '../../src/index.ts';
import { writeModel } from './model-files.ts';
import { SEED } from './seed.ts';

/*
 * Trains beside the server, so that no answer waits. Says 'trained' when the weights are kept, and 'calibrated' when the
 * confidence fitted on this very graph is kept with them.
 */
const { input, folder } = workerData as { readonly input: TrainingInput; readonly folder: string };
const model = train(input, SEED);
writeModel(folder, model);
parentPort?.postMessage('trained');
const { calibration } = calibrate(input, SEED);
writeModel(folder, { ...model, calibration });
parentPort?.postMessage('calibrated');
