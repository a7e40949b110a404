import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Logger } from 'pino';
import {
  type Calibration,
  createMatcher,
  createSafetyReader,
  inputHash,
  type Knowledge,
  type Model,
  type SecondNet,
  type Served,
  trainingInput,
} from '../../src/index.ts';
import { readModelNamed, writeModel } from './model-files.ts';
import { netInput, readNet } from './net-files.ts';
import type { Work } from './worker.ts';

/** What has been learnt from a graph. Null: not yet; naive Bayes and the rules alone serve meanwhile. */
export type Learnt = {
  readonly model: Model | null;
  readonly net: SecondNet | null;
  /** The names of the files that it is kept in, or will be. */
  readonly files?: readonly string[];
};

/** A graph ready to answer with what has been learnt from it. */
export function servedWith(knowledge: Knowledge, { model, net }: Learnt): Served {
  return { knowledge, matcher: createMatcher(knowledge, model), readDanger: createSafetyReader(knowledge.safety, net) };
}

/**
 * What was learnt, with the confidence fitted on another graph where it has none of its own: fitting it takes five times as
 * long as the weights.
 */
export function calibratedAs(learnt: Learnt, calibration: Calibration | null): Learnt {
  const { model } = learnt;
  return { ...learnt, model: model === null ? null : { ...model, calibration: model.calibration ?? calibration } };
}

/** What is at hand for a graph; `onBetter` is called for each better one that is learnt beside the server. */
export type Models = (knowledge: Knowledge, onBetter: (learnt: Learnt) => void) => Learnt;

/** Finds what was learnt before, and learns in a worker what is missing. */
export function createModels(folder: string, log: Logger): Models {
  return (knowledge, onBetter) => {
    const learnt = learntFor(folder, knowledge);
    if (learnt.model?.calibration == null || learnt.net === null) {
      const worker = new Worker(workerFile(), {
        workerData: workOn(folder, knowledge, ['net', 'weights', 'calibration']),
      });
      worker.unref();
      worker.on('message', (what: unknown) => {
        log.info({ what }, 'learnt from the graph');
        onBetter(learntFor(folder, knowledge));
      });
      worker.on('error', (error) => log.warn({ err: error }, 'learning failed; the simpler reading goes on'));
    }
    return learnt;
  };
}

/** Learns the weights and the second net of a graph that may never be served, and nothing more. */
export type Learn = (knowledge: Knowledge, signal?: AbortSignal) => Promise<Learnt>;

const PATIENCE_MS = 180_000;

/**
 * @param worker     The worker's built file; null, the one beside this program.
 * @param patienceMs After so long it rejects. Rejects as well when `signal` ends it: its workers end at once.
 */
export function createLearn(folder: string, worker: string | null = null, patienceMs = PATIENCE_MS): Learn {
  return async (knowledge, signal) => {
    const learnt = learntFor(folder, knowledge);
    if (learnt.model !== null && learnt.net !== null) return learnt;
    const file = worker ?? workerFile();
    const patience = AbortSignal.timeout(patienceMs);
    const end = signal === undefined ? patience : AbortSignal.any([patience, signal]);
    // Side by side: neither needs the other.
    await Promise.all(
      (['net', 'weights'] as const).map((piece) => workOut(file, workOn(folder, knowledge, [piece]), end)),
    );
    return learntFor(folder, knowledge);
  };
}

/** Resolves when the worker has ended, for whatever reason but a failure of its own. */
function workOut(file: string, work: Work, end: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    if (end.aborted) {
      reject(end.reason);
      return;
    }
    const worker = new Worker(file, { workerData: work });
    const stop = (): void => void worker.terminate();
    end.addEventListener('abort', stop, { once: true });
    worker.on('error', reject);
    worker.on('exit', () => {
      end.removeEventListener('abort', stop);
      if (end.aborted) reject(end.reason);
      else resolve();
    });
  });
}

/**
 * Keeps a graph's weights with the confidence it was tried with, so that what is served after publishing is what was
 * tried: fitted anew, the confidence would move answers that the trial has shown.
 */
export function keepCalibration(folder: string, knowledge: Knowledge, calibration: Calibration): void {
  const { model } = learntFor(folder, knowledge);
  if (model !== null && model.calibration === null) writeModel(folder, { ...model, calibration });
}

function workOn(folder: string, knowledge: Knowledge, wanted: Work['wanted']): Work {
  const input = trainingInput(knowledge);
  return { folder, input, hash: inputHash(input), net: netInput(knowledge), wanted };
}

/** What is at hand, without learning anything: for commands. */
export function learntFor(folder: string, knowledge: Knowledge): Learnt {
  const hash = inputHash(trainingInput(knowledge));
  const net = netInput(knowledge);
  return {
    model: readModelNamed(folder, hash),
    net: readNet(folder, net),
    files: [`${hash}.model`, `${net.hash}.net`],
  };
}

function workerFile(): string {
  const built = join(dirname(fileURLToPath(import.meta.url)), 'training-worker.mjs');
  if (!existsSync(built)) throw new Error(`the training worker is not built: ${built}`);
  return built;
}
