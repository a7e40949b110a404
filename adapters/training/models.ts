import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Logger } from 'pino';
import { inputHash, type Knowledge, type Model, trainingInput } from '../../src/index.ts';
import { readModelNamed } from './model-files.ts';

/** The weights of a graph: at hand, or on their way. `onModel` is called for each better one. */
export type Models = (knowledge: Knowledge, onModel: (model: Model) => void) => Model | null;

/** Finds kept weights, and trains in a worker what is missing: first the weights, then their calibration. */
export function createModels(folder: string, log: Logger): Models {
  return (knowledge, onModel) => {
    const input = trainingInput(knowledge);
    const hash = inputHash(input);
    const kept = readModelNamed(folder, hash);
    if (kept?.calibration == null) {
      const worker = new Worker(workerFile(), { workerData: { input, folder } });
      worker.unref();
      worker.on('message', (what: unknown) => {
        const model = readModelNamed(folder, hash);
        log.info({ hash, what }, 'training');
        if (model !== null) onModel(model);
      });
      worker.on('error', (error) => log.warn({ err: error }, 'training failed; the simpler matching goes on'));
    }
    return kept;
  };
}

function workerFile(): string {
  const built = join(dirname(fileURLToPath(import.meta.url)), 'training-worker.mjs');
  if (!existsSync(built)) throw new Error(`the training worker is not built: ${built}`);
  return built;
}
