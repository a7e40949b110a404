import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Logger } from 'pino';
import {
  createMatcher,
  createSafetyReader,
  inputHash,
  type Knowledge,
  type Model,
  type SecondNet,
  type Served,
  trainingInput,
} from '../../src/index.ts';
import { readModelNamed } from './model-files.ts';
import { netInput, readNet } from './net-files.ts';
import type { Work } from './worker.ts';

/** What has been learnt from a graph. Null: not yet; naive Bayes and the rules alone serve meanwhile. */
export type Learnt = { readonly model: Model | null; readonly net: SecondNet | null };

/** A graph ready to answer with what has been learnt from it. */
export function servedWith(knowledge: Knowledge, { model, net }: Learnt): Served {
  return { knowledge, matcher: createMatcher(knowledge, model), readDanger: createSafetyReader(knowledge.safety, net) };
}

/** What is at hand for a graph; `onBetter` is called for each better one that is learnt beside the server. */
export type Models = (knowledge: Knowledge, onBetter: (learnt: Learnt) => void) => Learnt;

/** Finds what was learnt before, and learns in a worker what is missing. */
export function createModels(folder: string, log: Logger): Models {
  return (knowledge, onBetter) => {
    const input = trainingInput(knowledge);
    const work: Work = { folder, input, hash: inputHash(input), net: netInput(knowledge) };
    const atHand = (): Learnt => ({ model: readModelNamed(folder, work.hash), net: readNet(folder, work.net) });
    const learnt = atHand();
    if (learnt.model?.calibration == null || learnt.net === null) {
      const worker = new Worker(workerFile(), { workerData: work });
      worker.unref();
      worker.on('message', (what: unknown) => {
        log.info({ what }, 'learnt from the graph');
        onBetter(atHand());
      });
      worker.on('error', (error) => log.warn({ err: error }, 'learning failed; the simpler reading goes on'));
    }
    return learnt;
  };
}

/** What is at hand, without learning anything: for commands. */
export function learntFor(folder: string, knowledge: Knowledge): Learnt {
  return {
    model: readModelNamed(folder, inputHash(trainingInput(knowledge))),
    net: readNet(folder, netInput(knowledge)),
  };
}

function workerFile(): string {
  const built = join(dirname(fileURLToPath(import.meta.url)), 'training-worker.mjs');
  if (!existsSync(built)) throw new Error(`the training worker is not built: ${built}`);
  return built;
}
